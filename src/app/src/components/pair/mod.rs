//! Two cases that differ in one thing: seen side by side, asked about, then told.

mod answers;
mod compared;
mod decide;
mod differ;
mod sides;
mod told;

use crate::components::changed::use_changed;
use crate::components::decided::{Decided, DecidedProps};
use crate::components::hold::use_held;
use crate::components::plain::{alert, el, line, link, status};
use crate::components::view::view;
use crate::effects;
use compared::{Compared, ComparedProps, Stage};
use engine::chart::Address;
use engine::rules::Local;
use engine::search::{self, Pair};
use std::rc::Rc;
use yew::prelude::*;

/// What the page needs.
#[derive(Properties, PartialEq)]
pub struct PairProps {
    /// The address of the second case, or of a case that one is to be found for.
    pub address: Address,
    /// How the set has them judged that sent here.
    pub local: Local,
    /// Its name.
    pub set: Option<String>,
}

/// A pair; the same only as itself.
#[derive(Clone)]
pub struct Shown(Rc<Pair>);

impl PartialEq for Shown {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

/// The page of a pair.
#[component]
pub fn PairPage(props: &PairProps) -> Html {
    let found = use_held(|| None::<Result<Shown, String>>);
    let stage = use_held(|| Stage::Differ);
    {
        let (found, stage) = (found.clone(), stage.clone());
        use_changed((props.address, props.local.clone()), move |(address, local)| {
            let (address, local) = (*address, local.clone());
            found.set(None);
            stage.set(Stage::Differ);
            wasm_bindgen_futures::spawn_local(async move {
                effects::after_painting().await;
                let pair = search::pair(address, &local).map(|pair| Shown(Rc::new(pair)));
                found.set(Some(pair.map_err(|why| why.to_string())));
            });
        });
    }
    let body = match &*found {
        None => status("The two cases are on their way.".to_owned()),
        Some(Err(why)) => alert("", why.clone()),
        Some(Ok(shown)) => {
            view::<Compared>(ComparedProps { shown: shown.clone(), stage: stage.clone() })
        }
    };
    let decided = match props.local.protocol.is_empty() {
        true => Html::default(),
        false => view::<Decided>(DecidedProps { local: props.local.clone() }),
    };
    let parts = vec![
        line("h1", "", "Two cases, one difference"),
        decided,
        body,
        el("p", "", vec![link("#/".to_owned(), "To the sets".to_owned())]),
    ];
    el("article", "page pair-page", parts)
}
