//! The first question of a pair: what is alike, and what differs.

use super::answers::{AskedProps, use_answers};
use crate::components::changed::use_worked;
use engine::chart::Change;
use engine::search::Against;
use yew::prelude::*;

/// The question.
#[component]
pub fn Differ(props: &AskedProps) -> Html {
    let rows = use_worked(props.shown.clone(), |shown| shown.0.rows());
    let answers = use_answers(rows.len());
    let tooth = props.shown.0.base.site.tooth;
    let against_words = Against::ALL.map(Against::words);
    let one = |(place, (first, second, against)): (usize, &(Change, Change, Against))| {
        let label = tooth.named(first.aspect.scaled().words).into_owned();
        let right = answers.of(place).map(|answer| Against::ALL[answer] == *against);
        let so = match against {
            Against::Alike => format!("{} in both.", first.words()),
            _ => format!("{} in the first, {} in the second.", first.words(), second.words()),
        };
        answers.row(("differ", place), label, &against_words, (right == Some(true), &so))
    };
    html! {
        <section aria-labelledby="differ-title">
            <h2 id="differ-title">{ "What is alike, and what differs?" }</h2>
            { for rows.iter().enumerate().map(one) }
            { answers.closing("Compare", &props.done) }
        </section>
    }
}
