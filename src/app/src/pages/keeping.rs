//! What is kept in this browser, exactly, and where; saving, bringing in, erasing.

use crate::components::own::erase::Erase;
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
    let count = use_state(|| [0; 3]);
    let space = use_state(String::new);
    let said = use_state(String::new);
    {
        let (count, space) = (count.clone(), space.clone());
        use_effect_with(props.shelf.clone(), move |_| {
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
    let [attempts, events, notes] = *count;
    let aside =
        props.shelf.aside.iter().map(|(id, why)| html! { <li>{ format!("{id}: {why}") }</li> });
    html! {
        <article class="page keeping">
            <h1>{ "What is kept, and where" }</h1>
            <p class="lead">{ "All of it in this browser, on this device, for this address. There is no account, nobody counts your visits, and nothing is sent anywhere. Another browser, a private window or another device knows nothing of it." }</p>
            <dl>
                <dt>{ "Your practice" }</dt><dd>{ format!("{attempts} attempts, {events} things done in them with the time of each, {notes} notes. In the browser's database (IndexedDB) named wallwise. Choices only: verdicts are worked out anew each time.") }</dd>
                <dt>{ "Two marks" }</dt><dd>{ "That the briefing was read, and that attempts are kept. In the browser's local storage." }</dd>
                <dt>{ "The room itself" }</dt><dd>{ "Its program and texts, so that it opens without a connection. In the browser's cache." }</dd>
                <dt>{ "Space" }</dt><dd><span role="status">{ &*space }</span></dd>
            </dl>
            if !props.shelf.aside.is_empty() { <h2>{ "Kept, and not readable here" }</h2><ul>{ for aside }</ul><p>{ "They stay as they are." }</p> }
            <h2>{ "Keep it safe" }</h2>
            <p>{ "A browser may clear what it stores: when space runs short, when history is cleared, in some browsers after a week without a visit. A file of your own is the only safe copy." }</p>
            <p class="row"><button type="button" class="main" onclick={save}>{ "Save everything as a file" }</button><button type="button" class="quiet" onclick={persist}>{ "Ask this browser not to clear it" }</button></p>
            <p><label for="bring-in">{ "Bring a saved file in. What is here stays; bringing the same file in twice changes nothing." }</label></p>
            <p><input id="bring-in" type="file" accept=".json,application/json" onchange={bring} /></p>
            <p role="status" class="said">{ &*said }</p>
            <Erase room={props.room.clone()} counts={*count} />
        </article>
    }
}

fn save_all(room: &UseReducerHandle<Room>, said: &UseStateHandle<String>) -> Callback<MouseEvent> {
    let (room, said) = (room.clone(), said.clone());
    Callback::from(move |_| {
        let (room, said) = (room.clone(), said.clone());
        wasm_bindgen_futures::spawn_local(async move {
            let file = match (&room.kept, &room.bench) {
                (kept @ Kept::Without(_), Some(bench)) => Ok(of_one(bench, kept).await),
                _ => saved(|_| true).await,
            };
            match file {
                Ok(text) => effects::save("wallwise-attempts.json", &text),
                Err(why) => said.set(why),
            }
        });
    })
}

fn bring(room: &UseReducerHandle<Room>, said: &UseStateHandle<String>) -> Callback<Event> {
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
