//! What a pair was about: the rule, both plans on the second case, and the way on.

use crate::components::figure::Drawing;
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
    let onward = pair
        .other
        .address
        .map(|address| Route::Case(CaseRoute::study(From::Address(address))).fragment());
    html! {
        <section aria-labelledby="told-title">
            <h2 id="told-title" tabindex="-1">{ "What decides" }</h2>
            <p class="lead">{ statement }</p>
            <p>{ format!("{}: with {} the rule is kept, with {} the same plan breaks it.", tooth.named(pair.is.aspect.scaled().words), pair.was.words(), pair.is.words()) }</p>
            { verdict(worst, tooth) }
            { drawn(pair) }
            if let Some(href) = onward { <p><a class="onward" {href}>{ "Take the second case as your own" }</a></p> }
        </section>
    }
}

/// The first case's plan in the second, and the plan as it has to be with the former dashed over it.
fn drawn(pair: &Pair) -> Html {
    let case = &pair.other;
    let plan = |draft| Plan::from_draft(draft, case).ok();
    let (Some(kept), Some(changed)) = (plan(&pair.sound), plan(&pair.answer.draft)) else {
        return html! { <p>{ "The first case's plan cannot be carried out in the second." }</p> };
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
    html! {
        <div class="sides">
            { side("kept", "The first case's plan, in the second case", figures::facial_map(&old), figures::section(&old)) }
            { side("changed", "The plan as it has to be", map, section) }
        </div>
    }
}

fn side(id: &str, title: &str, map: Figure, section: Figure) -> Html {
    html! {
        <section aria-labelledby={format!("{id}-title")}>
            <h3 id={format!("{id}-title")}>{ title.to_owned() }</h3>
            <Drawing id={format!("{id}-map")} figure={map} />
            <Drawing id={format!("{id}-section")} figure={section} />
        </section>
    }
}
