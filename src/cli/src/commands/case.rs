//! `wallwise case ADDRESS`: one case for the instructor, truth included.

mod pictures;
mod ruler;
mod worked;

use crate::shapes::OneCase;
use crate::{Fault, Status, Streams, Why, input};
use engine::anatomy::Tooth;
use engine::cases::{self, Within};
use engine::chart::Case;
use engine::debrief::CAUTION;
use engine::events::after;
use engine::figures::{self, Figure, Show};
use engine::plan::choices::Course;
use engine::plan::{Draft, Plan};
use engine::rules::Known;
use engine::scenario::{write_case, write_plan};
use engine::solids;
use learning::desk::key::{NO_PLAN, SOUND, Truth};
use std::fs;
use std::path::{Path, PathBuf};

/// For which width figures are laid out, CSS pixels.
const FIGURE_WIDTH: f64 = 720.0;

#[derive(Debug, clap::Args)]
pub struct Args {
    /// An address such as 1.1.2024.0, a bare seed, or a case file
    which: String,
    /// How a bare seed is drawn: evenly over decisions (teaching, unless told otherwise), or as
    /// teeth occur, by published frequencies (population), or over decisions at all 28 teeth, molars
    /// among them (whole-mouth)
    #[arg(long, value_name = "WAY", value_parser = ["teaching", "population", "whole-mouth"])]
    spread: Option<String>,
    /// How hard the case of a bare seed is, such as 0.3-0.6; 0 easy, 1 hard
    #[arg(long, value_name = "RANGE")]
    difficulty: Option<Within>,
    /// Print the case as JSON for programs
    #[arg(long, conflicts_with_all = ["toml", "plan"])]
    json: bool,
    /// Print the case as a file that `judge` reads
    #[arg(long, conflicts_with = "plan")]
    toml: bool,
    /// Print one sound plan as a file that `judge` reads
    #[arg(long)]
    plan: bool,
    /// Print the sound plan step by step, with what is found and why each choice is made
    #[arg(long, conflicts_with_all = ["json", "toml", "plan"])]
    worked: bool,
    /// Write the solids of the case and of its sound plan, with recipe.json, into a folder
    #[arg(long, value_name = "DIR")]
    mesh: Option<PathBuf>,
    /// Write a figure as an SVG file: facial-map, section, gap-clock, gap-profile, or healed, of a sound
    /// plan that comes back to the healed site
    #[arg(long, num_args = 2, value_names = ["NAME", "FILE"])]
    figure: Option<Vec<String>>,
    /// Write a film as a PNG file: before, extracted, after the sound plan, or at its follow-up
    #[arg(long, num_args = 2, value_names = ["WHEN", "FILE"])]
    film: Option<Vec<String>>,
    /// Write a cone-beam section as a PNG file: along-arch, across-arch or across-axis
    #[arg(long, num_args = 2, value_names = ["NAME", "FILE"])]
    section: Option<Vec<String>>,
}

impl Args {
    /// Whether files were asked for, so that nothing needs printing.
    const fn writes_files(&self) -> bool {
        self.mesh.is_some()
            || self.figure.is_some()
            || self.film.is_some()
            || self.section.is_some()
    }
}

/// Prints or writes it.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let case = match (&args.spread, args.difficulty) {
        (None, None) => input::case(&args.which)?,
        (spread, hard) => input::seed_case(&args.which, spread.as_deref(), hard)?,
    };
    let sound = cases::proof(&case).map(|proof| proof.draft);
    if let Some(folder) = &args.mesh {
        meshes(&case, sound.as_ref(), folder, streams)?;
    }
    if let Some([name, file]) = args.figure.as_deref() {
        figure(&case, sound.as_ref(), name, Path::new(file), streams)?;
    }
    if let Some(Ok(named)) = args.film.as_deref().map(TryFrom::try_from) {
        pictures::film(&case, sound.as_ref(), named, streams)?;
    }
    if let Some(Ok(named)) = args.section.as_deref().map(TryFrom::try_from) {
        pictures::section(&case, named, streams)?;
    }
    if args.json {
        let hard = sound.as_ref().and_then(|sound| cases::difficulty(&case, sound));
        let written =
            OneCase::of(&case, hard.as_ref()).why(|| format!("cannot write {}", case.title))?;
        streams.print_json(&written)?;
    } else if args.toml {
        streams.print(&write_case(&case))?;
    } else if args.plan {
        let draft =
            sound.ok_or_else(|| Fault::new(format!("{}: no sound plan is known", case.title)))?;
        streams.print(&write_plan(&draft))?;
    } else if args.worked {
        let text = worked::worked(&case)
            .ok_or_else(|| Fault::new(format!("{}: no sound plan is known", case.title)))?;
        streams.print(&text)?;
    } else if !args.writes_files() {
        streams.print(&told(&Truth::of(&case, sound), case.site.tooth))?;
    }
    Ok(Status::Done)
}

