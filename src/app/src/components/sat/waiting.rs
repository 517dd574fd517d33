//! A case at its end whose verdicts wait: for the last case of its set, or for the instructor's word.

use super::here::{Here, hand_in};
use crate::components::changed::use_changed;
use crate::components::fields::words;
use crate::components::hold::use_held;
use crate::components::plain::{button, el, landing, line, link, links, said, status};
use crate::keep::Kept;
use crate::library::ShippedSet;
use crate::route::Route;
use crate::sat;
use crate::store::{Action, Bench, Room};
use engine::scenario::Verdicts;
use std::rc::Rc;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct WaitingProps {
    /// The case.
    pub bench: Rc<Bench>,
    /// Its set.
    pub set: ShippedSet,
    /// The room.
    pub room: UseReducerHandle<Room>,
}

/// What stands in place of the debrief.
#[component]
pub fn Waiting(props: &WaitingProps) -> Html {
    let (set, room) = (&props.set, &props.room);
    let says = use_held(String::new);
    let here = use_held(|| None::<Here>);
    let verdicts = sat::conditions(set).verdicts;
    let show = {
        let (name, room) = (set.name.clone(), room.clone());
        Callback::from(move |()| {
            sat::show(&name);
            room.dispatch(Action::Sat);
        })
    };
    {
        let (here, set, show) = (here.clone(), set.clone(), show.clone());
        let after_set = verdicts == Verdicts::AfterSet;
        use_changed(room.kept.clone(), move |_| {
            wasm_bindgen_futures::spawn_local(async move {
                let found = Here::of(&set).await;
                if after_set && found.as_ref().is_some_and(|here| here.open.is_empty()) {
                    show.emit(());
                }
                here.set(found);
            });
        });
    }
    let mut parts = vec![line("p", "lead", "This case is at its end.")];
    match &verdicts {
        Verdicts::AtWord(_) => {
            let (says, awaited, show) = (says.clone(), verdicts.clone(), show.clone());
            let typed = Callback::from(move |word: String| match awaited.come_with(&word) {
                true => show.emit(()),
                false => says.set("That is not the word: ask your instructor.".to_owned()),
            });
            parts.push(line("p", "", "Its verdicts come with a word that your instructor says."));
            parts.push(words("sat-word", "The word", "", typed));
        }
        _ => {
            parts.push(line("p", "", "Its verdicts come when every case of the set is at its end."))
        }
    }
    parts.push(status((*says).clone()));
    if let Some(here) = &*here {
        parts.extend(next(set, &here.open));
        parts.extend(hand_in(here));
    }
    if matches!(room.kept, Kept::Without(_)) && verdicts == Verdicts::AfterSet {
        // What is not kept cannot be counted; nobody is locked out of what they did.
        let done = button("I have been through every case", show.reform(|_: MouseEvent| ()));
        parts.push(el("p", "row", vec![done]));
    }
    parts.push(links(&[("#/", "To the sets")]));
    let heading = landing("sheet-title", "Done");
    let title = said("h1", "", props.bench.session.case().title.clone());
    el("article", "page", [vec![title, heading], parts].concat())
}

/// The ways to the cases that are still open.
fn next(set: &ShippedSet, open: &[usize]) -> Vec<Html> {
    if open.is_empty() {
        return vec![line("p", "", "Every case of the set is at its end.")];
    }
    let one = |place: &usize| {
        let title = set.cases.get(*place - 1).cloned().unwrap_or_default();
        el("li", "", vec![link(Route::Case(set.case(*place)).fragment(), title)])
    };
    vec![line("h2", "", "Still open"), el("ol", "cases", open.iter().map(one).collect())]
}
