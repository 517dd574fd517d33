//! The nearest sound plan in figures, the learner's own dashed over it.

use crate::components::figure::still;
use crate::components::plain::{el, line, together};
use crate::store::Bench;
use engine::figures::{self, Figure, Show};
use engine::plan::Plan;
use engine::rules::Known;
use engine::search::Nearest;
use yew::prelude::*;

/// The plan as it would be, what stands otherwise in the learner's own over it; nothing where no figure
/// shows a difference.
pub fn pictured(bench: &Bench, nearest: &Nearest) -> Html {
    let case = bench.session.case();
    let Ok(plan) = Plan::from_draft(&nearest.draft, bench.session.opened()) else {
        return Html::default();
    };
    let (draft, known) = (&nearest.draft, Known::of(case, &plan));
    let show = Show { case, plan: &plan, draft, known: &known, reveal: true, lit: None, px: 300.0 };
    let (mine, my) = (bench.session.plan(), bench.session.draft());
    let my_known = Known::of(case, mine);
    let old = Show { plan: mine, draft: my, known: &my_known, ..show };
    let drawn: Vec<(&'static str, Figure)> = [
        ("nearest-section", figures::section_against(&show, &old)),
        ("nearest-map", figures::facial_map_against(&show, &old)),
    ]
    .into_iter()
    .filter_map(|(id, figure)| Some((id, figure?)))
    .collect();
    if drawn.is_empty() {
        return line(
            "p",
            "",
            "These are matters of how and when, not of where: the figures stay as they are.",
        );
    }
    let drawn = drawn.into_iter().map(|(id, figure)| still(figure, Some(id.into())));
    let says = "As it would be; what stands otherwise in your own plan is dashed.";
    together(vec![line("p", "", says), el("div", "sides", drawn.collect())])
}
