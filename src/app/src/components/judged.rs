//! What the judge says of the case on the bench, once the rules are here.

use super::plain::{button, line, said, status, with};
use crate::guide;
use crate::store::{Action, Bench, Room};
use crate::terms::Term;
use engine::plan::Step;
use engine::session::Report;
use std::rc::Rc;
use yew::prelude::*;

/// The debrief, or that it is still to come.
pub fn debrief(bench: &Rc<Bench>, room: &UseReducerHandle<Room>) -> Html {
    match (room.judging, &room.trouble) {
        (Some(judging), _) => (judging.debrief)(bench.clone(), room.clone()),
        (None, Some(why)) => no_judge(why, room),
        (None, None) => line("p", "", "The rules are on their way."),
    }
}

/// What stands in place of the case, where its set has not been begun or its verdicts wait.
pub fn instead(bench: &Rc<Bench>, room: &UseReducerHandle<Room>) -> Option<Html> {
    room.judging.and_then(|judging| (judging.instead)(bench, room))
}

/// What stands over the case: the clock of its set.
pub fn over(bench: &Bench, room: &Room) -> Html {
    room.judging.map(|judging| (judging.over)(bench, room)).unwrap_or_default()
}

/// The step that is due, where it is shown.
pub fn worked(bench: &Rc<Bench>, room: &UseReducerHandle<Room>) -> Option<Html> {
    let judging = room.judging.filter(|_| bench.is_told())?;
    Some((judging.worked)(bench.clone(), room.clone()))
}

/// What study mode says of the step before.
pub fn last(bench: &Bench, room: &UseReducerHandle<Room>) -> Html {
    match (bench.session.due(), room.judging, &room.trouble) {
        (Some(due), Some(judging), _) => (judging.last)(bench, room, due),
        (_, None, Some(why)) => no_judge(why, room),
        // Something was carried out and nothing is told of it yet.
        (_, None, None) if bench.session.shown().chart.is_some() => {
            status("What was found is on its way.".to_owned())
        }
        _ => Html::default(),
    }
}

/// What examinations and acts have reported; nothing while who tells it is still to come.
pub fn reports(bench: &Bench, room: &Room) -> Vec<Report> {
    room.judging.map_or_else(Vec::new, |judging| (judging.reports)(&bench.session))
}

/// The terms of the step that is due, once who explains them is here.
pub fn terms_of(bench: &Bench, room: &Room) -> &'static [Term] {
    let due = bench.session.due().zip(room.judging);
    due.map_or(&[], |(due, judging)| (judging.terms)(due))
}

/// What is said beside the step that is due in a guided case: at the first one at once.
pub fn note(bench: &Bench, room: &Room) -> Option<&'static str> {
    let due = bench.session.due().filter(|_| bench.asked.guided)?;
    match room.judging {
        _ if due == Step::Chart => Some(guide::CHART),
        Some(judging) => Some((judging.note)(due)),
        None => None,
    }
}

/// Where the learner says how sure they are of the step that is due.
pub fn sure(bench: &Bench, room: &Room, act: &Callback<Action>) -> Html {
    let due = bench.session.due().zip(room.judging);
    due.map(|(due, judging)| (judging.sure)(&bench.session, due, act)).unwrap_or_default()
}

/// Films and sections; nothing while what computes them is still to come.
pub fn plates(bench: &Rc<Bench>, room: &Room, act: &Callback<Action>) -> Html {
    room.judging.map(|judging| (judging.plates)(bench.clone(), act.clone())).unwrap_or_default()
}

/// What the set that gives the case decides otherwise than the rules.
pub fn decided(bench: &Bench, room: &Room) -> Html {
    let local = &*bench.session.opened().local;
    match room.judging {
        Some(judging) if !local.protocol.is_empty() => (judging.decided)(local),
        _ => Html::default(),
    }
}

/// Why no verdicts are shown, and a way to them.
fn no_judge(why: &str, room: &UseReducerHandle<Room>) -> Html {
    let again = {
        let room = room.clone();
        Callback::from(move |_: MouseEvent| room.dispatch(Action::AskAgain))
    };
    let parts = vec![said("p", "", why.to_owned()), button("Fetch them again", again)];
    with("div", &[("class", "wrong"), ("role", "alert")], parts)
}
