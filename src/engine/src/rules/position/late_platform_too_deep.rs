//! A platform in a healed ridge too far below the margin of the crown.

use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-platform-too-deep",
    ledger: "pos-depth-from-margin",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Set the platform no more than 4 mm below the planned margin in a healed ridge too."
    ),
    why: long!(
        "You follow the lowered crest down, and each millimetre of that becomes a pocket that the patient cannot clean."
    ),
    mend: long!("Seat the implant less deep, or augment the ridge first."),
    scale: super::platform_too_deep::RULE.scale,
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::LateDepth],
    rests_on: &[Fact::GumMargin],
    causes: &[Cause::ImplantTooDeep],
    evidence: super::platform_too_deep::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if !j.case.site.is_aesthetic() {
        return None;
    }
    number(j.m.late()?.from_margin?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (3.999, Zone::Ideal),
            (4.0, Zone::Ideal),
            (4.001, Zone::Acceptable),
            (4.999, Zone::Acceptable),
            (5.0, Zone::Acceptable),
            (5.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn a_platform_that_follows_the_lowered_crest_far_down_is_too_deep() {
        let mut trial = Trial::late();
        // The crest of this trial has come down by a millimetre: 3.5 mm below the margin.
        trial.number(Decision::LateDepth, -5);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::LateDepth, 40);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
