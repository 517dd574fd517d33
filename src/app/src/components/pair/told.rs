//! What a pair was about: the rule, both plans on the second case, and the way on.

use crate::components::figure::Drawing;
use crate::components::verdict::VerdictView;
use crate::prose::Prose;
use crate::route::{CaseRoute, From, Route};
use engine::figures::{self, Show};
use engine::plan::{Draft, Plan};
use engine::rules::Known;
use engine::search::Pair;
use engine::session::Mode;
use yew::prelude::*;

/// How wide a figure is laid out, CSS pixels.
const WIDE: f64 = 320.0;

/// The principle.
pub fn told(pair: &Pair, prose: &Prose) -> Html {
    let tooth = pair.other.site.tooth;
    let Some(worst) = pair.wrong.first() else { return Html::default() };
    let statement = tooth.named(&prose.statement(worst.rule)).into_owned();
    let onward = pair.other.address.map(|address| {
        let case = CaseRoute {
            from: From::Address(address),
            mode: Mode::Study,
            guided: false,
            shown: None,
        };
        Route::Case(case).fragment()
    });
    html! {
        <section aria-labelledby="told-title">
            <h2 id="told-title">{ "What decides" }</h2>
            <p class="lead">{ statement }</p>
            <p>{ format!("With {} it is kept; with {}, the same plan breaks it.", pair.was.words(), pair.is.words()) }</p>
            <VerdictView verdict={worst.clone()} {tooth} />
            <div class="sides">
                { drawn(pair, &pair.sound, "kept", "The first case's plan, in the second case") }
                { drawn(pair, &pair.answer.draft, "changed", "The plan changed") }
            </div>
            if let Some(href) = onward { <p><a class="onward" {href}>{ "Take the second case as your own" }</a></p> }
        </section>
    }
}

fn drawn(pair: &Pair, draft: &Draft, id: &str, title: &str) -> Html {
    let case = &pair.other;
    let Ok(plan) = Plan::from_draft(draft, case) else {
        return html! { <p>{ "The first case's plan cannot be carried out in the second." }</p> };
    };
    let known = Known::of(case, &plan);
    let show = Show { case, plan: &plan, draft, known: &known, reveal: true, lit: None, px: WIDE };
    html! {
        <section aria-labelledby={format!("{id}-title")}>
            <h3 id={format!("{id}-title")}>{ title.to_owned() }</h3>
            <Drawing id={format!("{id}-map")} figure={figures::facial_map(&show)} />
            <Drawing id={format!("{id}-section")} figure={figures::section(&show)} />
        </section>
    }
}
