//! What the page is given beside its module: the shipped sets, the long texts of the rules, and the
//! stylesheet of the figures. All three are made from the engine's own tables at build.

use super::asset::Asset;
use crate::commands::set;
use crate::{Fault, Why};
use engine::chart::Address;
use engine::debrief::LongText;
use engine::figures::style::stylesheet;
use engine::rules;
use engine::rules::ledger::{self, FACTS};
use engine::scenario::{Level, Mode};
use serde::Serialize;
use std::fs;
use std::path::Path;

/// A set as the page reads it.
#[derive(Debug, Serialize)]
struct Shipped {
    name: String,
    title: String,
    aim: String,
    level: &'static str,
    /// What the set decides otherwise than the rules, as text: the page reads it once it has the rules.
    #[serde(skip_serializing_if = "String::is_empty")]
    protocol: String,
    /// When verdicts come, where that is not step by step.
    #[serde(skip_serializing_if = "str::is_empty")]
    mode: &'static str,
    /// Whether each learner gets cases of their own in place of these.
    #[serde(skip_serializing_if = "core::ops::Not::not")]
    forms: bool,
    /// Under what conditions it is sat, as text likewise.
    #[serde(skip_serializing_if = "String::is_empty")]
    conditions: String,
    cases: Vec<String>,
    addresses: Vec<Address>,
}

/// Everything that is given.
///
/// # Errors
/// When a shipped set cannot be read or one of its cases cannot be drawn.
pub fn given(scenarios: &Path) -> Result<Vec<Asset>, Fault> {
    Ok(vec![
        json("sets.json", &sets(scenarios)?)?,
        Asset { path: "prose.txt".to_owned(), bytes: prose().into_bytes() },
        Asset { path: "figures.css".to_owned(), bytes: stylesheet(".drawing").into_bytes() },
    ])
}

/// The list of sets of a page that has one alone.
#[derive(Debug)]
pub struct OneSet {
    /// The list.
    pub asset: Asset,
    /// The set's cases.
    pub addresses: Vec<Address>,
}

/// The list of sets of a page that has this one alone.
///
/// # Errors
/// As [`given`].
pub fn of_one_set(name: &str, file: &Path) -> Result<OneSet, Fault> {
    let one = shipped(name.to_owned(), file)?;
    let asset = json("sets.json", &[&one])?;
    Ok(OneSet { asset, addresses: one.addresses })
}

/// A set as a link holds it: what the room reads, without a name of its own.
///
/// # Errors
/// As [`given`].
pub fn in_link(file: &Path) -> Result<Vec<u8>, Fault> {
    Ok(json("the link", &shipped(String::new(), file)?)?.bytes)
}

/// The long texts of the rules, family by family, and the facts behind them.
fn prose() -> String {
    let facts = LongText { text: ledger::text(), ..LongText::default() };
    let rules = rules::all().map(|rule| LongText::of(rule).record(rule.id));
    rules.chain([facts.record(FACTS)]).collect()
}

fn json<T: Serialize>(path: &str, value: &T) -> Result<Asset, Fault> {
    let bytes = serde_json::to_vec(value).why(|| format!("cannot write {path}"))?;
    Ok(Asset { path: path.to_owned(), bytes })
}

/// The set files of a folder (`NAME.set.toml`), in the order of their names.
fn sets(folder: &Path) -> Result<Vec<Shipped>, Fault> {
    let cannot = || format!("cannot read the folder {}", folder.display());
    let mut files = Vec::new();
    for entry in fs::read_dir(folder).why(cannot)? {
        files.push(entry.why(cannot)?.path());
    }
    files.sort();
    let name_of = |file: &Path| {
        let name = file.file_name()?.to_str()?;
        name.strip_suffix(".set.toml").map(str::to_owned)
    };
    files
        .iter()
        .filter_map(|file| Some((name_of(file)?, file)))
        .map(|(name, file)| shipped(name, file))
        .collect()
}

fn shipped(name: String, file: &Path) -> Result<Shipped, Fault> {
    let set = set::read(file)?;
    let mut cases = Vec::new();
    let mut addresses = Vec::new();
    for (place, entry) in set.cases.iter().enumerate() {
        let case = entry.case(set.local()).map_err(|fault| {
            Fault::new(format!("{}: case {}: {fault}", file.display(), place + 1))
        })?;
        cases.push(case.title.clone());
        // The page reads addresses only: reading cases written out in full would weigh down the
        // first visit of everybody.
        addresses.push(case.address.ok_or_else(|| {
            Fault::new(format!("{}: case {} is written out in full", file.display(), place + 1))
                .hint("a set that ships with the page names its cases by address or seed")
        })?);
    }
    let level = match set.level {
        Level::Student => "student",
        Level::Resident => "resident",
    };
    let text = || serde_json::to_string(&set.protocol).why(|| format!("cannot write {name}"));
    let protocol = if set.protocol.is_empty() { String::new() } else { text()? };
    let conditions = if set.conditions.is_empty() { String::new() } else { set.conditions.line() };
    // What most sets are goes unsaid.
    let mode = if set.mode == Mode::Study { "" } else { set.mode.key() };
    let (title, aim, forms) = (set.title, set.aim, set.forms);
    Ok(Shipped { name, title, aim, level, mode, forms, protocol, conditions, cases, addresses })
}
