//! Where the learner's plan breaks: a bar for each finding of the case, and a second case across one of
//! the edges.

mod look;
mod row;

use crate::components::changed::use_changed;
use crate::components::hold::use_held;
use crate::components::plain::{
    el, folded, heading, labelled, line, onward, said, status, together,
};
use crate::prose::Prose;
use crate::route::Route;
use crate::store::Bench;
use engine::geometry::order;
use engine::plan::Draft;
use engine::rules::Rule;
use engine::search::Holds;
pub use look::second_case;
use look::{Found, look};
use row::row;
use std::rc::Rc;
use yew::prelude::*;

/// How many findings are shown before the others are folded away.
const NEAR: usize = 5;

/// What it needs.
#[derive(Properties, Clone, PartialEq)]
pub struct BreaksProps {
    /// The case.
    pub bench: Rc<Bench>,
    /// The case's own sound plan.
    pub sound: Option<Rc<Draft>>,
    /// Rules that the learner broke.
    pub broken: Vec<&'static Rule>,
}

/// Where the plan breaks: the findings nearest to where it does first, the others folded away.
#[component]
pub fn BreaksView(props: &BreaksProps) -> Html {
    let found = use_held(|| None::<Found>);
    {
        let (found, asked) = (found.clone(), props.clone());
        use_changed(props.bench.session.acts(), move |_| {
            found.set(None);
            wasm_bindgen_futures::spawn_local(look(asked, move |all| found.set(Some(all))));
        });
    }
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let body = match &*found {
        None => status("Trying the findings one by one.".to_owned()),
        Some(found) => told(found, &props.bench, &prose),
    };
    let heading = heading("h3", "breaks-title", "Where your plan breaks".to_owned());
    let says = "How far each finding of this case could be otherwise, all else being the same, before your plan is judged otherwise. The wedge is this case.";
    labelled("breaks", "breaks-title", heading, vec![line("p", "", says), body])
}

fn told(found: &Found, bench: &Bench, prose: &Prose) -> Html {
    let mut rows: Vec<&Holds> = found.holds.iter().filter(|one| !one.is_open()).collect();
    order::sort_short_by_key(&mut rows, |one| one.margin());
    let (near, far) = rows.split_at(rows.len().min(NEAR));
    let list = |rows: &[&Holds]| {
        el("ul", "plain", rows.iter().map(|one| row(one, bench, prose)).collect())
    };
    let farther = match far.is_empty() {
        true => Html::default(),
        false => {
            let summary = format!("Farther from an edge: {}", far.len());
            folded("", summary, vec![list(far)])
        }
    };
    together(vec![list(near), farther, unmoved(found, bench), second(&found.pair)])
}

/// What could be anything.
fn unmoved(found: &Found, bench: &Bench) -> Html {
    let tooth = bench.session.case().site.tooth;
    let name = |one: &Holds| tooth.named(one.aspect.scaled().words).to_ascii_lowercase();
    let names: Vec<String> = found.holds.iter().filter(|one| one.is_open()).map(name).collect();
    if names.is_empty() {
        return Html::default();
    }
    said("p", "", format!("Whatever these are, the verdicts stay: {}.", names.join("; ")))
}

/// The way to a second case.
fn second(pair: &Option<Option<Route>>) -> Html {
    match pair {
        None => Html::default(),
        Some(None) => line(
            "p",
            "",
            "No second case was found that differs in one thing and asks for another choice.",
        ),
        Some(Some(route)) => onward(&route.fragment(), "A second case that differs in one thing"),
    }
}
