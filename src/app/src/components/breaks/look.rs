//! Looks for where a plan breaks, finding by finding, and lets the page be drawn in between, so that it
//! never waits.

use super::BreaksProps;
use crate::effects::Breath;
use crate::route::{From, Route};
use engine::cases::value_of;
use engine::chart::{Address, Aspect, Case};
use engine::debrief::Verdict;
use engine::plan::{Draft, Plan};
use engine::rules::Rule;
use engine::search::{Holds, Telling, Trying, across, pair_with};

/// What has been found so far.
#[derive(Clone, PartialEq, Default)]
pub struct Found {
    /// Every finding, in order.
    pub holds: Vec<Holds>,
    /// The address of a second case, once it has been looked for.
    pub pair: Option<Option<Route>>,
}

/// Tries finding after finding, and lets the page be drawn in between.
pub async fn look(asked: BreaksProps, tell: impl Fn(Found)) {
    let BreaksProps { bench, sound, broken } = &asked;
    let (case, plan) = (bench.session.opened(), bench.session.plan());
    let mut breath = Breath::now();
    let holds = tried(case, plan, &mut breath).await;
    let mut found = Found { holds, pair: None };
    tell(found.clone());
    let address = match sound.as_deref() {
        Some(sound) => second_case(case, sound, broken, false, &mut breath).await,
        None => None,
    };
    // By the set that sends there: it may be the set's own limit that makes the difference.
    let set = match &bench.asked.from {
        From::Set(name, _) if !case.local.protocol.is_empty() => Some(name.clone()),
        _ => None,
    };
    found.pair = Some(address.map(|address| Route::Pair(address, set)));
    tell(found);
}

/// The case that differs in one thing from this one, and says most about what was broken; where only
/// that will do, none that says nothing about a skill of it.
pub async fn second_case(
    case: &Case,
    sound: &Draft,
    broken: &[&'static Rule],
    only: bool,
    breath: &mut Breath,
) -> Option<Address> {
    let plan = Plan::from_draft(sound, case).ok()?;
    let edges = tried(case, &plan, breath).await;
    let mut telling = Telling::default();
    for is in across(&edges, broken) {
        breath.take_now().await;
        if !telling.wants(pair_with(case, sound, is)) {
            break;
        }
    }
    let about = |wrong: &Verdict| broken.iter().any(|rule| rule.skill == wrong.rule.skill);
    let pair = telling.pair().filter(|pair| !only || pair.wrong.iter().any(about))?;
    pair.other.address
}

/// How far each finding of a case can be otherwise, in the order of the findings.
async fn tried(case: &Case, plan: &Plan, breath: &mut Breath) -> Vec<Holds> {
    breath.take_now().await;
    let trying = Trying::of(case, plan);
    let mut all = Vec::new();
    for aspect in Aspect::ALL {
        let Some(now) = value_of(case, aspect) else { continue };
        breath.take().await;
        let down = trying.end(aspect, now, 0);
        breath.take().await;
        all.push(Holds { aspect, now, ends: [down, trying.end(aspect, now, 1)] });
    }
    all
}
