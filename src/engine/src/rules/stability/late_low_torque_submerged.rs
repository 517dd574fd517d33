//! How little torque a submerged late implant may have: contested.

use crate::plan::choices::LateComponent;
use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-low-torque-submerged",
    ledger: "torque-submerged",
    family: Family::Stability,
    step: Step::LatePlacement,
    skill: Skill::Stability,
    statement: long!(
        "Submerge a late implant of low torque only when it does not move sideways, and give it the longer time."
    ),
    why: long!("Under closed gum you ask little of it, but it still has to lie still for months."),
    mend: long!(
        "Choose a longer or wider implant where the ridge has room for it, or wait for more bone."
    ),
    scale: super::low_torque_submerged::RULE.scale,
    agreement: Agreement::Contested,
    positions: super::low_torque_submerged::RULE.positions,
    reads: &[Decision::LateDiameter, Decision::LateLength, Decision::LateComponent],
    rests_on: &[Fact::SeatingTorque],
    causes: &[Cause::NoHold],
    evidence: super::low_torque_submerged::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.plan.later.placement.as_ref()?.component != LateComponent::CoverScrew {
        return None;
    }
    number(j.m.late_torque()?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn the_quarrel_ends_at_fifteen() {
        for (value, zone) in [(14.999, Zone::Debated), (15.0, Zone::Ideal), (15.001, Zone::Ideal)] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn it_is_asked_under_a_cover_screw_in_the_healed_site_only() {
        let mut trial = Trial::late();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.case.site.density.hu = 120.0;
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        trial.keys(&[("late-component", "healing-abutment")]);
        assert_eq!(trial.zone(&RULE), None);
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
