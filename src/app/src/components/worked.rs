//! A step of a worked case: what is chosen, and why, to be read before it is carried out.

use super::caution::caution;
use super::known::report;
use super::plain::{self, el, folded, labelled, landing, line, press};
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
    let says =
        "A worked case: read what is chosen here and why, and look at the figures; then go on.";
    let mut parts =
        vec![line("p", "aim", due.aim()), line("p", "guide", says), words_of_step(terms(due))];
    parts.extend(found(props, due));
    let go_on = press(&[("class", "main")], format!("{act}: {}", due.label()), carry_out);
    parts.extend([
        el("ol", "told", told.iter().map(shown).collect()),
        el("div", "carry-out", vec![go_on]),
        caution(),
    ]);
    labelled("sheet worked", "sheet-title", landing("sheet-title", due.label()), parts)
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
        let measured = format!("{} {}", said.measured, said.distance).trim_end().to_owned();
        let mut parts = vec![
            el("p", "with-terms", vec![with_terms(&statement)]),
            plain::said("p", "from", measured),
        ];
        parts.extend(why.map(|why| el("p", "with-terms", vec![with_terms(&why)])));
        el("li", "", parts)
    };
    let mut parts = vec![
        plain::said("p", "decision-name", tooth.named(entry.label).into_owned()),
        el("p", "ask with-terms", vec![with_terms(&tooth.named(entry.ask))]),
        plain::said("p", "chosen", answer_words(told.decision, told.value, tooth)),
    ];
    if !told.because.is_empty() {
        let because = el("ul", "", told.because.iter().map(because).collect());
        parts.push(folded("", "Why".to_owned(), vec![because]));
    }
    html! { <li key={entry.key}>{ for parts }</li> }
}
