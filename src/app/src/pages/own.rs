//! Pages on what one has done oneself: read and replayed once for all of them.

use crate::keep::Kept;
use crate::keep::shelf::{Shelf, shelf};
use crate::pages::keeping::KeepingPage;
use crate::pages::sitting::sitting;
use crate::pages::today::today;
use crate::prose::Prose;
use crate::route::Route;
use crate::store::Room;
use yew::prelude::*;

/// What they need.
#[derive(Properties, PartialEq)]
pub struct OwnProps {
    /// The room.
    pub room: UseReducerHandle<Room>,
}

/// The pages.
#[component]
pub fn OwnPages(props: &OwnProps) -> Html {
    let room = &props.room;
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let read = use_state(|| None::<Result<Shelf, String>>);
    {
        let read = read.clone();
        // Whatever is added, by this tab or another, changes what is kept.
        use_effect_with((room.kept.clone(), room.route.clone()), move |(kept, _)| match kept {
            Kept::Opening => {}
            // What is done without being kept is still done: the pages show what there is.
            Kept::Without(_) => read.set(Some(Ok(Shelf::default()))),
            Kept::Here(_) => {
                wasm_bindgen_futures::spawn_local(async move { read.set(Some(shelf().await)) })
            }
        });
    }
    let shelf = match &*read {
        None => return html! { <p class="page" role="status">{ "Reading what is kept." }</p> },
        Some(Err(why)) => {
            return html! { <p class="page" role="alert">{ format!("What is kept cannot be read: {why}") }</p> };
        }
        Some(Ok(shelf)) => shelf,
    };
    match &room.route {
        Route::Sitting(name) => sitting(shelf, name, &prose),
        Route::Keeping => html! { <KeepingPage room={room.clone()} shelf={shelf.clone()} /> },
        _ => today(shelf),
    }
}
