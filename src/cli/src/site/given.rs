//! What the page is given beside its module: the shipped sets, the long texts of the rules, and the
//! stylesheet of the figures. All three are made from the engine's own tables at build.

use super::asset::Asset;
use crate::commands::set;
use crate::{Fault, Why};
use engine::chart::Address;
use engine::debrief;
use engine::figures::style::stylesheet;
use engine::rules::ledger::{self, FACTS};
use engine::rules::{self, Rule};
use engine::scenario::Level;
use serde::Serialize;
use std::collections::BTreeMap;
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
    cases: Vec<String>,
    addresses: Vec<Address>,
}

/// What the page says of a rule at length: left out of its module, fetched after the first case.
#[derive(Debug, Default, Serialize)]
struct LongText<'a> {
    statement: &'static str,
    why: &'static str,
    mend: &'static str,
    text: &'a str,
    sources: Vec<String>,
    differ: String,
    positions: [&'static str; 2],
}

impl LongText<'_> {
    fn of(rule: &'static Rule) -> Self {
        Self {
            statement: rule.statement,
            why: rule.why,
            mend: rule.mend,
            text: rules::prose(rule.id).unwrap_or_default(),
            sources: debrief::sources(rule),
            differ: debrief::differ(rule),
            positions: rule.positions.map_or([""; 2], |both| [both.one, both.other]),
        }
    }
}

/// Everything that is given.
///
/// # Errors
/// When a shipped set cannot be read or one of its cases cannot be drawn.
pub fn given(scenarios: &Path) -> Result<Vec<Asset>, Fault> {
    let facts = ledger::text();
    let mut long: BTreeMap<&str, LongText<'_>> =
        rules::all().map(|rule| (rule.id, LongText::of(rule))).collect();
    long.insert(FACTS, LongText { text: &facts, ..LongText::default() });
    Ok(vec![
        json("sets.json", &sets(scenarios)?)?,
        json("prose.json", &long)?,
        Asset { path: "figures.css".to_owned(), bytes: stylesheet(".drawing").into_bytes() },
    ])
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
    Ok(Shipped { name, title: set.title, aim: set.aim, level, protocol, cases, addresses })
}
