//! A set that came by link: what it is, its cases, and where it is kept.

use super::home::set_parts;
use crate::components::caution::caution;
use crate::components::changed::use_changed;
use crate::components::hold::use_held;
use crate::components::plain::{alert, el, heading, line, link, links, status};
use crate::handout::{self, with_given};
use crate::library::{Library, ShippedSet};
use crate::store::{Action, Room};
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
    {
        let (read, room) = (read.clone(), props.room.clone());
        // Among the others it can be found once those are here.
        let changed = (props.given.clone(), matches!(room.library, Library::Here(_)));
        use_changed(changed, move |(given, here)| {
            let (given, here) = (given.clone(), *here);
            spawn_local(async move {
                let set = handout::read(&given).await;
                if let (Ok(set), Library::Here(sets), true) = (&set, &room.library, here)
                    && sets.iter().all(|one| one.name != set.name)
                {
                    handout::keep(set);
                    let shipped = sets.iter().filter(|one| !handout::is_given(one));
                    room.dispatch(Action::Library(with_given(shipped.cloned().collect())));
                }
                read.set(Some(set));
            });
        });
    }
    match &*read {
        None => status("The set is being opened.".to_owned()),
        Some(Err(why)) => {
            let parts = vec![
                line("h1", "", "This set cannot be opened"),
                alert("wrong", why.clone()),
                el("p", "", vec![link("#/".to_owned(), "To the sets".to_owned())]),
            ];
            el("article", "page", parts)
        }
        Some(Ok(set)) => {
            let mut parts = vec![heading("h1", "given", set.title.clone())];
            parts.extend(set_parts(set));
            parts.push(line(
                "p",
                "from",
                "This set came by link and is kept in this browser: it stands first among the sets.",
            ));
            parts.push(links(&[
                ("#/portfolio", "Hand in: save your attempts"),
                ("#/", "To the sets"),
            ]));
            parts.push(caution());
            el("article", "page", parts)
        }
    }
}
