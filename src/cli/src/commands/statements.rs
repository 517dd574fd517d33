//! `wallwise statements FILE...`: attempts that learners saved, as statements of the Experience API.

use super::set;
use crate::{Fault, Status, Streams, input, site};
use engine::chart::Address;
use engine::rules::Local;
use engine::scenario::Mode;
use learning::file;
use learning::handing::compact::Kept;
use learning::handing::outcome::{Outcome, hash_of};
use learning::handing::sat::{Sat, case_of};
use learning::handing::xapi::{self, NOWHERE};
use serde::de::IgnoredAny;
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

/// The name of what stands outside sets.
const OUTSIDE: &str = "outside-sets";

#[derive(Debug, clap::Args)]
pub struct Args {
    /// Files of attempts that the room saved, one learner each
    #[arg(required = true, value_name = "FILE")]
    files: Vec<PathBuf>,
    /// A set file: what came of that set is told as a whole, by its own cases
    #[arg(long = "set", value_name = "SET")]
    sets: Vec<PathBuf>,
    /// The address under which activities and accounts are named, without a slash at its end
    #[arg(long, value_name = "ADDRESS", default_value = NOWHERE)]
    base: String,
}

/// A set that somebody named.
struct Named {
    name: String,
    title: String,
    hash: String,
    local: Local,
    assessed: bool,
    addresses: Vec<Address>,
}

/// Does every attempt again and prints the statements; what had to be set aside is a finding.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let sets = args.sets.iter().map(|file| named(file)).collect::<Result<Vec<_>, _>>()?;
    let mut outcomes = Vec::new();
    let mut aside = Vec::new();
    for file in &args.files {
        let mut tell = |why: String| aside.push(format!("{}: {why}", file.display()));
        let read = file::read::<IgnoredAny>(&input::read(file)?);
        read.faults.iter().for_each(|fault| tell(fault.to_string()));
        let mut records = read.records;
        records.sort_by_key(|one| (one.head.begun, one.head.number));
        let attempts: Vec<Kept> =
            records.into_iter().map(|one| Kept { head: one.head, events: one.events }).collect();
        // Whoever gathers files tells learners apart by this, and learns no more of them.
        let first = attempts.first().map(|one| hash_of(&one.head.id)).unwrap_or_default();
        let learner = read.learner.unwrap_or_else(|| format!("learner-{first}"));
        outcomes.extend(of_learner(&learner, attempts, &sets, &mut tell));
    }
    for one in &aside {
        streams.say(&format!("set aside: {one}"));
    }
    if outcomes.is_empty() {
        return Err(Fault::new("found no attempt in what was given".to_owned())
            .hint("give files that the room saved"));
    }
    let now = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    let now = u64::try_from(now.as_millis()).unwrap_or(u64::MAX);
    let text = xapi::file(&outcomes, &args.base, now).map_err(|why| {
        Fault::new(why.to_string()).hint("`wallwise statements --help` says more")
    })?;
    streams.print(&text)?;
    Ok(if aside.is_empty() { Status::Done } else { Status::Findings })
}

fn named(file: &Path) -> Result<Named, Fault> {
    let set = set::read(file)?;
    let name = set::name_of(file)?.to_owned();
    let sent = site::of_one_set(&name, file)?;
    let local = set.local();
    Ok(Named {
        addresses: sent.addresses,
        hash: hash_of(&String::from_utf8_lossy(&sent.asset.bytes)),
        assessed: set.mode == Mode::Assessment,
        title: set.title,
        name,
        local,
    })
}

/// What came of everything that one learner did, set by set in the order in which they were begun.
fn of_learner(
    learner: &str,
    attempts: Vec<Kept>,
    sets: &[Named],
    tell: &mut dyn FnMut(String),
) -> Vec<Outcome> {
    let mut by_set: Vec<(String, Vec<Kept>)> = Vec::new();
    for one in attempts {
        let name = one.head.set.clone().unwrap_or_else(|| OUTSIDE.to_owned());
        match by_set.iter_mut().find(|(other, _)| *other == name) {
            Some((_, attempts)) => attempts.push(one),
            None => by_set.push((name, vec![one])),
        }
    }
    let outcomes = by_set.iter().map(|(name, attempts)| {
        let Some(set) = sets.iter().find(|set| set.name == *name) else {
            return of_cases(learner, name, attempts, tell);
        };
        let sat = Sat {
            name,
            title: &set.title,
            addresses: &set.addresses,
            local: &set.local,
            assessed: set.assessed,
        };
        Outcome { hash: set.hash.clone(), ..sat.outcome(learner, attempts) }
    });
    outcomes.filter(|told| told.cases.iter().any(|case| case.is_begun())).collect()
}

/// What came of cases whose set nobody named, by their addresses: the latest attempt at each.
fn of_cases(learner: &str, name: &str, attempts: &[Kept], tell: &mut dyn FnMut(String)) -> Outcome {
    let mut cases: Vec<learning::handing::outcome::CaseOutcome> = Vec::new();
    for one in attempts.iter().rev() {
        let case = one.head.address.map(|at| at.to_string().replace('.', "-")).unwrap_or_default();
        if cases.iter().any(|other| other.name == case) {
            continue;
        }
        match case_of(&case, one, None) {
            Ok(case) => cases.push(case),
            Err(why) => tell(format!("{}: {why}", one.head.id)),
        }
    }
    let title = if name == OUTSIDE { "Cases outside sets" } else { name };
    Outcome::new(learner, name, title).with(cases)
}
