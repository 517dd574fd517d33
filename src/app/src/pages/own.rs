//! Pages on what one has done oneself: read and replayed once for all of them.

use crate::components::changed::use_changed;
use crate::components::hold::{Held, use_held};
use crate::components::own::note::keep_note;
use crate::components::plain::{alert, text, with};
use crate::components::view::view;
use crate::effects;
use crate::keep::Kept;
use crate::keep::file::saved;
use crate::keep::shelf::shelf;
use crate::pages::keeping::{KeepingPage, KeepingProps};
use crate::pages::portfolio::{PortfolioPage, PortfolioProps};
use crate::pages::review::review;
use crate::pages::sitting::sitting;
use crate::pages::today::today;
use crate::prose::Prose;
use crate::route::Route;
use crate::shelf::Shelf;
use crate::store::Room;
use wasm_bindgen_futures::spawn_local;
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
    let read = use_held(|| None::<Result<Shelf, String>>);
    let changes = use_held(|| 0_u32);
    {
        let read = read.clone();
        // Whatever is added, by this tab or another, changes what is kept.
        let changed = (room.kept.clone(), room.library.clone(), *changes);
        use_changed(changed, move |(kept, library, _)| match kept {
            Kept::Opening => {}
            // What is done without being kept is still done: the pages show what there is.
            Kept::Without(_) => read.set(Some(Ok(Shelf::empty(library.clone())))),
            Kept::Here(_) => {
                let library = library.clone();
                spawn_local(async move { read.set(Some(shelf(library).await)) });
            }
        });
    }
    let shelf = match &*read {
        None => {
            let parts = vec![text("Reading what is kept.".to_owned())];
            return with("p", &[("class", "page"), ("role", "status")], parts);
        }
        Some(Err(why)) => {
            return alert("page", format!("What is kept cannot be read: {why}"));
        }
        Some(Ok(shelf)) => shelf.clone(),
    };
    match &room.route {
        Route::Sitting(name) => sitting(&shelf, name, &prose),
        Route::Keeping => view::<KeepingPage>(KeepingProps { room: room.clone(), shelf }),
        Route::Review => review(&shelf, &prose, &noting(changes)),
        Route::Portfolio => {
            let on_save = Callback::from(save);
            view::<PortfolioPage>(PortfolioProps { shelf, on_save })
        }
        _ => today(&shelf),
    }
}

/// Keeps a note of one's own, and has what is kept read again.
fn noting(changes: Held<u32>) -> Callback<(String, String)> {
    Callback::from(move |(id, text): (String, String)| {
        let changes = changes.clone();
        spawn_local(async move {
            if keep_note(&id, &text).await.is_ok() {
                changes.set(*changes + 1);
            }
        });
    })
}

/// Saves the attempts of these names as a file.
fn save(wanted: Vec<String>) {
    spawn_local(async move {
        // What cannot be a code is left out of the file.
        let code = effects::code();
        if let Ok(text) = saved(Some(&code), |id| wanted.iter().any(|one| one == id)).await {
            effects::save("wallwise-attempts.json", &text);
        }
    });
}
