//! A step of a worked case: what is chosen, and why, to be read before it is carried out.

use super::caution::caution;
use super::known::report;
use super::term::with_terms;
use super::words::words_of_step;
use crate::components::changed::use_changed;
use crate::prose::Prose;
use crate::store::{Action, Bench, Room};
use crate::terms::terms;
use engine::debrief::{Verdict, explain};
use engine::plan::Step;
use engine::search::answer_words;
use engine::session::{Event, Told};
use std::rc::Rc;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct WorkedProps {
    /// The case, with its lesson.
    pub bench: Rc<Bench>,
    /// The whole room.
    pub room: UseReducerHandle<Room>,
}

/// The sheet of a step that is shown.
#[component]
pub fn WorkedSheet(props: &WorkedProps) -> Html {
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let session = &props.bench.session;
    let stage = (session.due(), session.weighing().is_some());
    let lesson = props.bench.lesson.as_ref();
    let events = lesson.map(|lesson| lesson.events(session)).unwrap_or_default();
    {
        // The figures show the choices of the step before it is carried out, as they show a drag.
        let (room, mut choices) = (props.room.clone(), events.clone());
        use_changed(stage, move |_| {
            choices.retain(|event| matches!(event, Event::Choose(..)));
            room.dispatch(Action::Try(choices));
        });
    }
    let (Some(lesson), Some(due)) = (lesson, session.due()) else {
        return Html::default();
    };
    let told = lesson.told(session);
    let act = if stage.1 { "Conclude" } else { "Carry out" };
    let carry_out = {
        let room = props.room.clone();
        Callback::from(move |_: MouseEvent| room.dispatch(Action::Follow(events.clone())))
    };
    let shown = |told: &Told<'_>| choice(told, session.case().site.tooth, &prose);
    html! {
        <section class="sheet worked" aria-labelledby="sheet-title">
            <h2 id="sheet-title" tabindex="-1">{ due.label() }</h2>
            <p class="aim">{ due.aim() }</p>
            <p class="guide">{ "A worked case: read what is chosen here and why, and look at the figures; then go on." }</p>
            { words_of_step(terms(due)) }
            { for found(props, due) }
            <ol class="told">{ for told.iter().map(shown) }</ol>
            <div class="carry-out">
                <button type="button" class="main" onclick={carry_out}>{ format!("{act}: {}", due.label()) }</button>
            </div>
            { caution() }
        </section>
    }
}

/// What was found stands where it is weighed.
fn found(props: &WorkedProps, due: Step) -> Vec<Html> {
    let session = &props.bench.session;
    let weighing = session.weighing().is_some();
    let here = session.reports().into_iter();
    here.filter(|one| one.weighed_in == due && (one.step != due || weighing))
        .map(|one| report(&one))
        .collect()
}

/// One decision: what is asked, what is chosen, what the rules say of it.
fn choice(told: &Told<'_>, tooth: engine::anatomy::Tooth, prose: &Prose) -> Html {
    let entry = told.decision.entry();
    let because = |verdict: &&Verdict| {
        let said = explain(verdict, tooth);
        let statement = tooth.named(&prose.statement(verdict.rule)).into_owned();
        let why = prose.of(verdict.rule.id).map(|long| tooth.named(&long.why).into_owned());
        html! {
            <li>
                <p class="with-terms">{ with_terms(&statement) }</p>
                <p class="from">{ format!("{} {}", said.measured, said.distance).trim_end().to_owned() }</p>
                if let Some(why) = why { <p class="with-terms">{ with_terms(&why) }</p> }
            </li>
        }
    };
    html! {
        <li key={entry.key}>
            <p class="decision-name">{ tooth.named(entry.label) }</p>
            <p class="ask with-terms">{ with_terms(&tooth.named(entry.ask)) }</p>
            <p class="chosen">{ answer_words(told.decision, told.value, tooth) }</p>
            if !told.because.is_empty() {
                <details><summary>{ "Why" }</summary><ul>{ for told.because.iter().map(because) }</ul></details>
            }
        </li>
    }
}
