//! What the learner wrote to themselves, beside the attempts that it is about.

use crate::components::plain::{button, el, folded, link, said};
use crate::effects;
use crate::shelf::{Shelf, kept};
use learning::past::Past;
use yew::prelude::*;

/// How long a note may be, characters.
const LONGEST: &str = "2000";

/// Every note, the most recent attempt first; the last attempt is there to be written about. Told the
/// attempt's id and the new text; an empty one takes the note back.
pub fn notes(shelf: &Shelf, on_note: &Callback<(String, String)>) -> Html {
    let last = shelf.pasts.len().saturating_sub(1);
    let mut all = Vec::new();
    for (place, past) in shelf.pasts.iter().enumerate().rev() {
        let text = shelf.note(&past.head.id);
        if !text.is_empty() || place == last {
            all.push(note(past, text, shelf, on_note));
        }
    }
    el("ul", "told", all)
}

fn note(past: &Past, text: &str, shelf: &Shelf, on_note: &Callback<(String, String)>) -> Html {
    let id = format!("note-{}", past.head.id);
    let keep = {
        let (field, attempt) = (id.clone(), past.head.id.clone());
        on_note.reform(move |_: MouseEvent| {
            let written = effects::written(&field);
            (attempt.clone(), written.trim().to_owned())
        })
    };
    let title = shelf.named(past);
    let label = format!("Your note on {title}. An empty one takes it back.");
    let field = html! {
        <>
            <label for={id.clone()}>{ label }</label>
            <textarea {id} rows="3" maxlength={LONGEST} value={text.to_owned()} />
        </>
    };
    let summary = if text.is_empty() { "Write a note on it" } else { "Change this note" };
    let keep = el("p", "", vec![button("Keep this note", keep)]);
    let mut parts = vec![el("p", "", vec![link(kept(&past.head.id, None), title)])];
    if !text.is_empty() {
        parts.push(said("p", "own-note", text.to_owned()));
    }
    parts.push(folded("dispute", summary.to_owned(), vec![field, keep]));
    html! { <li key={past.head.id.as_str()}>{ for parts }</li> }
}
