//! Handing the set out: a link, a file.

use super::Desk;
use super::missing::missing;
use super::scan::{Scan, ScanProps};
use crate::components::changed::use_changed;
use crate::components::fields::words;
use crate::components::hold::use_held;
use crate::components::plain::{alert, button, el, line, press, said, section, text, with};
use crate::components::view::keyed;
use crate::effects;
use crate::handout;
use crate::library::ShippedSet;
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// A longer link is cut off by some programs that people send links with. Characters; common practice,
/// no source.
const LONG: usize = 2000;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct OutProps {
    /// The desk.
    pub desk: Desk,
}

/// The part of the desk.
#[component]
pub fn Out(props: &OutProps) -> Html {
    let made = use_held(|| Ok(String::new()));
    let desk = &props.desk;
    {
        let made = made.clone();
        use_changed((*desk.set).clone(), move |set| {
            let set = set.clone();
            spawn_local(async move { made.set(handout::link(&set).await) });
        });
    }
    let told = {
        let desk = desk.clone();
        Callback::from(move |code: String| desk.change(|set| code.trim().clone_into(&mut set.code)))
    };
    let name = "A code that the link opens with, said at the sitting; empty for none";
    let mut parts = vec![words("desk-code", name, &desk.set.code, told)];
    let missing = missing(&desk.set);
    if missing.is_empty() {
        match &*made {
            Ok(fragment) => parts.extend(shown(&desk.set.title, &effects::address_of(fragment))),
            Err(why) => parts.push(alert("wrong", why.clone())),
        }
        let (desk, made) = (desk.clone(), made.clone());
        let save = Callback::from(move |_: MouseEvent| {
            let (desk, made) = (desk.clone(), made.clone());
            spawn_local(async move {
                match handout::file(&desk.set).await {
                    Ok(text) => effects::save(&handout::file_name(&desk.set.title), &text),
                    Err(why) => made.set(Err(why)),
                }
            });
        });
        let save = press(&[], "Save it as a file".to_owned(), save);
        parts.push(el(
            "p",
            "row",
            vec![save, button("Print this page", Callback::from(|_| effects::print()))],
        ));
        parts.push(line(
            "p",
            "from",
            "The file holds what to ask; the link does not. This desk takes it up again, and wallwise set check, key and blueprint read it.",
        ));
    } else {
        parts.push(said("p", "missing", format!("Still to do: {}.", missing.join(", "))));
    }
    parts.push(el("p", "row", vec![button("Begin another set", anew(desk))]));
    section("desk-out", "Hand it out", parts)
}

fn anew(desk: &Desk) -> Callback<MouseEvent> {
    let desk = desk.clone();
    Callback::from(move |_| {
        desk.change(|set| {
            let level = set.level.clone();
            *set = ShippedSet { level, mode: set.mode.clone(), ..ShippedSet::default() };
        });
    })
}

fn shown(title: &str, address: &str) -> Vec<Html> {
    let length = address.chars().count();
    let size = if length > LONG {
        format!(
            "{length} characters: some programs cut such a link off. Hand out the file, or a smaller set."
        )
    } else {
        format!(
            "{length} characters. Whoever opens it has the set, without an account and without a server."
        )
    };
    let copy = {
        let address = address.to_owned();
        Callback::from(move |_: MouseEvent| effects::copy(&address))
    };
    let label = with("label", &[("for", "desk-link")], vec![text("The link".to_owned())]);
    let field =
        html! { <input id="desk-link" type="text" readonly=true value={address.to_owned()} /> };
    let open = with("a", &[("href", address)], vec![text("Open it as a learner".to_owned())]);
    vec![
        el("div", "named-field", vec![label, field]),
        said("p", "from", size),
        el("p", "row", vec![press(&[], "Copy the link".to_owned(), copy), open]),
        keyed::<Scan>(address, ScanProps { title: title.to_owned(), address: address.to_owned() }),
    ]
}
