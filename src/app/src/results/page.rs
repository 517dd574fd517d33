//! The set of a package: what it is for, its cases in order, and what came of them so far.

use super::told::results;
use crate::components::caution::caution;
use crate::components::changed::use_changed;
use crate::components::hold::use_held;
use crate::components::plain::{alert, el, items, line, link, said, status, text};
use crate::library::{Library, ShippedSet};
use crate::route::Route;
use crate::sat::{conditions, waits};
use crate::store::Room;
use learning::handing::outcome::{CaseOutcome, Outcome, Success};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct PackageProps {
    /// The room.
    pub room: UseReducerHandle<Room>,
}

/// The page.
#[component]
pub fn PackagePage(props: &PackageProps) -> Html {
    let room = &props.room;
    let told = use_held(|| None::<Outcome>);
    {
        let (told, room) = (told.clone(), room.clone());
        let changed = (room.kept.clone(), matches!(room.library, Library::Here(_)));
        use_changed(changed, move |_| {
            spawn_local(async move {
                if let Ok(outcome) = results().outcome(&room).await {
                    told.set(Some(outcome));
                }
            });
        });
    }
    let set = match &room.library {
        Library::Coming => return line("p", "page", "The set is on its way."),
        Library::Trouble(why) => return alert("page", why.clone()),
        Library::Here(sets) => sets.first(),
    };
    set.map(|set| page(room, set, told.as_ref())).unwrap_or_default()
}

fn page(room: &UseReducerHandle<Room>, set: &ShippedSet, told: Option<&Outcome>) -> Html {
    let mut parts = vec![
        said("h1", "", set.title.clone()),
        said("p", "lead", set.aim.clone()),
        said("p", "from", set.about()),
        caution(),
    ];
    let results = results();
    if !results.name().is_empty() {
        parts.push(said("p", "", format!("Learner: {}", results.name())));
    }
    let waits = waits(set);
    parts.push(items("", conditions(set).words()));
    let case = |(place, title): (usize, &String)| {
        let so_far = told
            .and_then(|told| told.cases.get(place))
            .map(|case| so_far(case, waits))
            .unwrap_or_default();
        el("li", "", vec![link(address(set, place), title.clone()), text(so_far)])
    };
    parts.push(el("ol", "cases", set.cases.iter().enumerate().map(case).collect()));
    if let Some(told) = told {
        parts.push(status(in_all(told, waits)));
        let next = told.cases.iter().position(|case| !case.is_over);
        parts.extend(next.map(|place| {
            let words =
                if told.cases.iter().any(CaseOutcome::is_begun) { "Go on" } else { "Begin" };
            el("p", "row", vec![link(address(set, place), words.to_owned())])
        }));
    }
    parts.extend(results.acts(room));
    el("article", "page", parts)
}

fn address(set: &ShippedSet, place: usize) -> String {
    Route::Case(set.case(place + 1)).fragment()
}

fn so_far(case: &CaseOutcome, waits: bool) -> String {
    match case.mark.filter(|_| !waits) {
        Some(mark) => format!(": mark {mark:.0} of 100"),
        None if case.is_over => ": at its end".to_owned(),
        None if case.is_begun() => ": begun".to_owned(),
        None => String::new(),
    }
}

fn in_all(told: &Outcome, waits: bool) -> String {
    let over = told.cases.iter().filter(|case| case.is_over).count();
    if waits {
        return format!("{over} of {} cases are at their end.", told.cases.len());
    }
    let mark = told.mark().map(|mark| format!(" The mean mark is {mark:.0} of 100."));
    let passed = match told.success() {
        Success::Unknown => "",
        Success::Passed => " The set is passed.",
        Success::Failed => " The set is not passed.",
    };
    format!(
        "{over} of {} cases are at their end.{}{passed}",
        told.cases.len(),
        mark.unwrap_or_default()
    )
}
