//! What is no part of the report.

use crate::components::plain::{folded, items, line, section};
use yew::prelude::*;

/// So many things that were set aside are in view, and so many are named at all; the rest is counted.
const IN_VIEW: usize = 8;
const NAMED: usize = 200;

/// What was set aside, and why.
pub fn aside(lines: &[String]) -> Html {
    if lines.is_empty() {
        return Html::default();
    }
    let mut first: Vec<String> = lines.iter().take(NAMED).cloned().collect();
    if lines.len() > NAMED {
        first.push(format!("and {} more", lines.len() - NAMED));
    }
    let rest = first.split_off(IN_VIEW.min(first.len()));
    let mut parts = vec![
        line("p", "", "Not part of the report, each with the reason; everything else is."),
        items("", first),
    ];
    if !rest.is_empty() {
        parts.push(folded("", format!("{} more lines", rest.len()), vec![items("", rest)]));
    }
    section("aside", "Set aside", parts)
}
