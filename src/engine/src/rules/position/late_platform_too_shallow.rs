//! A platform in a healed ridge too close to the margin of the crown.

use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-platform-too-shallow",
    ledger: "pos-depth-from-margin",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Set the platform 3 to 4 mm below the planned margin in a healed ridge too, not less."
    ),
    why: long!(
        "The crest has come down and the planned margin has not: begin where the bone is and you may be right, begin where it was and metal shows."
    ),
    mend: long!("Seat the implant deeper."),
    scale: super::platform_too_shallow::RULE.scale,
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::LateDepth],
    rests_on: &[Fact::GumMargin],
    causes: &[Cause::ImplantTooShallow],
    evidence: super::platform_too_shallow::RULE.evidence,
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
            (2.499, Zone::Suboptimal),
            (2.5, Zone::Acceptable),
            (2.501, Zone::Acceptable),
            (2.999, Zone::Acceptable),
            (3.0, Zone::Ideal),
            (3.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn a_platform_raised_towards_the_gum_is_too_shallow() {
        let mut trial = Trial::late();
        // The crest of this trial has come down by a millimetre: 3.5 and 2 mm below the margin.
        trial.number(Decision::LateDepth, -5);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::LateDepth, -20);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
