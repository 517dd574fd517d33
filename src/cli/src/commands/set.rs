//! `wallwise set check FILE`: everything that is wrong with a set, and whether its cases do what it
//! expects of them.

use crate::{Fault, Status, Streams, input};
use engine::chart::Case;
use engine::plan::Draft;
use engine::scenario::{self, PlanSource, Set, SetCase};
use engine::{cases, debrief::CAUTION};
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
    },
}

/// Checks.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let What::Check { file } = &args.what;
    let set = read(file)?;
    let mut findings = 0;
    streams.print(&format!("{}\n{}\n{CAUTION}\n", set.title, set.aim))?;
    for (place, entry) in set.cases.iter().enumerate() {
        let said = match check(entry, file) {
            Ok(said) => format!("  {}. {said}\n", place + 1),
            Err(faults) => {
                findings += faults.len();
                format!("  {}. {}\n", place + 1, faults.join("\n     "))
            }
        };
        streams.print(&said)?;
    }
    let (cases, unmet) = (counted(set.cases.len(), "case"), counted(findings, "finding"));
    streams.print(&format!("{cases}, {unmet}\n"))?;
    Ok(if findings == 0 { Status::Done } else { Status::Findings })
}

/// *1 case*, *2 cases*.
fn counted(count: usize, what: &str) -> String {
    format!("{count} {what}{}", if count == 1 { "" } else { "s" })
}

/// Reads a set file.
///
/// # Errors
/// Everything that is wrong with it.
pub fn read(file: &Path) -> Result<Set, Fault> {
    scenario::parse_set(&input::read(file)?)
        .map_err(|faults| input::refused(file, &faults, input::SETS))
}

fn check(entry: &SetCase, file: &Path) -> Result<String, Vec<String>> {
    let case = entry.case().map_err(|fault| vec![fault.to_string()])?;
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
        Some(hard) if unmet.is_empty() => {
            Ok(format!("{}: as expected\n     difficulty {}", case.title, hard.words()))
        }
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
