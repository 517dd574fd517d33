//! The first question of a pair: what is alike, and what differs.

use super::answers::{AskedProps, use_answers};
use crate::components::changed::use_worked;
use crate::components::plain::{heading, labelled};
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
    let mut parts: Vec<Html> = rows.iter().enumerate().map(one).collect();
    parts.push(answers.closing("Compare", &props.done));
    let title = "What is alike, and what differs?".to_owned();
    labelled("", "differ-title", heading("h2", "differ-title", title), parts)
}
