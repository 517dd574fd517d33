//! Plans written out, and the template of all that a plan may say.

use super::page::{Page, list, number, quoted};
use crate::plan::choices::Choice;
use crate::plan::{Decision, Draft, Entry, Kind, NumberKind, Step};
use crate::scenario::plan::file_key;
use crate::session::Plain;
use core::fmt::Write as _;

/// A plan written out, step by step.
#[must_use]
pub fn write_plan(draft: &Draft) -> String {
    let mut page = Page::new("plan");
    for step in Step::ALL {
        let of_step: Vec<_> = Decision::ALL
            .iter()
            .filter(|entry| entry.step == *step)
            .filter_map(|entry| Some((entry, draft.value(entry.decision)?)))
            .collect();
        if of_step.is_empty() {
            continue;
        }
        page.table(step.key());
        for (entry, value) in of_step {
            let text = match Plain::of(entry.decision, value) {
                Plain::Key(key) => quoted(&key),
                Plain::Number(value) => number(value),
                Plain::Keys(keys) => list(keys.iter().map(|key| quoted(key))),
                Plain::Outline(points) => {
                    list(points.iter().map(|[s, t]| format!("[{}, {}]", number(*s), number(*t))))
                }
            };
            page.put(&file_key(entry), text, entry.ask);
        }
    }
    page.0
}

/// A plan file with every decision, what it asks and what may be answered: to be copied and cut. The
/// answers are the first of each list, not advice.
#[must_use]
pub fn plan_template() -> String {
    let mut page = Page::new("plan");
    let _ = writeln!(
        page.0,
        "# Every decision, in the order of care. Leave out what your plan does not ask; the answers\n\
         # here are the first of each list, not advice."
    );
    for step in Step::ALL {
        page.table(step.key());
        for entry in Decision::ALL.iter().filter(|entry| entry.step == *step) {
            example(&mut page, entry);
        }
    }
    page.0
}

/// One decision with what it asks and what may be answered.
fn example(page: &mut Page, entry: &Entry) {
    let _ = writeln!(page.0, "# {}", entry.ask);
    let key = file_key(entry);
    match entry.kind {
        Kind::One(options) => {
            alternatives(page, options);
            page.put(&key, quoted(options.first().map_or("", |one| one.key)), "one of these");
        }
        Kind::Many(options) => {
            alternatives(page, options);
            let first = options.first().map(|one| quoted(one.key));
            page.put(&key, list(first.into_iter()), "any number of these");
        }
        Kind::Number(kind) => example_number(page, &key, &kind),
        Kind::Outline => {
            let means = "3 to 16 points [s, t] on the map, s distal, t apical of the facial crest, steps of 0.1";
            page.put(&key, "[[-5.0, 0.0], [5.0, 0.0], [5.0, 8.0], [-5.0, 8.0]]", means);
        }
    }
}

fn example_number(page: &mut Page, key: &str, kind: &NumberKind) {
    let shown = |count: i32| number(f64::from(count) / f64::from(kind.per_unit));
    let middle = if kind.allows(0) { 0 } else { kind.least };
    let [below, above] = kind.ways;
    let ways = if below.is_empty() {
        String::new()
    } else {
        format!("; negative {below}, positive {above}")
    };
    let means = format!(
        "{} to {} {} in steps of {}{ways}",
        shown(kind.least),
        shown(kind.most),
        kind.unit,
        shown(kind.by)
    );
    page.put(key, shown(middle), &means);
}

fn alternatives(page: &mut Page, options: &[Choice]) {
    for option in options {
        let _ = writeln!(page.0, "#   {}: {}", option.key, option.label);
    }
}
