//! What the learner wrote to themselves, beside the attempts that it is about.

use crate::shelf::{Shelf, kept};
use learning::past::Past;
use web_sys::HtmlTextAreaElement;
use yew::prelude::*;

/// How long a note may be, characters.
const LONGEST: &str = "2000";

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct NotesProps {
    /// The attempts.
    pub shelf: Shelf,
    /// Told the attempt's id and the new text; an empty one takes the note back.
    pub on_note: Callback<(String, String)>,
}

/// Every note, the most recent attempt first; the last attempt is there to be written about.
#[component]
pub fn Notes(props: &NotesProps) -> Html {
    let shelf = &props.shelf;
    let last = shelf.pasts.last();
    let written = |past: &&Past| {
        !shelf.note(&past.head.id).is_empty()
            || last.is_some_and(|last| last.head.id == past.head.id)
    };
    let note = |past: &Past| {
        let id = past.head.id.clone();
        let title = format!("{}: {}", shelf.day(past), shelf.title(past));
        let text = shelf.note(&id).to_owned();
        html! { <Note key={past.head.id.clone()} {id} {title} {text} on_note={props.on_note.clone()} /> }
    };
    html! { <ul class="told">{ for shelf.pasts.iter().rev().filter(written).map(note) }</ul> }
}

/// What one note needs.
#[derive(Properties, PartialEq)]
struct NoteProps {
    /// Id of its attempt.
    id: String,
    /// What that is called.
    title: String,
    /// The text.
    text: String,
    /// Told what is to be kept.
    on_note: Callback<(String, String)>,
}

#[component]
fn Note(props: &NoteProps) -> Html {
    let field = use_node_ref();
    let keep = {
        let (field, id, on_note) = (field.clone(), props.id.clone(), props.on_note.clone());
        Callback::from(move |_: MouseEvent| {
            if let Some(written) = field.cast::<HtmlTextAreaElement>() {
                on_note.emit((id.clone(), written.value().trim().to_owned()));
            }
        })
    };
    let id = format!("note-{}", props.id);
    let summary = if props.text.is_empty() { "Write a note on it" } else { "Change this note" };
    html! {
        <li>
            <p><a href={kept(&props.id, None)}>{ &props.title }</a></p>
            if !props.text.is_empty() { <p class="own-note">{ &props.text }</p> }
            <details class="dispute">
                <summary>{ summary }</summary>
                <label for={id.clone()}>{ format!("Your note on {}. An empty one takes it back.", props.title) }</label>
                <textarea {id} ref={field} rows="3" maxlength={LONGEST} value={props.text.clone()} />
                <p><button type="button" class="quiet" onclick={keep}>{ "Keep this note" }</button></p>
            </details>
        </li>
    }
}
