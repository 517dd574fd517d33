//! Sets, cases and plans as files: from a raw tree with places to valid forms, every fault at once.
//!
//! Keys are strict and carry their unit (`length-mm`); a file says `format = 1` and which kind it is.
//! Whatever is wrong is told with line, column and the nearest known name; nothing stops at the
//! first fault. The valid forms serialise compactly for the page, which never reads TOML.

mod conditions;
mod constraints;
#[cfg(feature = "toml")]
mod from_toml;
mod mode;
mod node;
mod patient;
mod plan;
mod protocol;
mod read;
mod roots;
mod set;
mod site;
mod write;

#[cfg(test)]
#[cfg(feature = "toml")]
mod protocol_tests;
#[cfg(test)]
#[cfg(feature = "toml")]
mod tests;

pub use crate::rules::Level;
pub use conditions::{Conditions, MOST_ATTEMPTS, MOST_MINUTES, Verdicts};
#[cfg(feature = "toml")]
pub use from_toml::LONGEST_FILE;
pub use mode::Mode;
pub use node::{Fault, Faults, Kind, Node, Pair, Place, nearest};
pub use plan::file_key;
pub use set::{CaseSource, Changes, Expect, MOST_CASES, PlanSource, Set, SetCase, Unmet};
pub use write::{HEADER, Listed, plan_template, write_case, write_plan, write_set};

use crate::chart::Case;
use crate::plan::Draft;
use crate::rules::Given;
use read::{Notes, Table};

/// The version of the file format.
pub const FORMAT: i64 = 1;

/// Reads a set file.
///
/// # Errors
/// [`Faults`]: everything that is wrong, in the order of lines.
#[cfg(feature = "toml")]
pub fn parse_set(text: &str) -> Result<Set, Faults> {
    set_from(&from_toml::read(text)?)
}

/// Reads a case that is written out in full.
///
/// # Errors
/// [`Faults`]: everything that is wrong, in the order of lines.
#[cfg(feature = "toml")]
pub fn parse_case(text: &str) -> Result<Case, Faults> {
    case_from(&from_toml::read(text)?)
}

/// Reads a plan file.
///
/// # Errors
/// [`Faults`]: everything that is wrong, in the order of lines.
#[cfg(feature = "toml")]
pub fn parse_plan(text: &str) -> Result<Draft, Faults> {
    plan_from(&from_toml::read(text)?)
}

/// A set from its raw form.
///
/// # Errors
/// [`Faults`]: everything that is wrong.
pub fn set_from(node: &Node) -> Result<Set, Faults> {
    let notes = Notes::default();
    let set = opened(node, "set", &notes).and_then(set::read);
    notes.finish(set)
}

/// A case from its raw form.
///
/// # Errors
/// [`Faults`]: everything that is wrong.
pub fn case_from(node: &Node) -> Result<Case, Faults> {
    let notes = Notes::default();
    let case = opened(node, "case", &notes).and_then(|mut table| {
        let case = case_of(&mut table);
        table.finish();
        case
    });
    notes.finish(case)
}

/// A plan from its raw form.
///
/// # Errors
/// [`Faults`]: everything that is wrong.
pub fn plan_from(node: &Node) -> Result<Draft, Faults> {
    let notes = Notes::default();
    let draft = opened(node, "plan", &notes).map(|mut table| {
        let draft = plan::steps(&mut table);
        table.finish();
        draft
    });
    notes.finish(draft)
}

/// The outermost table, once its format and kind have been read. A later format is refused before
/// anything else is looked at: its keys may mean something else.
fn opened<'a>(node: &'a Node, kind: &str, notes: &'a Notes) -> Option<Table<'a>> {
    let mut table = Table::of(node, String::new(), notes)?;
    if let Some(Kind::Whole(found)) = table.maybe("format").map(|node| &node.kind)
        && *found > FORMAT
    {
        let place = table.maybe("format").map_or(table.place, |node| node.place);
        let says = format!(
            "the file is of format {found}, this version reads format {FORMAT}: use a newer version"
        );
        table.fault("format", place, says);
        return None;
    }
    table.whole("format", FORMAT..=FORMAT);
    let kinds = [("set", "set"), ("case", "case"), ("plan", "plan")];
    let place = table.maybe("kind").map_or(table.place, |node| node.place);
    let found = table.one("kind", &kinds)?;
    if found != kind {
        table.fault("kind", place, format!("the file is a {found}, expected a {kind}"));
        return None;
    }
    Some(table)
}

/// The case in a table that may hold other keys beside it.
fn case_of(table: &mut Table<'_>) -> Option<Case> {
    let title = table.text("title");
    let chance = table.maybe_whole("chance", i64::MIN..=i64::MAX);
    let site = table.table("site").and_then(site::read);
    let patient = table.table("patient").and_then(patient::read);
    let readings = table.table("readings").and_then(patient::readings);
    Some(Case {
        address: None,
        title: title?,
        site: site?,
        patient: patient?,
        readings: readings?,
        chance,
        broken: None,
        local: Given::NONE,
    })
}
