//! What goes with the attempts of a portfolio, and what is done with them.

use super::choose::tick;
use crate::components::hold::Held;
use crate::components::plain::{disabled, el, line, live, press};
use crate::effects;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// What the learner has chosen.
#[derive(Clone, Default)]
pub struct Chosen {
    /// Which attempts are left out, by their places; what lies beyond is in.
    pub out: Vec<bool>,
    /// Whether notes are printed, and objections.
    pub with: [bool; 2],
    /// A name that is printed.
    pub name: String,
}

/// Printing and saving, and how many are chosen.
pub fn acts(ids: Vec<String>, count: usize, on: [&Callback<Vec<String>>; 2]) -> Html {
    let (none, status) = (ids.is_empty(), format!("{} of {count} chosen.", ids.len()));
    let print = Callback::from(|_: MouseEvent| effects::print());
    let [save, state] = on.map(|on| {
        let ids = ids.clone();
        on.reform(move |_: MouseEvent| ids.clone())
    });
    let button = |words: &str, onclick| press(&[disabled(none)], words.to_owned(), onclick);
    let status = live(status);
    let acts = [("Print", print), ("Save these attempts", save), ("Save as statements", state)];
    let mut parts: Vec<Html> = acts.map(|(words, act)| button(words, act)).into();
    parts.push(status);
    el("p", "row", parts)
}

/// What is printed beside the records: notes, objections, a name.
pub fn beside(chosen: &Held<Chosen>) -> Vec<Html> {
    let also = |which: usize, words: &'static str| {
        let now = chosen.clone();
        let turn = Callback::from(move |_: Event| {
            let mut turned = Chosen::clone(&now);
            turned.with[which] = !turned.with[which];
            now.set(turned);
        });
        tick(line("span", "", words), chosen.with[which], turn)
    };
    let now = chosen.clone();
    let oninput = Callback::from(move |event: InputEvent| {
        let name = event.target_unchecked_into::<HtmlInputElement>().value();
        now.set(Chosen { name, ..Chosen::clone(&now) });
    });
    let field = html! {
        <>
            <p><label for="whose">{ "A name, if you like" }</label></p>
            <p><input id="whose" type="text" maxlength="120" autocomplete="off" aria-describedby="whose-says" {oninput} value={chosen.name.clone()} /></p>
            <p id="whose-says" class="from">{ "It is printed and never kept: it is gone when you leave this page, and is in no file. Do not enter a patient." }</p>
        </>
    };
    vec![
        line("h2", "", "Printed with it"),
        also(0, "Your own notes"),
        also(1, "What you held against verdicts"),
        field,
    ]
}
