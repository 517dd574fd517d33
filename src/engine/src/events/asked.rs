//! Whether a draft, as it stands, meets an event: what brings its rescue decision in. Each answer looks
//! at the acts before it only, so no event asks after itself.

use super::{
    Exposure, Infection, Lost, Pulled, Tear, after, bleeds_again, exposed_membrane, exposure,
    floor_swells, infected, infection, lost_tip, stays_numb, torn_lining,
};
use crate::anatomy::Jaw;
use crate::chart::Case;
use crate::events::{Chance, Matter};
use crate::measure::Measurements;
use crate::plan::choices::MembraneKind;
use crate::plan::{Decision, Draft, Plan, Step, drilled, steps};

/// Where this draft's extraction loses a tip of the root.
#[must_use]
pub fn tip_in(draft: &Draft, case: &Case) -> Option<Lost> {
    lost_tip(case, Pulled::in_draft(draft)?)
}

/// The tear that this draft's first drill makes in the lining of the sinus.
#[must_use]
pub fn lining_in(draft: &Draft, case: &Case) -> Option<Tear> {
    case.site.vital.floor.as_ref()?;
    let plan = Plan { implant: Some(drilled(draft, case)?), ..Plan::default() };
    torn_lining(&Measurements::of(case, &plan))
}

/// Whether it bleeds again after what this draft does against it.
#[must_use]
pub fn bleeding_in(draft: &Draft, case: &Case) -> bool {
    draft.many(Decision::Bleeding).is_some_and(|done| bleeds_again(case, done))
}

/// Whether this draft's drilling makes the floor of the mouth swell.
#[must_use]
pub fn floor_in(draft: &Draft, case: &Case) -> bool {
    if case.site.tooth.jaw() != Jaw::Mandible || !steps(draft).contains(&Step::Implant) {
        return false;
    }
    let plan = acts_before(Step::Closure, draft, case);
    floor_swells(&Measurements::of(&after(case, &plan), &plan))
}

/// How this draft's wound is found in the first weeks, where it becomes infected.
#[must_use]
pub fn infection_in(draft: &Draft, case: &Case) -> Option<Infection> {
    if Chance::of(case, Matter::Infection).unit() >= infection::most(case) {
        return None;
    }
    let plan = acts_before(Step::Review, draft, case);
    infected(&Measurements::of(&after(case, &plan), &plan))
}

/// Whether this draft's implant leaves the lip numb.
#[must_use]
pub fn numbness_in(draft: &Draft, case: &Case) -> bool {
    if case.site.tooth.jaw() != Jaw::Mandible || !steps(draft).contains(&Step::Implant) {
        return false;
    }
    let plan = acts_before(Step::Review, draft, case);
    stays_numb(&Measurements::of(case, &plan))
}

/// How the reviews find this draft's membrane, where its wound opens.
#[must_use]
pub fn exposure_in(draft: &Draft, case: &Case) -> Option<Exposure> {
    if draft.one::<MembraneKind>(Decision::Membrane)? == MembraneKind::NoMembrane
        || Chance::of(case, Matter::Exposure).unit() >= exposure::MOST
    {
        return None;
    }
    let plan = acts_before(Step::Review, draft, case);
    plan.closure.as_ref()?;
    exposed_membrane(&Measurements::of(&after(case, &plan), &plan))
}

/// Everything that can be carried out before this step.
fn acts_before(last: Step, draft: &Draft, case: &Case) -> Plan {
    let mut plan = Plan::default();
    for step in steps(draft).into_iter().filter(|step| *step < last) {
        if plan.carry_out(step, draft, case).is_err() {
            break;
        }
    }
    plan
}
