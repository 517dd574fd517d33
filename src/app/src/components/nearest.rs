//! The sound plan that is nearest to the learner's: looked for once the debrief stands on the page.

mod pictured;

use crate::components::changed::use_changed;
use crate::components::hold::Held;
use crate::effects;
use crate::prose::Prose;
use crate::store::Bench;
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
        Looked::Looking => html! { <p role="status">{ "Looking for the nearest sound plan." }</p> },
        Looked::Found(None) => html! { <p>{ "No sound plan was found near yours." }</p> },
        Looked::Found(Some(Found(nearest))) => told(&props.bench, nearest, &prose),
    };
    html! {
        <section class="nearest" aria-labelledby="nearest-title">
            <h3 id="nearest-title">{ "The nearest sound plan" }</h3>
            { body }
        </section>
    }
}

fn told(bench: &Bench, nearest: &Nearest, prose: &Prose) -> Html {
    let tooth = bench.session.case().site.tooth;
    let is_first = |change: &&Change| nearest.first == Some(change.decision);
    let first = nearest.changes.iter().find(is_first).map(|change| {
        html! { <p class="lead"><strong>{ "Change this first: " }</strong>{ change.words(tooth) }</p> }
    });
    let then: Vec<&Change> = nearest.changes.iter().filter(|one| !is_first(one)).collect();
    let line = |change: &&Change| html! { <li>{ change.words(tooth) }</li> };
    let forced = nearest
        .forced_by
        .iter()
        .map(|rule| html! { <li>{ tooth.named(&prose.statement(rule)).into_owned() }</li> });
    html! {
        <>
            <p role="status">{ nearest.words() }</p>
            { first }
            if !then.is_empty() {
                <p>{ "Then:" }</p>
                <ul>{ for then.iter().map(line) }</ul>
            }
            if !nearest.forced_by.is_empty() {
                <p>{ "Within your course these could not be kept:" }</p>
                <ul>{ for forced }</ul>
            }
            if !nearest.changes.is_empty() { { pictured(bench, nearest) } }
        </>
    }
}
