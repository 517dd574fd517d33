//! What a case that is drawn by a seed must meet.

use super::read::Table;
use crate::anatomy::Tooth;
use crate::cases::{Archetype, Constraints, Within};

/// The constraints; `None` where one cannot be read.
pub(super) fn constraints(table: &mut Table<'_>) -> Option<Constraints> {
    let words: Vec<(&'static str, Archetype)> =
        Archetype::ALL.iter().map(|one| (one.key(), *one)).collect();
    let named = table.maybe("archetype").is_some();
    let archetype = table.maybe_one("archetype", &words);
    let has_tooth = table.maybe("tooth").is_some();
    let tooth: Option<Tooth> = if has_tooth { super::site::tooth(table) } else { None };
    let upper = table.maybe_truth("upper");
    let aesthetic = table.maybe_truth("aesthetic");
    let (has_range, difficulty) = within(table);
    if has_range && difficulty.is_none() {
        return None;
    }
    if (named && archetype.is_none()) || (has_tooth && tooth.is_none()) {
        return None;
    }
    Some(Constraints { archetype, tooth, upper, aesthetic, difficulty })
}

/// Whether a difficulty is asked for, and which.
fn within(table: &mut Table<'_>) -> (bool, Option<Within>) {
    const KEY: &str = "difficulty";
    let Some(node) = table.maybe(KEY) else { return (false, None) };
    let ends = table.row::<2>(KEY, node, &(0.0..=1.0));
    let within = ends.and_then(|[from, to]| {
        Within::new(from, to).map_err(|why| table.fault(KEY, node.place, why.to_string())).ok()
    });
    (true, within)
}
