//! The second question of a pair: which choices have to change.

use super::answers::{AskedProps, use_answers};
use crate::components::changed::use_worked;
use crate::components::plain::{labelled, landing, line};
use engine::plan::Decision;
use engine::search::{Change, answer_words};
use yew::prelude::*;

/// The question.
#[component]
pub fn Decide(props: &AskedProps) -> Html {
    let decisions = use_worked(props.shown.clone(), |shown| shown.0.decisions());
    let answers = use_answers(decisions.len());
    let pair = &props.shown.0;
    let tooth = pair.base.site.tooth;
    let one = |(place, (decision, changes)): (usize, &(Decision, bool))| {
        let name = tooth.named(decision.entry().label);
        let label = match pair.sound.value(*decision) {
            Some(value) => format!("{name}: {}", answer_words(*decision, value, tooth)),
            None => format!("{name}: not asked in the first"),
        };
        let so = pair.answer.changes.iter().find(|change| change.decision == *decision);
        let so = so.map_or_else(
            || "it can stay.".to_owned(),
            |so: &Change| format!("it has to change. {}.", so.words(tooth)),
        );
        let right = answers.of(place).map(|answer| (answer == 1) == *changes);
        let told = (right == Some(true), so.as_str());
        answers.row(("decide", place), label, &["can stay", "has to change"], told)
    };
    let says =
        "Other plans can be sound too. You are asked about the one that changes least of this.";
    let mut parts = vec![line("p", "", says)];
    parts.extend(decisions.iter().enumerate().map(one));
    parts.push(answers.closing("See", &props.done));
    let title = "This is sound in the first case. What has to change in the second?";
    labelled("", "decide-title", landing("decide-title", title), parts)
}
