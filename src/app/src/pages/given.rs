//! A set that came by link: what it is, its cases, and where it is kept.

use super::home::set_parts;
use crate::components::caution::caution;
use crate::components::changed::use_changed;
use crate::components::fields::words;
use crate::components::hold::{Held, use_held};
use crate::components::plain::{el, heading, items, line, links, refused, said, status};
use crate::components::sat::locked::locked;
use crate::handout;
use crate::library::{Library, ShippedSet};
use crate::sat::conditions;
use crate::store::{Action, Room};
use engine::debrief::counted;
use std::rc::Rc;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct GivenProps {
    /// The set, as the link holds it.
    pub given: String,
    /// The room.
    pub room: UseReducerHandle<Room>,
}

/// The page.
#[component]
pub fn GivenPage(props: &GivenProps) -> Html {
    let read = use_held(|| None::<Result<ShippedSet, String>>);
    let says = use_held(String::new);
    let code = use_held(String::new);
    let sealed = handout::is_sealed(&props.given);
    {
        let (read, room) = (read.clone(), props.room.clone());
        // Among the others it can be found once those are here.
        let is_here = matches!(room.library, Library::Here(_));
        let changed = (props.given.clone(), (*code).clone(), is_here);
        use_changed(changed, move |(given, code, _)| {
            let (given, code) = (given.clone(), code.clone());
            spawn_local(async move {
                if sealed && code.is_empty() {
                    return;
                }
                let set = handout::read(&given, &code).await;
                if let Some(set) = set.as_ref().ok().filter(|set| !set.forms) {
                    take(set, &room);
                }
                read.set(Some(set));
            });
        });
    }
    let set = match &*read {
        None if sealed && code.is_empty() => return el("article", "page", locked(&code, "")),
        Some(Err(why)) if sealed => return el("article", "page", locked(&code, why)),
        None => return status("The set is being opened.".to_owned()),
        Some(Err(why)) => return refused("This set cannot be opened", why),
        Some(Ok(set)) => set,
    };
    let mut parts = vec![heading("h1", "given", set.title.clone())];
    if set.forms {
        parts.extend(own(set, &read, &says, &props.room));
    } else {
        parts.extend(set_parts(set));
        parts.push(items("", conditions(set).words()));
        parts.push(line(
            "p",
            "from",
            "This set came by link and is kept in this browser: it stands first among the sets.",
        ));
        parts.push(links(&[("#/portfolio", "Hand in: save your attempts"), ("#/", "To the sets")]));
    }
    parts.push(caution());
    el("article", "page", parts)
}

/// Asks for the learner's code, and draws the learner's own cases from it.
fn own(
    set: &ShippedSet,
    read: &Held<Option<Result<ShippedSet, String>>>,
    says: &Held<String>,
    room: &UseReducerHandle<Room>,
) -> Vec<Html> {
    let told = says.clone();
    let (read, says, room, model) = (read.clone(), says.clone(), room.clone(), set.clone());
    let code = Callback::from(move |code: String| {
        let (read, says, room, model) = (read.clone(), says.clone(), room.clone(), model.clone());
        says.set("Your cases are being drawn.".to_owned());
        spawn_local(async move {
            match handout::own_form(&model, &code).await {
                Ok(own) => {
                    take(&own, &room);
                    read.set(Some(Ok(own)));
                }
                Err(why) => says.set(why),
            }
        });
    });
    let count = set.addresses.len();
    let cases = counted(count, "case");
    let about = format!("{cases} of your own, about the same and as hard as everybody's.");
    vec![
        said("p", "", set.aim.clone()),
        said("p", "from", about),
        words("given-code", "Your code: the one that you hand in under", "", code),
        status((*told).clone()),
    ]
}

/// Keeps the set among the others, once.
fn take(set: &ShippedSet, room: &UseReducerHandle<Room>) {
    let Library::Here(sets) = &room.library else { return };
    if sets.iter().all(|one| one.name != set.name) {
        handout::keep(set);
        // Where nothing can be kept it is here for as long as the page.
        let all = core::iter::once(set).chain(sets.iter()).cloned().collect();
        room.dispatch(Action::Library(Library::Here(Rc::new(all))));
    }
}
