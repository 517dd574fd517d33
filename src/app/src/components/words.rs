//! Terms of the trade in one sentence each, opened by touch, pointer or key.

use crate::terms::terms;
use engine::plan::Step;
use yew::prelude::*;

/// The terms of a step.
pub fn words_of_step(step: Step) -> Html {
    let terms = terms(step)
        .iter()
        .map(|(term, means)| html! { <><dt>{ *term }</dt><dd>{ *means }</dd></> });
    html! {
        <details class="glossary">
            <summary>{ "Words of this step" }</summary>
            <dl>{ for terms }</dl>
        </details>
    }
}
