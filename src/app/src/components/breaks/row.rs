//! One finding: its bar, and in words how far the verdicts stay.

use crate::components::figure::still;
use crate::components::plain::{el, said};
use crate::effects;
use crate::prose::Prose;
use crate::store::Bench;
use engine::search::Holds;
use plots::holds_plot;
use yew::prelude::*;

/// How wide a bar is laid out at most, and what stands beside it on a phone, CSS pixels.
const BAR: f64 = 360.0;
const BESIDE: f64 = 72.0;
/// The finding.
pub fn row(one: &Holds, bench: &Bench, prose: &Prose) -> Html {
    let tooth = bench.session.case().site.tooth;
    let wide = BAR.min(effects::page_width() - BESIDE);
    let past = one.ends.iter().map(|end| {
        let statement = end.rule().map_or_else(String::new, |rule| prose.statement(rule));
        one.past(end, &statement, tooth)
    });
    let words = std::iter::once(one.span()).chain(past.filter(|words| !words.is_empty()));
    let id = format!("holds-{}", one.aspect.scaled().key);
    let drawing = still(holds_plot(one, tooth, wide), Some(id.into()));
    el("li", "", vec![drawing, said("p", "", words.collect::<Vec<_>>().join(" "))])
}
