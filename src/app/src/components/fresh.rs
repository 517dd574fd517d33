//! A fresh case, or one by its address.

use super::hold::use_held;
use super::plain::{alert, el, line, text, together, with};
use crate::effects;
use crate::pages::home::route;
use crate::route::{From, Route};
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

/// How hard a fresh case may be, and in words.
const HARD: [(&str, &str); 4] =
    [("", "of any kind"), ("0-0.5", "easier"), ("0.5-0.7", "in between"), ("0.7-1", "harder")];

/// A fresh case, or one by its address.
#[component]
pub fn Fresh() -> Html {
    let field = use_node_ref();
    let wrong = use_held(|| None::<String>);
    let hard = use_node_ref();
    let fresh = {
        let hard = hard.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            // "any" reads as no range.
            let within =
                hard.cast::<HtmlSelectElement>().and_then(|hard| hard.value().parse().ok());
            effects::go(&route(From::Seed(effects::fresh_seed(), within), false))
        })
    };
    let open = {
        let (field, wrong) = (field.clone(), wrong.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let text =
                field.cast::<HtmlInputElement>().map(|field| field.value()).unwrap_or_default();
            match Route::typed(text.trim()) {
                Route::Nowhere(why) => wrong.set(Some(why)),
                somewhere => effects::go(&somewhere.fragment()),
            }
        })
    };
    let hard = html! { <select id="hard" ref={hard}>{ for HARD.iter().map(|(range, words)| html! { <option value={*range} selected={range.is_empty()}>{ *words }</option> }) }</select> };
    let typed = html! { <input id="address" ref={field} type="text" inputmode="decimal" placeholder="1.1.2024.0 or a seed" /> };
    let wrong = (*wrong).clone().map(|why| alert("wrong", why)).unwrap_or_default();
    together(vec![
        html! { <form class="way" onsubmit={fresh}>{ for asked("hard", "A fresh case", hard, "Draw") }</form> },
        html! { <form class="way" onsubmit={open}>{ for asked("address", "A case by its address", typed, "Open") }{ wrong }</form> },
    ])
}

/// A field of this id under its name, with the button that sends it.
fn asked(id: &str, name: &'static str, field: Html, send: &'static str) -> [Html; 2] {
    let name = with("label", &[("for", id)], vec![line("strong", "", name)]);
    let send = with("button", &[("type", "submit")], vec![text(send.to_owned())]);
    [name, el("span", "row", vec![field, send])]
}
