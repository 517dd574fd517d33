//! The two cases of a pair with its questions, one after the other.

use super::Shown;
use super::answers::AskedProps;
use super::decide::Decide;
use super::differ::Differ;
use super::sides::sides;
use super::told::told;
use crate::components::caution::caution;
use crate::components::hold::Held;
use crate::components::plain::line;
use crate::components::view::view;
use crate::effects;
use crate::prose::Prose;
use yew::prelude::*;

/// What is said before the first question.
const LOOK: &str = "The second is the first but for one thing, and what is right in the first is not right in the second. Look at both before you answer.";

/// How far the learner has come.
#[derive(Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stage {
    /// The first question.
    Differ,
    /// The second.
    Decide,
    /// The principle is told.
    Told,
}

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct ComparedProps {
    /// The pair.
    pub shown: Shown,
    /// How far the learner has come.
    pub stage: Held<Stage>,
}

/// Both cases, and the questions that are due.
#[component]
pub fn Compared(props: &ComparedProps) -> Html {
    let ComparedProps { shown, stage } = props;
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    // The button that was pressed goes: keyboard and screen reader go on at what comes instead.
    let to = |next: Stage, title: &'static str| {
        let stage = stage.clone();
        let done = Callback::from(move |()| {
            stage.set((*stage).max(next));
            effects::focus_soon(title.to_owned());
        });
        AskedProps { shown: shown.clone(), done }
    };
    // What is not due yet has its place all the same: the framework matches a list from its end.
    let due = |stage_of: Stage, part: &dyn Fn() -> Html| match **stage >= stage_of {
        true => part(),
        false => Html::default(),
    };
    let parts = [
        line("p", "lead", LOOK),
        sides(&shown.0),
        view::<Differ>(to(Stage::Decide, "decide-title")),
        due(Stage::Decide, &|| view::<Decide>(to(Stage::Told, "told-title"))),
        due(Stage::Told, &|| told(&shown.0, &prose)),
        due(Stage::Told, &caution),
    ];
    parts.into_iter().collect()
}
