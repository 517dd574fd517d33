//! Where the case stands: its steps in the order of care.

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
        let current = (view.state == StepState::Due).then_some("step");
        html! {
            <li class={class} aria-current={current}>
                <span>{ view.step.label() }</span>
                <span class="visually-hidden">{ format!(", {says}") }</span>
            </li>
        }
    });
    let debrief = if over { "due" } else { "to-come" };
    html! {
        <nav class="steps" aria-label="Steps of this case">
            <ol>
                { for steps }
                <li class={debrief} aria-current={over.then_some("step")}><span>{ "Debrief" }</span></li>
            </ol>
        </nav>
    }
}
