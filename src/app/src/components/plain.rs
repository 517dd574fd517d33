//! Elements with nothing but a class and their parts. The macro writes some hundred bytes for each
//! element that it is given; long pages of text are put together from these instead.

mod parts;
mod table;
mod ways;

pub use parts::{folded, group, heading, labelled, landing, section, unfolding};
pub use table::{row, table};
pub use ways::{button, disabled, dropped_on, field, link, links, onward, press, toggle, typed};
use yew::prelude::*;
use yew::virtual_dom::{VTag, VText};

/// Attributes of an element, each with its value.
pub type Attributes<'a> = &'a [(&'static str, &'a str)];

/// An element of this class, or of none where it is empty.
pub fn el(tag: &'static str, class: &'static str, parts: Vec<Html>) -> Html {
    with(tag, &[("class", class)], parts)
}

/// An element of these attributes; an empty one is left out.
pub fn with(tag: &'static str, attributes: Attributes<'_>, parts: Vec<Html>) -> Html {
    tagged(tag, attributes, parts).into()
}

fn tagged(tag: &'static str, attributes: Attributes<'_>, parts: Vec<Html>) -> VTag {
    let mut tag = VTag::new(tag);
    for (name, value) in attributes.iter().filter(|one| !one.1.is_empty()) {
        tag.add_attribute(name, (*value).to_owned());
    }
    tag.add_children(parts);
    tag
}

/// Parts one after the other, in no element of their own.
pub fn together(parts: Vec<Html>) -> Html {
    parts.into_iter().collect()
}

/// Words by themselves.
pub fn text(words: String) -> Html {
    VText::new(words).into()
}

/// An element that holds words alone.
pub fn said(tag: &'static str, class: &'static str, words: String) -> Html {
    el(tag, class, vec![text(words)])
}

/// The same of words that never change.
pub fn line(tag: &'static str, class: &'static str, words: &'static str) -> Html {
    el(tag, class, vec![VText::new(words).into()])
}

/// A list of what never changes.
pub fn list(lines: &[&'static str]) -> Html {
    el("ul", "", lines.iter().map(|words| line("li", "", words)).collect())
}

/// The same of what is worked out.
pub fn items(class: &'static str, lines: Vec<String>) -> Html {
    el("ul", class, lines.into_iter().map(|words| said("li", "", words)).collect())
}

/// What is said of something that goes on, or has ended, as a reader of screens is told it.
pub fn status(words: String) -> Html {
    with("p", &[("role", "status")], vec![text(words)])
}

/// The same within a line.
pub fn live(words: String) -> Html {
    with("span", &[("role", "status")], vec![text(words)])
}

/// What went wrong, as a reader of screens is told it at once.
pub fn alert(class: &'static str, words: String) -> Html {
    with("p", &[("class", class), ("role", "alert")], vec![text(words)])
}

/// A sign of this shape, for the eye alone: words beside it say the same.
pub fn shape(shape: &'static str) -> Html {
    let attributes = [("class", "sign"), ("aria-hidden", "true")];
    with("span", &attributes, vec![VText::new(shape).into()])
}

/// A page that is not there: its title, why, and the way back.
pub fn refused(title: &'static str, why: &str) -> Html {
    let parts = vec![
        line("h1", "", title),
        alert("", why.to_owned()),
        el("p", "", vec![link("#/".to_owned(), "To the sets".to_owned())]),
    ];
    el("article", "page", parts)
}

/// A page that has nothing to show yet: why, what it will show, and a way to the first case.
pub fn nothing_yet(title: &'static str, why: &'static str, will: &'static str) -> Html {
    let first = link("#/".to_owned(), "To the first case".to_owned());
    let parts = vec![
        line("h1", "", title),
        line("p", "lead", why),
        line("p", "", will),
        el("p", "", vec![first]),
    ];
    el("article", "page", parts)
}
