//! Fields each under its name: what an instructor types or chooses, told once it is left.

use super::plain::{el, text, with};
use wasm_bindgen::JsCast;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

/// The longest text that a set file takes.
const LONGEST: &str = "400";

/// A field for one line of text that a set file takes.
pub fn words(id: &str, name: &str, value: &str, told: Callback<String>) -> Html {
    line(id, (name, LONGEST), value, told)
}

/// A field for one line of text, under this name and no longer than that.
pub fn line(id: &str, (name, longest): (&str, &str), value: &str, told: Callback<String>) -> Html {
    let onchange = Callback::from(move |event: Event| {
        if let Some(field) = event.target().and_then(|one| one.dyn_into::<HtmlInputElement>().ok())
        {
            told.emit(field.value());
        }
    });
    let field = html! { <input id={id.to_owned()} type="text" maxlength={longest.to_owned()} autocomplete="off" value={value.to_owned()} {onchange} /> };
    labelled(id, name, field)
}

/// One of some, each by its key and in words.
pub fn one_of(
    id: &str,
    name: &str,
    all: &[(&str, &str)],
    chosen: &str,
    told: Callback<String>,
) -> Html {
    let onchange = Callback::from(move |event: Event| {
        if let Some(field) = event.target().and_then(|one| one.dyn_into::<HtmlSelectElement>().ok())
        {
            told.emit(field.value());
        }
    });
    let option = |(key, words): &(&str, &str)| {
        let (value, words) = ((*key).to_owned(), (*words).to_owned());
        html! { <option {value} selected={*key == chosen}>{ words }</option> }
    };
    let field =
        html! { <select id={id.to_owned()} {onchange}>{ for all.iter().map(option) }</select> };
    labelled(id, name, field)
}

/// A share in percent, by a slider that tells its number.
pub fn share(id: &str, name: &str, value: u8, told: Callback<u8>) -> Html {
    let oninput = Callback::from(move |event: InputEvent| {
        let field = event.target().and_then(|one| one.dyn_into::<HtmlInputElement>().ok());
        if let Some(share) = field.and_then(|field| field.value().parse().ok()) {
            told.emit(share);
        }
    });
    let says = format!("{value} %");
    let field = html! { <input id={id.to_owned()} class="slider" type="range" min="0" max="100" step="5" value={value.to_string()} aria-valuetext={says.clone()} {oninput} /> };
    let field = el("span", "row", vec![field, with("output", &[("for", id)], vec![text(says)])]);
    labelled(id, name, field)
}

fn labelled(id: &str, name: &str, field: Html) -> Html {
    let label = with("label", &[("for", id)], vec![text(name.to_owned())]);
    el("div", "named-field", vec![label, field])
}
