//! A set taken up again: from its link, or from the file that a desk has saved.

use super::Desk;
use crate::components::fields::{self, words};
use crate::components::hold::{Held, use_held};
use crate::components::plain::{button, el, folded, line, status, text, with};
use crate::effects;
use crate::handout;
use crate::library::ShippedSet;
use wasm_bindgen::JsCast;
use wasm_bindgen_futures::spawn_local;
use web_sys::HtmlInputElement;
use yew::prelude::*;

/// As long as a link can be that is opened, and the address of a room before it.
const LONGEST: &str = "13000";

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct AgainProps {
    /// The desk.
    pub desk: Desk,
}

/// What lay on the desk before, and what is said.
#[derive(Clone, Default)]
struct Taken {
    before: Option<ShippedSet>,
    says: String,
}

/// The part of the desk.
#[component]
pub fn Again(props: &AgainProps) -> Html {
    let taken = use_held(Taken::default);
    let code = use_held(String::new);
    let desk = &props.desk;
    let coded = {
        let code = code.clone();
        Callback::from(move |typed: String| code.set(typed.trim().to_owned()))
    };
    let linked = {
        let (desk, taken, code) = (desk.clone(), taken.clone(), code.clone());
        Callback::from(move |typed: String| {
            let (desk, taken, code) = (desk.clone(), taken.clone(), code.clone());
            spawn_local(async move {
                let given = typed.rsplit("#/given/").next().unwrap_or_default().trim();
                let set = handout::read(given, &code).await;
                // What its link opened with it opens with again.
                let set = set.map(|set| ShippedSet { code: (*code).clone(), ..set });
                lay(&desk, &taken, set);
            });
        })
    };
    let chosen = {
        let (desk, taken) = (desk.clone(), taken.clone());
        Callback::from(move |event: Event| {
            let field = event.target().and_then(|one| one.dyn_into::<HtmlInputElement>().ok());
            let (Some(field), desk, taken) = (field, desk.clone(), taken.clone()) else { return };
            spawn_local(async move {
                let set = match effects::text_of(&field).await {
                    Ok(text) => handout::reopened(&text).await,
                    Err(why) => Err(why),
                };
                lay(&desk, &taken, set);
            });
        })
    };
    let label = with(
        "label",
        &[("for", "desk-file")],
        vec![text("A file that a desk has saved".to_owned())],
    );
    let field =
        html! { <input id="desk-file" type="file" accept=".toml,.txt" onchange={chosen} /> };
    let mut parts = vec![
        line("p", "from", "What lies on the desk makes room for it, and can be brought back."),
        words("desk-again-code", "The code, if its link opens with one", &code, coded),
        fields::line("desk-again", ("Its link", LONGEST), "", linked),
        el("div", "named-field", vec![label, field]),
        status(taken.says.clone()),
    ];
    if let Some(before) = &taken.before {
        let (desk, taken, before) = (desk.clone(), taken.clone(), before.clone());
        let back = Callback::from(move |_: MouseEvent| {
            desk.change(|set| *set = before.clone());
            taken.set(Taken::default());
        });
        parts.push(el("p", "row", vec![button("Bring back what lay here before", back)]));
    }
    folded("desk-taken", "Take up a set that was written before".to_owned(), parts)
}

/// Lays a set on the desk, or says why there is none.
fn lay(desk: &Desk, taken: &Held<Taken>, set: Result<ShippedSet, String>) {
    match set {
        Ok(set) => {
            let before = Some((*desk.set).clone());
            let says = format!("\"{}\" lies on the desk.", set.title);
            desk.change(|now| *now = ShippedSet { name: String::new(), ..set });
            taken.set(Taken { before, says });
        }
        Err(says) => taken.set(Taken { says, ..(**taken).clone() }),
    }
}
