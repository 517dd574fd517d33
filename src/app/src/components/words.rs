//! Terms of the trade in one sentence each, opened by touch, pointer or key.

use crate::terms::terms;
use engine::plan::Step;
use yew::prelude::*;

/// What the list of terms needs.
#[derive(Properties, PartialEq)]
pub struct WordsProps {
    /// The step whose terms are explained.
    pub step: Step,
}

/// The terms of a step.
#[component]
pub fn WordsOfStep(props: &WordsProps) -> Html {
    let terms = terms(props.step)
        .iter()
        .map(|(term, means)| html! { <><dt>{ *term }</dt><dd>{ *means }</dd></> });
    html! {
        <details class="glossary">
            <summary>{ "Words of this step" }</summary>
            <dl>{ for terms }</dl>
        </details>
    }
}
