//! One case: board, sheet, what is known, and the debrief at its end.

use crate::components::board::board;
use crate::components::judged;
use crate::components::known::known;
use crate::components::sheet::{Sheet, sheet};
use crate::components::steps::steps;
use crate::effects;
use crate::route::{CaseRoute, From, Route};
use crate::store::{Action, Bench, Notation, Room};
use engine::session::Mode;
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
    let before = use_mut_ref(|| (0, false));
    // Once acts are carried out, or the case begun again, keyboard and screen reader go on there.
    use_effect_with(done, move |done| {
        if before.replace(*done) != *done {
            effects::focus("sheet-title");
        }
    });
    let mut view = bench.session.view();
    let reports = judged::reports(bench, &props.room);
    // The numbers follow a drag as the figures do.
    let tried = bench.session.tried(&bench.tried);
    for decision in view.decisions.iter_mut().filter(|decision| !decision.settled) {
        decision.value = tried.value(decision.entry.decision).cloned();
    }
    let over = bench.session.is_over();
    html! {
        <div class={classes!("case", over.then_some("over"))}>
            { case_head(bench, props.room.notation) }
            { steps(&view.steps, over) }
            if let Some(told) = &bench.told { <p class="goes-on" role="status">{ told.clone() }</p> }
            { judged::decided(bench, &props.room) }
            <div class="desk">
                { board(bench, props.room.judging, &act) }
                <div class="side">
                    if over {
                        { judged::debrief(bench, &props.room) }
                    } else if let Some(worked) = judged::worked(bench, &props.room) {
                        { worked }
                    } else {
                        { sheet(&Sheet { view: &view, terms: judged::terms_of(bench, &props.room), reports: &reports, last: judged::last(bench, &props.room), refusal: bench.refusal.as_ref().map(|why| view.tooth.named(&why.to_string()).into_owned()), note: judged::note(bench, &props.room), sure: judged::sure(bench, &props.room, &act), said: bench.said.as_ref(), explain: props.room.judging.map(|judging| judging.explain), outline: props.room.judging.map(|judging| judging.outline), act: &act }) }
                    }
                    { judged::plates(bench, &props.room, &act) }
                    { known(&view, &reports) }
                </div>
            </div>
        </div>
    }
}

/// Title, tooth, how it is played, and the address to hand on.
fn case_head(bench: &Bench, notation: Notation) -> Html {
    let case = bench.session.case();
    let tooth = case.site.tooth;
    let named = match notation {
        Notation::TwoDigits => format!("Tooth {tooth}"),
        Notation::OneToThirtyTwo => format!("Tooth {} (1 to 32)", tooth.one_to_thirty_two()),
    };
    let asked = &bench.asked;
    let lasting = match (&asked.from, case.address) {
        (From::Seed(..), Some(address)) => {
            CaseRoute { from: From::Address(address), sitting: None, ..asked.clone() }
        }
        _ => CaseRoute { sitting: None, ..asked.clone() },
    };
    let address = effects::address_of(&Route::Case(lasting).fragment());
    let copied = {
        let address = address.clone();
        Callback::from(move |_: MouseEvent| effects::copy(&address))
    };
    let mode = match asked.mode {
        Mode::Study => "Study: each step is explained as you go.",
        Mode::Assessment => "Assessment: everything waits for the end.",
    };
    html! {
        <header class="case-head">
            <div>
                <h1>{ &case.title }</h1>
                <p>{ format!("{named}, {} · {} · {}", tooth.words(), case.patient.name, mode) }</p>
            </div>
            <p class="address"><label>{ "Address " }<input type="text" readonly=true size="28" value={address} /></label><button type="button" class="quiet" onclick={copied}>{ "Copy" }</button></p>
        </header>
    }
}
