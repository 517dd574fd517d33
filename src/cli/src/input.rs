//! What a command reads: files of limited size, cases by address or by file.

use crate::{Fault, Why};
use engine::cases::{self, Constraints, Spread, Within};
use engine::chart::{Address, Case};
use engine::plan::{Draft, Plan};
use engine::scenario::{self, Faults};
use std::fs::File;
use std::io::Read;
use std::path::Path;

/// The longest file that is read at all; the formats have a stricter limit of their own.
const LONGEST: u64 = 8 * 1024 * 1024;

/// Reads a text file.
///
/// # Errors
/// When it cannot be read, is too long, or is no text.
pub fn read(path: &Path) -> Result<String, Fault> {
    let named = || format!("cannot read {}", path.display());
    let mut bytes = Vec::new();
    File::open(path).and_then(|file| file.take(LONGEST + 1).read_to_end(&mut bytes)).why(named)?;
    if bytes.len() as u64 > LONGEST {
        return Err(Fault::new(format!(
            "{}: longer than {} MiB",
            path.display(),
            LONGEST / 1024 / 1024
        ))
        .hint("give a set, case or plan file"));
    }
    String::from_utf8(bytes).why(named)
}

/// How many faults of a file are told; the rest are counted.
const MOST_TOLD: usize = 50;

/// Where every key of a case file and of a plan file stands.
const TEMPLATES: &str =
    "scenarios/template.case.toml and scenarios/template.plan.toml show every key";
/// Where every key of a set file stands.
pub const SETS: &str = "scenarios/README.md shows the keys of a set";

/// One fault for everything that is wrong with a file, a line each.
pub fn refused(path: &Path, faults: &Faults, hint: &'static str) -> Fault {
    let told = faults.0.iter().take(MOST_TOLD);
    let mut lines: Vec<String> = told.map(|fault| format!("{}:{fault}", path.display())).collect();
    if faults.0.len() > MOST_TOLD {
        lines.push(format!("and {} more", faults.0.len() - MOST_TOLD));
    }
    let count = match faults.0.len() {
        1 => "one fault".to_owned(),
        count => format!("{count} faults"),
    };
    Fault::new(format!("{count} in {}\n{}", path.display(), lines.join("\n"))).hint(hint)
}

/// A case by its address, by a bare seed, or from a case file.
///
/// # Errors
/// When there is no such case, or everything that is wrong with its file.
pub fn case(which: &str) -> Result<Case, Fault> {
    if let Some(case) = drawn(which) {
        return case;
    }
    let path = Path::new(which);
    if !path.exists() {
        return Err(Fault::new(format!(
            "found \"{which}\", which is neither a case file nor an address"
        ))
        .hint("an address looks like 1.1.2024.0, a bare number is a seed"));
    }
    scenario::parse_case(&read(path)?).map_err(|faults| refused(path, &faults, TEMPLATES))
}

/// The case of a bare seed, spread in the way of this key and as hard as that.
///
/// # Errors
/// When `which` is no bare seed, or gives no case.
pub fn seed_case(
    which: &str,
    spread: Option<&str>,
    difficulty: Option<Within>,
) -> Result<Case, Fault> {
    let way = Spread::ALL.into_iter().find(|one| Some(one.key()) == spread).unwrap_or_default();
    let Ok(seed) = which.parse::<u64>() else {
        let options = match (spread, difficulty) {
            (Some(spread), Some(hard)) => format!("--spread {spread} and --difficulty {hard}"),
            (Some(spread), None) => format!("--spread {spread}"),
            (None, Some(hard)) => format!("--difficulty {hard}"),
            (None, None) => "a seed's options".to_owned(),
        };
        return Err(Fault::new(format!("found \"{which}\" with {options}"))
            .hint("these say how a bare seed is drawn; an address and a file already say it"));
    };
    cases::generate_as(way, seed, &Constraints { difficulty, ..Constraints::default() })
        .map_err(|fault| Fault::new(fault.to_string()))
}

/// A case by address or seed; `None` when the text is neither.
fn drawn(which: &str) -> Option<Result<Case, Fault>> {
    let no_case = |fault: cases::NoCase| Fault::new(fault.to_string());
    if let Ok(seed) = which.parse::<u64>() {
        return Some(cases::generate(seed).map_err(no_case));
    }
    let digits = which.bytes().filter(u8::is_ascii_digit).count();
    if digits > 0 && digits == which.len() {
        return Some(Err(Fault::new(format!("found the seed {which}, which is too large"))
            .hint(format!("a seed is a whole number up to {}", u64::MAX))));
    }
    let address: Address = match which.parse() {
        Ok(address) => address,
        // Digits and points were meant as an address; anything else may be a file.
        Err(bad) if digits > 0 && which.bytes().all(|b| b.is_ascii_digit() || b == b'.') => {
            return Some(Err(Fault::new(engine::chart::BadAddress::to_string(&bad))));
        }
        Err(_) => return None,
    };
    Some(cases::at(address).map_err(no_case))
}

/// The choices of a plan file.
///
/// # Errors
/// Everything that is wrong with it.
pub fn draft(path: &Path) -> Result<Draft, Fault> {
    scenario::parse_plan(&read(path)?).map_err(|faults| refused(path, &faults, TEMPLATES))
}

/// The plan that choices make on a case.
///
/// # Errors
/// Every step that cannot be carried out.
pub fn plan(draft: &Draft, case: &Case, from: &Path) -> Result<Plan, Fault> {
    Plan::from_draft(draft, case).map_err(|refusals| {
        let lines: Vec<String> = refusals.iter().map(ToString::to_string).collect();
        Fault::new(format!(
            "{} cannot be carried out on this case\n{}",
            from.display(),
            lines.join("\n")
        ))
        .hint("decide what is undecided; scenarios/template.plan.toml explains every key")
    })
}
