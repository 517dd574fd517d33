//! What is kept in this browser, exactly, and where; saving, bringing in, erasing.

use crate::components::changed::use_changed;
use crate::components::hold::{Held, use_held};
use crate::components::own::erase::{Erase, EraseProps};
use crate::components::own::kept::told;
use crate::components::plain::{button, el, press, text, with};
use crate::components::view::view;
use crate::effects;
use crate::keep::Kept;
use crate::keep::file::{BroughtIn, bring_in, of_one, saved};
use crate::keep::shelf::counts;
use crate::shelf::Shelf;
use crate::store::Room;
use wasm_bindgen::JsCast;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct KeepingProps {
    /// The whole room.
    pub room: UseReducerHandle<Room>,
    /// What could be read.
    pub shelf: Shelf,
}

/// The page.
#[component]
pub fn KeepingPage(props: &KeepingProps) -> Html {
    let count = use_held(|| [0; 3]);
    let space = use_held(String::new);
    let said = use_held(String::new);
    {
        let (count, space) = (count.clone(), space.clone());
        use_changed(props.shelf.clone(), move |_| {
            wasm_bindgen_futures::spawn_local(async move {
                count.set(counts().await);
                space.set(effects::space().await);
            });
        });
    }
    let save = save_all(&props.room, &said);
    let bring = bring(&props.room, &said);
    let persist = {
        let space = space.clone();
        Callback::from(move |_: MouseEvent| {
            let space = space.clone();
            wasm_bindgen_futures::spawn_local(async move {
                effects::persisted(true).await;
                space.set(effects::space().await);
            });
        })
    };
    let mut parts = told(*count, &space, &props.shelf);
    let save = press(&[("class", "main")], "Save everything as a file".to_owned(), save);
    parts.push(el("p", "row", vec![save, button("Ask this browser not to clear it", persist)]));
    let label = text("Bring a saved file in. What is here stays; bringing the same file in twice changes nothing.".to_owned());
    parts.push(el("p", "", vec![with("label", &[("for", "bring-in")], vec![label])]));
    parts.push(html! { <p><input id="bring-in" type="file" accept=".json,application/json" onchange={bring} /></p> });
    let said = vec![text((*said).clone())];
    parts.push(with("p", &[("role", "status"), ("class", "said")], said));
    parts.push(view::<Erase>(EraseProps { room: props.room.clone(), counts: *count }));
    el("article", "page keeping", parts)
}

fn save_all(room: &UseReducerHandle<Room>, said: &Held<String>) -> Callback<MouseEvent> {
    let (room, said) = (room.clone(), said.clone());
    Callback::from(move |_| {
        let (room, said) = (room.clone(), said.clone());
        wasm_bindgen_futures::spawn_local(async move {
            let file = match (&room.kept, &room.bench) {
                (kept @ Kept::Without(_), Some(bench)) => Ok(of_one(bench, kept).await),
                _ => saved(None, |_| true).await,
            };
            match file {
                Ok(text) => effects::save("wallwise-attempts.json", &text),
                Err(why) => said.set(why),
            }
        });
    })
}

fn bring(room: &UseReducerHandle<Room>, said: &Held<String>) -> Callback<Event> {
    let (room, said) = (room.clone(), said.clone());
    Callback::from(move |event: Event| {
        let field = event.target().and_then(|field| field.dyn_into::<HtmlInputElement>().ok());
        let Some(field) = field else { return };
        let (room, said) = (room.clone(), said.clone());
        wasm_bindgen_futures::spawn_local(async move {
            let told = match effects::text_of(&field).await {
                Ok(text) => bring_in(&text, &room).await.map(words),
                Err(why) => Err(why),
            };
            said.set(told.unwrap_or_else(|why| why));
        });
    })
}

fn words(told: BroughtIn) -> String {
    let mut words = format!(
        "{} new, {} gone further than here, {} already here.",
        told.new, told.further, told.same
    );
    for fault in &told.faults {
        words.push_str(&format!(" Left out: {fault}."));
    }
    words
}
