//! The sound plan that is nearest to the learner's: looked for once the debrief stands on the page.

mod pictured;

use crate::components::changed::use_changed;
use crate::components::hold::Held;
use crate::components::plain::{el, heading, items, labelled, line, status, text, together};
use crate::effects;
use crate::prose::Prose;
use crate::store::Bench;
use engine::rules::Rule;
use engine::search::{Change, Nearest};
use pictured::pictured;
use std::rc::Rc;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct NearestProps {
    /// The case.
    pub bench: Rc<Bench>,
    /// Where what is found is kept, for what else leans on it.
    pub looked: Held<Looked>,
}

/// The search, while it goes on.
#[derive(Clone, PartialEq, Default)]
pub enum Looked {
    /// It goes on.
    #[default]
    Looking,
    /// What it found, if there is a sound plan.
    Found(Option<Found>),
}

impl PartialEq for Found {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

/// A plan that was found; the same only as itself.
#[derive(Clone)]
pub struct Found(pub Rc<Nearest>);

/// The nearest sound plan, change by change.
#[component]
pub fn NearestView(props: &NearestProps) -> Html {
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let looked = props.looked.clone();
    {
        let (looked, bench) = (looked.clone(), props.bench.clone());
        use_changed(props.bench.session.acts(), move |_| {
            looked.set(Looked::Looking);
            wasm_bindgen_futures::spawn_local(async move {
                effects::after_painting().await;
                looked.set(Looked::Found(bench.session.nearest().map(Rc::new).map(Found)));
            });
        });
    }
    let body = match &*looked {
        Looked::Looking => status("Looking for the nearest sound plan.".to_owned()),
        Looked::Found(None) => line("p", "", "No sound plan was found near yours."),
        Looked::Found(Some(Found(nearest))) => told(&props.bench, nearest, &prose),
    };
    let heading = heading("h3", "nearest-title", "The nearest sound plan".to_owned());
    labelled("nearest", "nearest-title", heading, vec![body])
}

fn told(bench: &Bench, nearest: &Nearest, prose: &Prose) -> Html {
    let tooth = bench.session.case().site.tooth;
    let is_first = |change: &&Change| nearest.first == Some(change.decision);
    let mut parts = vec![status(nearest.words())];
    if let Some(change) = nearest.changes.iter().find(is_first) {
        let first = line("strong", "", "Change this first: ");
        parts.push(el("p", "lead", vec![first, text(change.words(tooth))]));
    }
    let then = nearest.changes.iter().filter(|one| !is_first(one));
    let then: Vec<String> = then.map(|change| change.words(tooth)).collect();
    if !then.is_empty() {
        parts.push(line("p", "", "Then:"));
        parts.push(items("", then));
    }
    if !nearest.forced_by.is_empty() {
        let named = |rule: &&Rule| tooth.named(&prose.statement(rule)).into_owned();
        parts.push(line("p", "", "Within your course these could not be kept:"));
        parts.push(items("", nearest.forced_by.iter().map(named).collect()));
    }
    if !nearest.changes.is_empty() {
        parts.push(pictured(bench, nearest));
    }
    together(parts)
}
