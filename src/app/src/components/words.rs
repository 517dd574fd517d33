//! Words about a step: terms of the trade in one sentence each, opened by touch, pointer or key, and
//! what is still undecided.

use super::plain::{el, folded, line, text, with};
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
        terms.iter().flat_map(|(term, means)| [line("dt", "", term), line("dd", "", means)]);
    let terms = el("dl", "", terms.collect());
    folded("glossary", "Words of this step".to_owned(), vec![terms])
}

/// What keeps the step from being carried out.
pub fn undecided(missing: &[Decision], tooth: Tooth) -> String {
    let names: Vec<_> =
        missing.iter().map(|decision| tooth.named(decision.entry().label)).collect();
    format!("Still undecided: {}.", names.join(", "))
}

/// What is said beside a figure: always there, so that a screen reader hears it change.
pub fn said(said: Option<&Said>) -> Html {
    let class = if said.is_some_and(|said| said.wrong) { "said wrong" } else { "said" };
    let words = said.map(|said| said.words.clone()).unwrap_or_default();
    with("p", &[("class", class), ("role", "status")], vec![text(words)])
}
