//! A platform in a healed ridge so far to the oral side that the crown laps the ridge.

use crate::anatomy::Kind;
use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-platform-too-far-oral",
    ledger: "pos-facial-clearance",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Do not set the platform in a healed ridge more than 3 to 4 mm behind the neighbours' facial line."
    ),
    why: long!(
        "You follow the bone to the oral side; the crown still has to come forward to where the tooth was."
    ),
    mend: long!(
        "Move the implant to the facial side with a contour graft, or augment the ridge first."
    ),
    scale: super::platform_too_far_oral::RULE.scale,
    agreement: Agreement::NumberVaries,
    positions: super::platform_too_far_oral::RULE.positions,
    reads: &[Decision::LateFacial, Decision::LateDiameter, Decision::LateTilt],
    rests_on: &[],
    causes: &[Cause::ImplantTooOral],
    evidence: super::platform_too_far_oral::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.case.site.tooth.kind() == Kind::Molar {
        return None;
    }
    number(j.m.late()?.from_line?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn past_four_millimetres_the_crown_laps_the_ridge() {
        for (value, zone) in [
            (2.999, Zone::Ideal),
            (3.0, Zone::Ideal),
            (3.001, Zone::Debated),
            (3.999, Zone::Debated),
            (4.0, Zone::Debated),
            (4.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn five_millimetres_to_the_palate_are_too_many() {
        let mut trial = Trial::late();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::LateFacial, -50);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
