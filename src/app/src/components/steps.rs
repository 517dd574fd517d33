//! Where the case stands: its steps in the order of care.

use super::plain::{el, line, said, with};
use engine::session::{StepState, StepView};
use yew::prelude::*;

/// The row of steps.
pub fn steps(steps: &[StepView], over: bool) -> Html {
    let shown = steps.iter().filter(|view| view.state != StepState::NotInCourse);
    let steps = shown.map(|view| {
        let (class, says) = match view.state {
            StepState::Done => ("done", "carried out"),
            StepState::Due => ("due", "now"),
            StepState::ToCome | StepState::NotInCourse => ("to-come", "to come"),
        };
        let says = said("span", "visually-hidden", format!(", {says}"));
        step(class, vec![line("span", "", view.step.label()), says])
    });
    let debrief = if over { "due" } else { "to-come" };
    let mut steps: Vec<Html> = steps.collect();
    steps.push(step(debrief, vec![line("span", "", "Debrief")]));
    let attributes = [("class", "steps"), ("aria-label", "Steps of this case")];
    with("nav", &attributes, vec![el("ol", "", steps)])
}

/// A step of this state; the one that is due is where the learner is.
fn step(class: &'static str, parts: Vec<Html>) -> Html {
    let current = if class == "due" { "step" } else { "" };
    with("li", &[("class", class), ("aria-current", current)], parts)
}
