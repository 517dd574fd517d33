//! A note to oneself, kept beside an attempt.

use crate::components::changed::use_changed;
use crate::components::hold::use_held;
use crate::components::plain::{el, text, with};
use crate::keep::db::{NOTES, Write};
use crate::keep::keeper::keeper;
use learning::file::LONGEST_NOTE;
use wasm_bindgen::JsCast;
use web_sys::HtmlTextAreaElement;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct NoteProps {
    /// The attempt's name.
    pub id: AttrValue,
}

/// Keeps a note, or takes it away where nothing is left of it.
///
/// # Errors
/// A sentence, where it cannot be kept.
pub async fn keep_note(id: &str, text: &str) -> Result<(), String> {
    let db = keeper().db().ok_or("Nothing is kept in this browser.")?;
    let text: String = text.trim().chars().take(LONGEST_NOTE).collect();
    let write = match text.is_empty() {
        true => Write::Delete(NOTES, id.to_owned()),
        false => Write::Put(NOTES, id.to_owned(), text),
    };
    db.write(&[write]).await.map_err(|why| why.to_string())
}

/// The field.
#[component]
pub fn OwnNote(props: &NoteProps) -> Html {
    let field = use_node_ref();
    let said = use_held(String::new);
    {
        let field = field.clone();
        use_changed(props.id.clone(), move |id| {
            let id = id.clone();
            wasm_bindgen_futures::spawn_local(async move {
                let Some(db) = keeper().db() else { return };
                let texts = db.texts(NOTES, &id).await.unwrap_or_default();
                if let (Some(field), Some(text)) =
                    (field.cast::<HtmlTextAreaElement>(), texts.first())
                {
                    field.set_value(text);
                }
            });
        });
    }
    let keep = {
        let (said, id) = (said.clone(), props.id.clone());
        Callback::from(move |event: Event| {
            let field =
                event.target().and_then(|field| field.dyn_into::<HtmlTextAreaElement>().ok());
            let Some(text) = field.map(|field| field.value()) else { return };
            let (said, id) = (said.clone(), id.clone());
            wasm_bindgen_futures::spawn_local(async move {
                said.set(match keep_note(&id, &text).await {
                    Ok(()) => "Kept in this browser.".to_owned(),
                    Err(why) => why,
                });
            });
        })
    };
    let field = html! { <textarea id="own-note" ref={field} rows="3" maxlength={LONGEST_NOTE.to_string()} onchange={keep} /> };
    let label = text("A note to yourself".to_owned());
    let said = vec![text((*said).clone())];
    let parts = vec![
        with("label", &[("for", "own-note")], vec![label]),
        field,
        with("p", &[("class", "from"), ("role", "status")], said),
    ];
    el("section", "own-note", parts)
}
