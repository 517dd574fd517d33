//! After a worked case: one of the same kind with its end left open, then one to do alone.

use crate::components::changed::use_worked;
use crate::components::plain::{el, line, link};
use crate::route::{CaseRoute, From, Route};
use crate::store::Bench;
use engine::cases;
use engine::session::Shown;
use std::rc::Rc;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct OnwardProps {
    /// The case.
    pub bench: Rc<Bench>,
}

/// The way on; nothing after a case that was the learner's own.
#[component]
pub fn Onward(props: &OnwardProps) -> Html {
    let address = props.bench.session.opened().address;
    let next = use_worked(address, |address| {
        let kin = address.and_then(|address| cases::kin(address).ok());
        kin.and_then(|case| case.address)
    });
    let (Some(shown), Some(address)) = (props.bench.asked.shown, *next) else {
        return Html::default();
    };
    let (says, way, then) = match shown {
        Shown::Whole => (
            "You have read a whole case. In the next one of its kind the first steps are shown and the last are yours.",
            "Go on: the last steps are yours",
            Some(Shown::Begun),
        ),
        Shown::Begun => (
            "You have ended a case that was begun for you. The next one of its kind is all yours.",
            "Go on: a case of your own",
            None,
        ),
    };
    let case = CaseRoute { shown: then, ..CaseRoute::study(From::Address(address)) };
    let way = link(Route::Case(case).fragment(), way.to_owned());
    el("section", "next-worked", vec![line("p", "", says), el("p", "", vec![way])])
}
