//! One case: board, sheet, what is known, and the debrief at its end.

use crate::components::board::board;
use crate::components::case_head::case_head;
use crate::components::changed::use_changed;
use crate::components::hold::use_held;
use crate::components::judged;
use crate::components::known::known;
use crate::components::plain::{el, text, with};
use crate::components::sheet::{Sheet, sheet};
use crate::components::steps::steps;
use crate::effects;
use crate::store::{Action, Bench, Room};
use engine::session::{Report, View};
use std::cell::Cell;
use std::rc::Rc;
use yew::prelude::*;

/// What the page needs.
#[derive(Properties, PartialEq)]
pub struct BenchProps {
    /// The case.
    pub bench: Rc<Bench>,
    /// The whole room.
    pub room: UseReducerHandle<Room>,
}

/// The page.
#[component]
pub fn BenchPage(props: &BenchProps) -> Html {
    let bench = &props.bench;
    let act = {
        let room = props.room.clone();
        Callback::from(move |action: Action| room.dispatch(action))
    };
    let done = (bench.session.done().len(), bench.session.weighing().is_some());
    let before = use_held(|| Cell::new((0, false)));
    // Once acts are carried out, or the case begun again, keyboard and screen reader go on there.
    use_changed(done, move |done| {
        if before.replace(*done) != *done {
            effects::focus("sheet-title");
        }
    });
    if let Some(instead) = judged::instead(bench, &props.room) {
        return instead;
    }
    let mut view = bench.session.view();
    let reports = judged::reports(bench, &props.room);
    // The numbers follow a drag as the figures do.
    let tried = bench.session.tried(&bench.tried);
    for decision in view.decisions.iter_mut().filter(|decision| !decision.settled) {
        decision.value = tried.value(decision.entry.decision).cloned();
    }
    let over = bench.session.is_over();
    // What is not there has its place all the same: the framework matches a list from its end.
    let told = bench
        .told
        .clone()
        .map(|told| with("p", &[("class", "goes-on"), ("role", "status")], vec![text(told)]));
    let worked = || judged::worked(bench, &props.room);
    let asked = || sheet(&sheet_of(props, &view, &reports, &act));
    let side = vec![
        if over { judged::debrief(bench, &props.room) } else { worked().unwrap_or_else(asked) },
        judged::plates(bench, &props.room, &act),
        known(&view, &reports),
    ];
    let desk = vec![board(bench, props.room.judging, &act), el("div", "side", side)];
    let parts = vec![
        case_head(bench, props.room.notation),
        judged::over(bench, &props.room),
        steps(&view.steps, over),
        told.unwrap_or_default(),
        judged::decided(bench, &props.room),
        el("div", "desk", desk),
    ];
    el("div", if over { "case over" } else { "case" }, parts)
}

/// What the sheet of decisions needs.
fn sheet_of<'a>(
    props: &'a BenchProps,
    view: &'a View,
    reports: &'a [Report],
    act: &'a Callback<Action>,
) -> Sheet<'a> {
    let BenchProps { bench, room } = props;
    let refusal = bench.refusal.as_ref();
    Sheet {
        view,
        terms: judged::terms_of(bench, room),
        reports,
        last: judged::last(bench, room),
        refusal: refusal.map(|why| view.tooth.named(&why.to_string()).into_owned()),
        note: judged::note(bench, room),
        sure: judged::sure(bench, room, act),
        said: bench.said.as_ref(),
        explain: room.judging.map(|judging| judging.explain),
        outline: room.judging.map(|judging| judging.outline),
        act,
    }
}
