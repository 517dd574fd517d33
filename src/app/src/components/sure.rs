//! How sure a learner is of a step, asked before anything is told of it. Nobody has to say.

use super::plain::{el, heading, line, toggle, with};
use crate::store::Action;
use engine::plan::Step;
use engine::session::{Event, SURENESS, Session};
use yew::prelude::*;

/// The question, with its five answers.
pub fn sure(session: &Session, due: Step, act: &Callback<Action>) -> Html {
    let said = session.sure().iter().find(|(step, _)| *step == due).map(|(_, percent)| *percent);
    let answer = |percent: u8| {
        let chosen = said == Some(percent);
        let choose = act.reform(move |_: MouseEvent| {
            // Pressed once more it is taken back.
            Action::Do(Event::Sure(due, (!chosen).then_some(percent)))
        });
        toggle(format!("{percent} %"), chosen, choose)
    };
    let asked = "How sure are you that nothing scored in this step will be outside or unsafe?";
    let parts = vec![
        heading("p", "sure-asked", asked.to_owned()),
        el("p", "row", SURENESS.into_iter().map(answer).collect()),
        line(
            "p",
            "from",
            "50 % is a toss-up. Yours to leave out; your review sets it beside what came of it.",
        ),
    ];
    let attributes = [("class", "sure"), ("role", "group"), ("aria-labelledby", "sure-asked")];
    with("div", &attributes, parts)
}
