//! The desk: where an instructor writes a set, sees what it tests, and hands it out.

use crate::components::changed::use_changed;
use crate::components::desk::about::about;
use crate::components::desk::again::{Again, AgainProps};
use crate::components::desk::find::{Find, FindProps};
use crate::components::desk::key::{KeyPart, KeyProps};
use crate::components::desk::line::{LineProps, OwnLine};
use crate::components::desk::listed::listed;
use crate::components::desk::no_patient;
use crate::components::desk::out::{Out, OutProps};
use crate::components::desk::{Desk, tests};
use crate::components::hold::use_held;
use crate::components::plain::{el, line};
use crate::components::view::view;
use crate::effects::Breath;
use crate::handout::on_desk;
use crate::prose::Prose;
use learning::desk::Tested;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// It needs nothing.
#[derive(Properties, PartialEq)]
pub struct DeskProps {}

/// The page.
#[component]
pub fn DeskPage(_: &DeskProps) -> Html {
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let desk = Desk {
        set: use_held(on_desk),
        tested: use_held(Rc::default),
        found: use_held(Rc::default),
        says: use_held(String::new),
    };
    {
        let desk = desk.clone();
        use_changed(desk.set.addresses.clone(), move |_| spawn_local(look(desk)));
    }
    let parts = vec![
        line("h1", "", "Write a set"),
        line(
            "p",
            "lead",
            "Say what it is for, draw cases until they fit, and look at what the set tests before you hand it out. It is kept in this browser as you write.",
        ),
        no_patient(),
        view::<Again>(AgainProps { desk: desk.clone() }),
        about(&desk),
        view::<OwnLine>(LineProps { desk: desk.clone() }),
        view::<Find>(FindProps { desk: desk.clone() }),
        listed(&desk),
        tests::tests(&desk, &prose),
        view::<KeyPart>(KeyProps { desk: desk.clone(), prose }),
        view::<Out>(OutProps { desk }),
    ];
    el("article", "page desk-page", parts)
}

/// Looks at the cases that nobody has looked at yet: each takes a moment, so one after the other.
async fn look(desk: Desk) {
    let mut breath = Breath::now();
    for address in desk.set.addresses.clone() {
        if desk.tested.iter().any(|one| one.address == address) {
            continue;
        }
        breath.take_now().await;
        if let Ok(one) = Tested::at(address) {
            let mut tested = (**desk.tested).clone();
            tested.push(one);
            desk.tested.set(Rc::new(tested));
        }
    }
}
