//! What a pair was about: the rule, both plans on the second case, and the way on.

use super::sides;
use crate::components::plain::{el, heading, labelled, landing, line, onward, said};
use crate::components::verdict::verdict;
use crate::prose::Prose;
use crate::route::{CaseRoute, From, Route};
use engine::figures::{self, Figure, Show};
use engine::plan::Plan;
use engine::rules::Known;
use engine::search::Pair;
use yew::prelude::*;

/// How wide a figure is laid out, CSS pixels.
const WIDE: f64 = 320.0;

/// The principle.
pub fn told(pair: &Pair, prose: &Prose) -> Html {
    let tooth = pair.other.site.tooth;
    let Some(worst) = pair.wrong.first() else { return Html::default() };
    let statement = tooth.named(&prose.statement(worst.rule)).into_owned();
    let address = pair
        .other
        .address
        .map(|address| Route::Case(CaseRoute::study(From::Address(address))).fragment());
    let [is, was] = [pair.is.words(), pair.was.words()];
    let named = tooth.named(pair.is.aspect.scaled().words);
    let mut parts = vec![
        said("p", "lead", statement),
        said(
            "p",
            "",
            format!("{named}: with {was} the rule is kept, with {is} the same plan breaks it."),
        ),
        verdict(worst, tooth),
        drawn(pair),
    ];
    parts.extend(address.map(|href| onward(&href, "Take the second case as your own")));
    labelled("", "told-title", landing("told-title", "What decides"), parts)
}

/// The first case's plan in the second, and the plan as it has to be with the former dashed over it.
fn drawn(pair: &Pair) -> Html {
    let case = &pair.other;
    let plan = |draft| Plan::from_draft(draft, case).ok();
    let (Some(kept), Some(changed)) = (plan(&pair.sound), plan(&pair.answer.draft)) else {
        return line("p", "", "The first case's plan cannot be carried out in the second.");
    };
    let known = [&kept, &changed].map(|plan| Known::of(case, plan));
    let old = Show {
        case,
        plan: &kept,
        draft: &pair.sound,
        known: &known[0],
        reveal: true,
        lit: None,
        px: WIDE,
    };
    let new = Show { plan: &changed, draft: &pair.answer.draft, known: &known[1], ..old };
    let map = figures::facial_map_against(&new, &old).unwrap_or_else(|| figures::facial_map(&new));
    let section = figures::section_against(&new, &old).unwrap_or_else(|| figures::section(&new));
    let old = [figures::facial_map(&old), figures::section(&old)];
    let both = vec![
        side("kept", "The first case's plan, in the second case", old),
        side("changed", "The plan as it has to be", [map, section]),
    ];
    el("div", "sides", both)
}

fn side(id: &str, title: &str, [map, section]: [Figure; 2]) -> Html {
    let drawn = sides::drawn(id, map, section);
    let id = format!("{id}-title");
    labelled("", &id, heading("h3", &id, title.to_owned()), drawn.into())
}
