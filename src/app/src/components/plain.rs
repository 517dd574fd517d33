//! Elements with nothing but a class and their parts. The macro writes some hundred bytes for each
//! element that it is given; long pages of text are put together from these instead.

use yew::prelude::*;
use yew::virtual_dom::VText;

/// An element of this class, or of none where it is empty.
pub fn el(tag: &'static str, class: &'static str, parts: Vec<Html>) -> Html {
    let class = (!class.is_empty()).then_some(class);
    html! { <@{tag} {class}>{ for parts }</@> }
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

/// What is said of something that goes on, or has ended, as a reader of screens is told it.
pub fn status(words: String) -> Html {
    html! { <p role="status">{ words }</p> }
}

/// A link.
pub fn link(href: String, words: String) -> Html {
    html! { <a {href}>{ words }</a> }
}

/// A quiet button.
pub fn button(words: &'static str, onclick: Callback<MouseEvent>) -> Html {
    html! { <button type="button" class="quiet" {onclick}>{ words }</button> }
}

/// A part of a page under its heading.
pub fn section(id: &'static str, title: &'static str, parts: Vec<Html>) -> Html {
    html! { <section aria-labelledby={id}><h2 {id}>{ title }</h2>{ for parts }</section> }
}

/// What is folded away until it is asked for.
pub fn folded(class: &'static str, summary: String, parts: Vec<Html>) -> Html {
    let mut all = vec![said("summary", "", summary)];
    all.extend(parts);
    el("details", class, all)
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
