//! Before a set under conditions begins: what its instructor says, and what the conditions are.

use crate::components::caution::caution;
use crate::components::fields::one_of;
use crate::components::hold::use_held;
use crate::components::plain::{el, items, line, press, said};
use crate::library::ShippedSet;
use crate::sat;
use crate::store::{Action, Room};
use yew::prelude::*;

/// Extra time as it is agreed on: the key, in words, and percent of the time. Common practice, no source.
const EXTRA: [(&str, &str, u32); 4] = [
    ("", "none", 100),
    ("quarter", "a quarter more", 125),
    ("half", "half as much again", 150),
    ("double", "twice the time", 200),
];

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct StartProps {
    /// The set.
    pub set: ShippedSet,
    /// The room.
    pub room: UseReducerHandle<Room>,
}

/// The page.
#[component]
pub fn Start(props: &StartProps) -> Html {
    let set = &props.set;
    let extra = use_held(String::new);
    let conditions = sat::conditions(set);
    let minutes = conditions.minutes.map(|minutes| {
        let percent = EXTRA.iter().find(|one| one.0 == *extra).map_or(100, |one| one.2);
        (u32::from(minutes) * percent).div_ceil(100)
    });
    let mut parts = vec![said("h1", "", set.title.clone())];
    if !conditions.opening.is_empty() {
        parts.push(said("p", "lead", conditions.opening.clone()));
    }
    parts.push(items("", conditions.words()));
    if let Some(minutes) = minutes {
        let told = {
            let extra = extra.clone();
            Callback::from(move |key: String| extra.set(key))
        };
        let all = EXTRA.map(|(key, words, _)| (key, words));
        let name = "Extra time, as you agreed with your instructor";
        parts.push(one_of("extra-time", name, &all, &extra, told));
        parts.push(said("p", "", format!(
            "You have {minutes} minutes once you begin, also while the page is closed. Nothing stops when they are over: what you do later says so."
        )));
    }
    let begin = {
        let (name, room) = (set.name.clone(), props.room.clone());
        Callback::from(move |_: MouseEvent| {
            sat::begin(&name, minutes);
            room.dispatch(Action::Sat);
        })
    };
    parts.push(el("p", "row", vec![press(&[], "Begin".to_owned(), begin)]));
    parts.push(line(
        "p",
        "from",
        "Your attempts hold what you chose and when, never a mark. They stay in this browser until you hand them in.",
    ));
    parts.push(caution());
    el("article", "page", parts)
}
