//! Words about a step: terms of the trade in one sentence each, opened by touch, pointer or key, and
//! what is still undecided.

use crate::store::Said;
use crate::terms::Term;
use engine::anatomy::Tooth;
use engine::plan::Decision;
use yew::prelude::*;

/// The terms of a step; nothing where there are none to explain.
pub fn words_of_step(terms: &[Term]) -> Html {
    if terms.is_empty() {
        return Html::default();
    }
    let terms =
        terms.iter().map(|(term, means)| html! { <><dt>{ *term }</dt><dd>{ *means }</dd></> });
    html! {
        <details class="glossary">
            <summary>{ "Words of this step" }</summary>
            <dl>{ for terms }</dl>
        </details>
    }
}

/// What keeps the step from being carried out.
pub fn undecided(missing: &[Decision], tooth: Tooth) -> String {
    let names: Vec<_> =
        missing.iter().map(|decision| tooth.named(decision.entry().label)).collect();
    format!("Still undecided: {}.", names.join(", "))
}

/// What is said beside a figure: always there, so that a screen reader hears it change.
pub fn said(said: Option<&Said>) -> Html {
    let wrong = said.filter(|said| said.wrong).map(|_| "wrong");
    html! { <p class={classes!("said", wrong)} role="status">{ said.map(|said| said.words.clone()) }</p> }
}
