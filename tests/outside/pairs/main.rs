//! Writes export folders of varied (site, plan) pairs for the outside checks:
//! `export-pairs DIR COUNT`, from seed 1 on, some of teeth with several roots, and some of healed
//! ridges.

mod closed;
mod films;
mod healed;
mod parted;
mod varied;

use engine::chart::Case;
use engine::measure::Measurements;
use engine::plan::Plan;
use std::collections::BTreeMap;
use std::hint::black_box;
use std::io::Write;
use std::path::Path;
use std::process::ExitCode;
use std::time::Instant;

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let read = |place: usize| arguments.get(place).and_then(|text| text.parse::<u64>().ok());
    let (Some(folder), Some(count)) = (arguments.first(), read(1)) else {
        let _ = writeln!(std::io::stderr(), "usage: export-pairs DIR COUNT");
        return ExitCode::from(2);
    };
    match write(Path::new(folder), count) {
        Ok(files) => {
            let _ = writeln!(std::io::stdout(), "{count} pairs, {files} files in {folder}");
            ExitCode::SUCCESS
        }
        Err(fault) => {
            let _ = writeln!(std::io::stderr(), "could not write to {folder}: {fault}");
            ExitCode::from(2)
        }
    }
}

/// Repetitions of a measurement that is timed; the least time counts.
const TIMES: u32 = 40;

/// Pairs whose film and section are written too.
const FILMS: u64 = 24;
/// The same of teeth with several roots.
const PARTED_FILMS: u64 = 8;

fn write(folder: &Path, count: u64) -> std::io::Result<usize> {
    let mut files = 5;
    let mut seconds = BTreeMap::new();
    let single = (1..=count).map(|seed| (format!("{seed:05}"), varied::pair(seed), true));
    let parted = (1..=parted::COUNT).map(|seed| (format!("p{seed:04}"), parted::pair(seed), false));
    for (name, (case, plan), timed) in single.chain(parted) {
        files += put(&folder.join(&name), &engine::solids::export(&case, Some(&plan)))?;
        if timed {
            seconds.insert(name, seconds_to_measure(&case, &plan));
        }
    }
    for (place, export) in healed::pairs().enumerate() {
        files += put(&folder.join(format!("h{place:04}")), &export)?;
    }
    std::fs::write(folder.join("seconds.json"), serde_json::to_vec_pretty(&seconds)?)?;
    let forms: Vec<_> = (1..=60).flat_map(closed::forms).collect();
    std::fs::write(folder.join("closed-forms.json"), serde_json::to_vec_pretty(&forms)?)?;
    let taken = films::films(FILMS, PARTED_FILMS);
    std::fs::write(folder.join("films.json"), serde_json::to_vec(&taken)?)?;
    let blurred: Vec<_> = (1..=FILMS).map(films::blurred).collect();
    std::fs::write(folder.join("blurred.json"), serde_json::to_vec(&blurred)?)?;
    std::fs::write(folder.join("plates.json"), serde_json::to_vec(&films::plates())?)?;
    Ok(files)
}

/// Writes one export into a folder of its own; how many files that makes.
fn put(into: &Path, export: &engine::solids::Export) -> std::io::Result<usize> {
    std::fs::create_dir_all(into)?;
    for (name, bytes) in &export.meshes {
        std::fs::write(into.join(name), bytes)?;
    }
    std::fs::write(into.join("recipe.json"), serde_json::to_vec_pretty(&export.recipe)?)?;
    Ok(export.meshes.len() + 1)
}

/// How long the engine takes for the volume to graft, from the bare site on.
fn seconds_to_measure(case: &Case, plan: &Plan) -> f64 {
    let once = |_| {
        let start = Instant::now();
        let volume = Measurements::of(black_box(case), black_box(plan)).volume_to_graft();
        black_box(volume);
        start.elapsed().as_secs_f64()
    };
    (0..TIMES).map(once).fold(f64::MAX, f64::min)
}