/// Everything about a case, and one sound plan: for the instructor.
pub fn told(truth: &Truth, tooth: Tooth) -> String {
    let mut text = format!("{}\n{CAUTION}\n", truth.title);
    if let Some(address) = truth.address {
        text.push_str(&format!("Address {address}\n"));
    }
    if let Some(hard) = &truth.hard {
        text.push_str(&format!("Difficulty {hard}\n"));
    }
    for (title, lines) in &truth.told {
        text.push_str(&format!("\n{title}\n{}", bulleted(lines)));
    }
    match &truth.sound {
        Some(draft) => {
            let plan = write_plan(draft);
            text.push_str(&format!("\n{SOUND}\n{}", tooth.named(&plan)));
        }
        None => text.push_str(&format!("\n{NO_PLAN}\n")),
    }
    text
}

fn bulleted(lines: &[String]) -> String {
    lines.iter().map(|line| format!("  - {line}\n")).collect()
}

fn planned(case: &Case, sound: Option<&Draft>) -> Plan {
    sound.and_then(|draft| Plan::from_draft(draft, case).ok()).unwrap_or_default()
}

fn meshes(
    case: &Case,
    sound: Option<&Draft>,
    folder: &Path,
    streams: &mut Streams<'_>,
) -> Result<(), Fault> {
    let plan = planned(case, sound);
    let case = &*after(case, &plan);
    fs::create_dir_all(folder).why(|| format!("cannot make {}", folder.display()))?;
    let export = solids::export(case, Some(&plan));
    for (name, bytes) in &export.meshes {
        let path = folder.join(name);
        fs::write(&path, bytes).why(|| format!("cannot write {}", path.display()))?;
    }
    let recipe = serde_json::to_string_pretty(&export.recipe)
        .why(|| "cannot write the recipe".to_owned())?;
    let path = folder.join("recipe.json");
    fs::write(&path, recipe + "\n").why(|| format!("cannot write {}", path.display()))?;
    streams.say(&format!(
        "wrote {} solids and recipe.json into {}",
        export.meshes.len(),
        folder.display()
    ));
    Ok(())
}

fn figure(
    case: &Case,
    sound: Option<&Draft>,
    name: &str,
    file: &Path,
    streams: &mut Streams<'_>,
) -> Result<(), Fault> {
    let returning = if name == "healed" { Some(returning(case, sound)?) } else { None };
    let sound = returning.as_ref().or(sound);
    let plan = planned(case, sound);
    let case = &*after(case, &plan);
    let empty = Draft::empty();
    let draft = sound.unwrap_or(&empty);
    let known = Known::of(case, &plan);
    let show =
        Show { case, plan: &plan, draft, known: &known, reveal: true, lit: None, px: FIGURE_WIDTH };
    let Some(figure) = named(name, &show) else {
        return Err(Fault::new(format!("found the figure \"{name}\", which does not exist"))
            .hint("the figures are facial-map, section, gap-clock, gap-profile and healed"));
    };
    fs::write(file, figures::svg::to_svg(&figure))
        .why(|| format!("cannot write {}", file.display()))?;
    streams.say(&format!("wrote {}", file.display()));
    Ok(())
}

/// A sound plan that comes back to the healed site: the one that is known, or the first of a course
/// that returns.
fn returning(case: &Case, sound: Option<&Draft>) -> Result<Draft, Fault> {
    let returns = |draft: &Draft| planned(case, Some(draft)).later.found().is_some();
    let other = || {
        let courses = [Course::GraftAndReturn, Course::ReturnEarly, Course::LetHeal];
        let proofs = courses.into_iter().filter_map(|course| cases::proof_with(case, course));
        proofs.map(|proof| proof.draft).find(returns)
    };
    sound.filter(|draft| returns(draft)).cloned().or_else(other).ok_or_else(|| {
        let why = "no sound plan that comes back to a healed site is known";
        Fault::new(format!("{}: {why}", case.title))
    })
}

fn named(name: &str, show: &Show<'_>) -> Option<Figure> {
    let figure = match name {
        "healed" => return figures::healed_section(show),
        "facial-map" => figures::facial_map,
        "section" => figures::section,
        "gap-clock" => figures::gap_clock,
        "gap-profile" => figures::gap_profile,
        _ => return None,
    };
    Some(figure(show))
}
