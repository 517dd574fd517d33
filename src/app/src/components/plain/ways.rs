//! Links and buttons.

use super::{Attributes, el, tagged, text, with};
use std::rc::Rc;
use yew::html::onclick;
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
