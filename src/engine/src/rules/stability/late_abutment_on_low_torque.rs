//! A part that stands through the gum on a late implant with little hold.

use crate::plan::choices::LateComponent;
use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-abutment-on-low-torque",
    ledger: "torque-transmucosal",
    family: Family::Stability,
    step: Step::LatePlacement,
    skill: Skill::Stability,
    statement: long!(
        "Put a healing abutment on an implant in a healed ridge only at 20 Ncm or more, too."
    ),
    why: long!(
        "A healed ridge is no promise of hold: where the socket has not filled, the top of the implant stands in nothing."
    ),
    mend: long!("Take a cover screw instead."),
    scale: super::abutment_on_low_torque::RULE.scale,
    agreement: Agreement::NumberVaries,
    positions: super::abutment_on_low_torque::RULE.positions,
    reads: &[Decision::LateComponent],
    rests_on: &[Fact::SeatingTorque],
    causes: &[Cause::NoHold],
    evidence: super::abutment_on_low_torque::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.plan.later.placement.as_ref()?.component != LateComponent::HealingAbutment {
        return None;
    }
    number(j.m.late_torque()?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn a_cover_screw_is_preferred_under_twenty() {
        for (value, zone) in [
            (14.999, Zone::Suboptimal),
            (15.0, Zone::Debated),
            (15.001, Zone::Debated),
            (19.999, Zone::Debated),
            (20.0, Zone::Acceptable),
            (20.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn in_loose_bone_an_abutment_is_too_early_and_a_cover_screw_is_not_asked() {
        let mut trial = Trial::late();
        trial.keys(&[("late-component", "healing-abutment")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.case.site.density.hu = 120.0;
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.keys(&[("late-component", "cover-screw")]);
        assert_eq!(trial.zone(&RULE), None);
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
