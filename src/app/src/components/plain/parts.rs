//! Parts of a page, and what stands over them.

use super::{el, said, tagged, text, with};
use std::rc::Rc;
use web_sys::Element;
use yew::html::ontoggle;
use yew::prelude::*;
use yew::virtual_dom::VText;

/// A part of a page under its heading.
pub fn section(id: &'static str, title: &'static str, parts: Vec<Html>) -> Html {
    let heading = with("h2", &[("id", id)], vec![VText::new(title).into()]);
    labelled("", id, heading, parts)
}

/// A part of a page of this class that is named by its heading, whose id this is.
pub fn labelled(class: &'static str, id: &str, heading: Html, parts: Vec<Html>) -> Html {
    let mut all = vec![heading];
    all.extend(parts);
    with("section", &[("class", class), ("aria-labelledby", id)], all)
}

/// A heading that is named by its id.
pub fn heading(tag: &'static str, id: &str, words: String) -> Html {
    with(tag, &[("id", id)], vec![text(words)])
}

/// A heading that keyboard and screen reader are sent to.
pub fn landing(id: &str, words: &'static str) -> Html {
    with("h2", &[("id", id), ("tabindex", "-1")], vec![VText::new(words).into()])
}

/// What belongs together, in this role and under this name.
pub fn group(class: &'static str, role: &'static str, name: &str, parts: Vec<Html>) -> Html {
    with("div", &[("class", class), ("role", role), ("aria-label", name)], parts)
}

/// What is folded away until it is asked for.
pub fn folded(class: &'static str, summary: String, parts: Vec<Html>) -> Html {
    let mut all = vec![said("summary", "", summary)];
    all.extend(parts);
    el("details", class, all)
}

/// The same, telling whether it is unfolded whenever that changes. Nothing in it may fold by itself.
pub fn unfolding(
    class: &'static str,
    summary: String,
    parts: Vec<Html>,
    told: Callback<bool>,
) -> Html {
    let mut all = vec![said("summary", "", summary)];
    all.extend(parts);
    let mut folded = tagged("details", &[("class", class)], all);
    let told = told.reform(|event: Event| {
        event.target_dyn_into::<Element>().is_some_and(|it| it.has_attribute("open"))
    });
    folded.add_listener(Rc::new(ontoggle::Wrapper::new(told)));
    folded.into()
}
