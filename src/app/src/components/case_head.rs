//! What stands over a case.

use super::plain::{button, el, said};
use crate::effects;
use crate::route::{CaseRoute, From, Route};
use crate::store::{Bench, Notation};
use engine::session::Mode;
use yew::prelude::*;

/// Title, tooth, how it is played, and the address to hand on.
pub fn case_head(bench: &Bench, notation: Notation) -> Html {
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
    let titles = vec![
        said("h1", "", case.title.clone()),
        said("p", "", format!("{named}, {} · {} · {}", tooth.words(), case.patient.name, mode)),
    ];
    let field = html! { <label>{ "Address " }<input type="text" readonly=true size="28" value={address} /></label> };
    let copied = vec![field, button("Copy", copied)];
    el("header", "case-head", vec![el("div", "", titles), el("p", "address", copied)])
}
