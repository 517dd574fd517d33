//! Where a learner chooses a case.

use crate::components::fresh::Fresh;
use crate::components::plain::{alert, el, line, link, links, said, with};
use crate::components::view::view;
use crate::library::{Library, ShippedSet};
use crate::route::{CaseRoute, From, Route};
use engine::session::{Mode, Shown};
use yew::prelude::*;

/// Which case is the guided one: the first of the first set.
const FIRST: usize = 1;

/// The home page.
pub fn home(library: &Library, kept_before: bool) -> Html {
    let sets = match library {
        Library::Coming => line("p", "", "The sets are on their way."),
        Library::Trouble(why) => alert("wrong", why.clone()),
        Library::Here(sets) => el("ol", "sets", sets.iter().map(set).collect()),
    };
    let guided = match library {
        Library::Here(sets) => {
            sets.first().map(|set| route(From::Set(set.name.clone(), FIRST), true))
        }
        _ => None,
    };
    // What is not there has its place all the same: the framework matches a list from its end.
    let today = match kept_before {
        true => way("#/today", "Today", "What is due, and why."),
        false => Html::default(),
    };
    let guided =
        guided.map(|guided| way(&guided, "First case, guided", "Each step is talked through."));
    let ways = vec![today, guided.unwrap_or_default(), view::<Fresh>(())];
    let attributes = [("class", "ways"), ("aria-label", "Ways to begin")];
    let parts = vec![
        line("h1", "", "Wallwise"),
        line(
            "p",
            "lead",
            "A rehearsal room for extraction sockets. Read the walls, choose, and find out why.",
        ),
        with("section", &attributes, ways),
        line("h2", "", "Sets"),
        sets,
        links(&[
            ("#/guide", "For whoever teaches"),
            ("#/desk", "Write a set"),
            ("#/class", "Read what a class handed in"),
        ]),
    ];
    el("div", "page home", parts)
}

/// A way to begin: where it leads, its name, and what it is.
fn way(href: &str, name: &'static str, says: &'static str) -> Html {
    let parts = vec![line("strong", "", name), line("span", "", says)];
    with("a", &[("class", "way"), ("href", href)], parts)
}

/// The address of a case to study, talked through where it is guided.
pub fn route(from: From, guided: bool) -> String {
    Route::Case(CaseRoute { guided, ..CaseRoute::study(from) }).fragment()
}

fn set(set: &ShippedSet) -> Html {
    let mut parts = vec![said("h3", "", set.title.clone())];
    parts.extend(set_parts(set));
    el("li", "set", parts)
}

/// What a set is for and for whom, and the ways to its cases.
pub fn set_parts(set: &ShippedSet) -> Vec<Html> {
    let cases = set.cases.iter().enumerate().map(|(place, title)| {
        let href = Route::Case(set.case(place + 1)).fragment();
        el("li", "", vec![link(href, title.clone())])
    });
    let about = set.about();
    let mut parts = vec![said("p", "", set.aim.clone())];
    match set.when() {
        Mode::Study if set.is_worked() => {
            parts.push(said("p", "from", format!("{about} · shown, act by act with the reasons")));
        }
        Mode::Study => {
            let worked = CaseRoute { shown: Some(Shown::Whole), ..set.case(1) };
            let worked = Route::Case(worked).fragment();
            parts.push(said("p", "from", about));
            parts.push(el("p", "", vec![link(worked, "See one worked first".to_owned())]));
        }
        Mode::Assessment => {
            let come = if set.conditions.is_empty() {
                "verdicts at the end of each"
            } else {
                "assessment"
            };
            parts.push(said("p", "from", format!("{about} · {come}")));
        }
    }
    parts.push(el("ol", "cases", cases.collect()));
    parts
}
