//! `wallwise set`: everything that is wrong with a set, and whether its cases do what it expects of them;
//! its key for the instructor; what it tests and leaves out.

mod blueprint;
mod forms;
mod key;
mod link;

use super::protocol;
use crate::shapes::{CheckedCase, CheckedSet, Difficulty};
use crate::{Fault, Status, Streams, input};
use engine::cases;
use engine::chart::Case;
use engine::debrief::{CAUTION, counted};
use engine::plan::Draft;
use engine::rules::Local;
use engine::scenario::{self, PlanSource, Set, SetCase};
use learning::file::is_name;
use std::path::{Path, PathBuf};

#[derive(Debug, clap::Args)]
pub struct Args {
    #[command(subcommand)]
    what: What,
}

#[derive(Debug, clap::Subcommand)]
enum What {
    /// Check a set file: its form, its cases, its expectations
    Check {
        /// The set file
        file: PathBuf,
        /// Print JSON for programs
        #[arg(long)]
        json: bool,
    },
    /// Print the instructor's key: of each case the truth, one sound plan, the usual faults, what to ask
    Key {
        /// The set file
        file: PathBuf,
    },
    /// Print which rules the set tests in which case, and what it leaves out
    Blueprint {
        /// The set file
        file: PathBuf,
        /// Print JSON for programs
        #[arg(long)]
        json: bool,
    },
    /// Print the link that the room and its desk open the set by
    Link {
        /// The set file
        file: PathBuf,
        /// The address of the room, to stand before it
        #[arg(long, value_name = "ADDRESS")]
        room: Option<String>,
    },
    /// Print the cases that learners get in place of the set's, found from their codes
    Forms {
        /// The set file
        file: PathBuf,
        /// The codes, as the learners chose them
        #[arg(required = true)]
        codes: Vec<String>,
    },
}

/// Does what is asked of a set.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    match &args.what {
        What::Check { file, json } => checked(file, *json, streams),
        What::Key { file } => key::run(&read(file)?, streams),
        What::Link { file, room } => link::run(file, &read(file)?, room.as_deref(), streams),
        What::Forms { file, codes } => forms::run(&read(file)?, codes, streams),
        What::Blueprint { file, json } => blueprint::run(&read(file)?, *json, streams),
    }
}

fn checked(file: &Path, json: bool, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let set = read(file)?;
    let local = set.local();
    let checked = set.cases.iter().map(|entry| match check(entry, &local, file) {
        Ok((title, hard)) => {
            let difficulty = Some(Difficulty::from(&hard));
            CheckedCase { title: Some(title), difficulty, findings: Vec::new() }
        }
        Err(findings) => CheckedCase { title: None, difficulty: None, findings },
    });
    let findings = if json {
        let cases: Vec<CheckedCase> = checked.collect();
        let findings = cases.iter().map(|case| case.findings.len()).sum();
        streams.print_json(&CheckedSet::of(&set, cases))?;
        findings
    } else {
        let protocol = protocol::text(&local);
        streams.print(&format!("{}\n{}\n{CAUTION}\n{protocol}", set.title, set.aim))?;
        told(checked, streams)?
    };
    Ok(if findings == 0 { Status::Done } else { Status::Findings })
}

/// The set's name in addresses: its file's, as the page has it.
///
/// # Errors
/// When that is no name.
pub fn name_of(file: &Path) -> Result<&str, Fault> {
    let name = file.file_name().and_then(|name| name.to_str()).unwrap_or_default();
    let name = name.strip_suffix(".set.toml").or_else(|| name.strip_suffix(".toml"));
    name.filter(|name| is_name(name)).ok_or_else(|| {
        Fault::new(format!(
            "found the file name {}, expected letters, digits and hyphens, 60 at most, then .set.toml",
            file.display()
        ))
        .hint("rename the file: a host knows the set by that name")
    })
}

/// Everything in which a set does not do what it says, a line each.
pub fn findings(set: &Set, file: &Path) -> Vec<String> {
    let local = set.local();
    let of_case = |(place, entry): (usize, &SetCase)| {
        let found = check(entry, &local, file).err().unwrap_or_default();
        found.into_iter().map(move |says| format!("{}: case {}: {says}", file.display(), place + 1))
    };
    set.cases.iter().enumerate().flat_map(of_case).collect()
}

/// Tells of case after case, as each is checked; how many findings there were.
fn told(
    checked: impl Iterator<Item = CheckedCase>,
    streams: &mut Streams<'_>,
) -> Result<usize, Fault> {
    let [mut cases, mut findings] = [0, 0];
    for case in checked {
        cases += 1;
        findings += case.findings.len();
        streams.print(&match &case.title {
            Some(title) => {
                let hard = case.difficulty.as_ref().map_or("", |hard| &hard.words);
                format!("  {cases}. {title}: as expected\n     difficulty {hard}\n")
            }
            None => format!("  {cases}. {}\n", case.findings.join("\n     ")),
        })?;
    }
    let said = format!("{}, {}\n", counted(cases, "case"), counted(findings, "finding"));
    streams.print(&said)?;
    Ok(findings)
}

/// Reads a set file.
///
/// # Errors
/// Everything that is wrong with it.
pub fn read(file: &Path) -> Result<Set, Fault> {
    scenario::parse_set(&input::read(file)?)
        .map_err(|faults| input::refused(file, &faults, input::SETS))
}

fn check(
    entry: &SetCase,
    local: &Local,
    file: &Path,
) -> Result<(String, cases::Difficulty), Vec<String>> {
    let case = entry.case(local.clone()).map_err(|fault| vec![fault.to_string()])?;
    let mut unmet = Vec::new();
    for expect in &entry.expect {
        match base(&expect.plan, &case, file) {
            Ok(base) => {
                if let Err(faults) = expect.check(&case, &base) {
                    unmet.extend(faults.iter().map(ToString::to_string));
                }
            }
            Err(fault) => unmet.push(fault),
        }
    }
    let hard = cases::proof(&case).and_then(|sound| cases::difficulty(&case, &sound.draft));
    match hard {
        Some(hard) if unmet.is_empty() => Ok((case.title, hard)),
        Some(_) => Err(unmet),
        None => {
            unmet.push(format!("{}: no sound plan is known", case.title));
            Err(unmet)
        }
    }
}

/// The plan that an expectation begins with; a plan file is named relative to the set's folder.
fn base(source: &PlanSource, case: &Case, set: &Path) -> Result<Draft, String> {
    match source {
        PlanSource::Proof => cases::proof(case)
            .map(|proof| proof.draft)
            .ok_or_else(|| format!("{}: no sound plan is known", case.title)),
        PlanSource::Choices(draft) => Ok(draft.clone()),
        PlanSource::File(name) => {
            let path = set.parent().unwrap_or(Path::new(".")).join(name);
            input::draft(&path).map_err(|fault| fault.to_string())
        }
    }
}
