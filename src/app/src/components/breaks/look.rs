//! Looks for where a plan breaks, finding by finding, and lets the page be drawn in between, so that it
//! never waits.

use crate::effects;
use crate::route::{From, Route};
use crate::store::Bench;
use engine::chart::Aspect;
use engine::plan::Plan;
use engine::rules::Rule;
use engine::search::{Holds, holds, sound_of, telling};
use std::rc::Rc;

/// What has been found so far.
#[derive(Clone, PartialEq, Default)]
pub struct Found {
    /// Findings that were tried, in order.
    pub holds: Vec<Holds>,
    /// Whether all were.
    pub done: bool,
    /// The address of a second case, once it has been looked for.
    pub pair: Option<Option<Route>>,
}

/// Tries finding after finding, and lets the page be drawn in between.
pub async fn look(bench: Rc<Bench>, broken: Vec<&'static Rule>, tell: impl Fn(Found)) {
    let (case, plan) = (bench.session.opened(), bench.session.plan());
    let mut found = Found::default();
    for aspect in Aspect::ALL {
        effects::after_painting().await;
        if let Some(one) = holds(case, plan, aspect) {
            found.holds.push(one);
            tell(found.clone());
        }
    }
    found.done = true;
    tell(found.clone());
    let sound =
        sound_of(case).and_then(|sound| Some((Plan::from_draft(&sound, case).ok()?, sound)));
    let mut edges = Vec::new();
    if let Some((plan, _)) = &sound {
        for aspect in Aspect::ALL {
            effects::after_painting().await;
            edges.extend(holds(case, plan, aspect));
        }
    }
    effects::after_painting().await;
    let pair = sound.and_then(|(_, sound)| telling(case, &sound, &edges, &broken));
    // By the set that sends there: it may be the set's own limit that makes the difference.
    let set = match &bench.asked.from {
        From::Set(name, _) if !case.local.protocol.is_empty() => Some(name.clone()),
        _ => None,
    };
    let address = pair.and_then(|pair| pair.other.address);
    found.pair = Some(address.map(|address| Route::Pair(address, set)));
    tell(found);
}
