//! Erasing everything, with a word on what goes.

use crate::components::hold::use_held;
use crate::components::plain::{self, disabled, el, live, press, section};
use crate::effects;
use crate::handout;
use crate::keep::channel::Word;
use crate::keep::db::{STORES, Write};
use crate::keep::keeper::keeper;
use crate::keep::told::Told;
use crate::store::{Action, Room};
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct EraseProps {
    /// The whole room.
    pub room: UseReducerHandle<Room>,
    /// Attempts, things done in them, notes.
    pub counts: [usize; 3],
}

/// Asks once more before it erases.
#[component]
pub fn Erase(props: &EraseProps) -> Html {
    let said = use_held(String::new);
    let sure = use_held(|| false);
    let tick = {
        let sure = sure.clone();
        Callback::from(move |_: MouseEvent| sure.set(!*sure))
    };
    let erase = {
        let (said, sure, room) = (said.clone(), sure.clone(), props.room.clone());
        Callback::from(move |_: MouseEvent| {
            let (said, sure, room) = (said.clone(), sure.clone(), room.clone());
            wasm_bindgen_futures::spawn_local(async move {
                said.set(match erased(&room).await {
                    Ok(()) => "Everything is erased.".to_owned(),
                    Err(why) => why,
                });
                sure.set(false);
            });
        })
    };
    let [attempts, events, notes] = props.counts;
    let says = format!(
        "This takes away, in this browser and for good: {attempts} attempts with {events} things done in them, your objections among these, {notes} notes, your instructor's code, the sets that came by link and the one that you are writing. What you saved as a file stays where you saved it; the room itself stays too."
    );
    let asked = html! { <label><input type="checkbox" checked={*sure} onclick={tick} />{ " I want all of that gone." }</label> };
    let erase = press(&[disabled(!*sure)], "Erase everything".to_owned(), erase);
    let status = live((*said).clone());
    let parts = vec![
        plain::said("p", "", says),
        el("p", "row", vec![asked]),
        el("p", "row", vec![erase, status]),
    ];
    section("erase-title", "Erase everything", parts)
}

async fn erased(room: &UseReducerHandle<Room>) -> Result<(), String> {
    let keeper = keeper();
    let db = keeper.db().ok_or("Nothing is kept in this browser.")?;
    let all = STORES.map(Write::Clear);
    db.write(&all).await.map_err(|why| why.to_string())?;
    effects::forget_keeping();
    effects::remember_code("");
    handout::forget();
    keeper.forget();
    keeper.tell_tabs(&Word::Erased);
    room.dispatch(Action::Keep(Told::Erased { here: true }));
    Ok(())
}
