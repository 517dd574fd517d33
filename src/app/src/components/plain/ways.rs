//! Links and buttons.

use super::{Attributes, el, tagged, text, with};
use std::rc::Rc;
use web_sys::HtmlInputElement;
use yew::html::{onchange, onclick, ondragover, ondrop, oninput};
use yew::prelude::*;
use yew::virtual_dom::VText;

/// A link.
pub fn link(href: String, words: String) -> Html {
    with("a", &[("href", &href)], vec![text(words)])
}

/// The way on, in a paragraph of its own.
pub fn onward(href: &str, words: &'static str) -> Html {
    let words = vec![VText::new(words).into()];
    el("p", "", vec![with("a", &[("class", "onward"), ("href", href)], words)])
}

/// Links beside each other to places that never change.
pub fn links(places: &[(&'static str, &'static str)]) -> Html {
    let link = |(href, words): &(&'static str, &'static str)| {
        with("a", &[("href", href)], vec![VText::new(*words).into()])
    };
    el("p", "row", places.iter().map(link).collect())
}

/// A button of these attributes.
pub fn press(attributes: Attributes<'_>, words: String, onclick: Callback<MouseEvent>) -> Html {
    let mut button = tagged("button", attributes, vec![text(words)]);
    button.add_attribute("type", "button");
    button.add_listener(Rc::new(onclick::Wrapper::new(onclick)));
    button.into()
}

/// A field of these attributes in which something is chosen.
pub fn field(attributes: Attributes<'_>, onchange: Callback<Event>) -> Html {
    let mut field = tagged("input", attributes, Vec::new());
    field.add_listener(Rc::new(onchange::Wrapper::new(onchange)));
    field.into()
}

/// A field of these attributes for a line that is typed, which it begins with: what is typed since is told
/// `then`.
pub fn typed(attributes: Attributes<'_>, first: &str, then: Callback<String>) -> Html {
    let mut field = tagged("input", attributes, Vec::new());
    for (name, value) in [("type", "text"), ("autocomplete", "off"), ("value", first)] {
        field.add_attribute(name, value.to_owned());
    }
    let then =
        then.reform(|event: InputEvent| event.target_unchecked_into::<HtmlInputElement>().value());
    field.add_listener(Rc::new(oninput::Wrapper::new(then)));
    field.into()
}

/// An article of this class that files can be dropped on.
pub fn dropped_on(class: &'static str, parts: Vec<Html>, ondrop: Callback<DragEvent>) -> Html {
    let mut page = tagged("article", &[("class", class)], parts);
    // Without this a browser opens what is dropped.
    let over = Callback::from(|event: DragEvent| event.prevent_default());
    page.add_listener(Rc::new(ondragover::Wrapper::new(over)));
    page.add_listener(Rc::new(ondrop::Wrapper::new(ondrop)));
    page.into()
}

/// Whether a button cannot be pressed, as an attribute of it.
pub fn disabled(is: bool) -> (&'static str, &'static str) {
    ("disabled", if is { "disabled" } else { "" })
}

/// A quiet button that is pressed or not.
pub fn toggle(words: String, pressed: bool, onclick: Callback<MouseEvent>) -> Html {
    let pressed = if pressed { "true" } else { "false" };
    press(&[("class", "quiet"), ("aria-pressed", pressed)], words, onclick)
}

/// A quiet button.
pub fn button(words: &'static str, onclick: Callback<MouseEvent>) -> Html {
    press(&[("class", "quiet")], words.to_owned(), onclick)
}
