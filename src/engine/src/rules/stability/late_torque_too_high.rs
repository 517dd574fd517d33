//! Very high torque of a late implant beside thin facial bone: contested.

use crate::rules::prelude::*;
use crate::units::comparable;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-torque-too-high",
    ledger: "torque-upper",
    family: Family::Stability,
    step: Step::LatePlacement,
    skill: Skill::Stability,
    statement: long!(
        "Beside less than 1 mm of facial bone in a healed ridge, stay at 50 Ncm or less."
    ),
    why: long!(
        "What stands in front of the implant is thin and old, and a bed that is too tight squeezes it."
    ),
    mend: long!(
        "Choose a narrower implant, or move it to the oral side, where more bone stands in front of it."
    ),
    scale: super::torque_too_high_on_thin_plate::RULE.scale,
    agreement: Agreement::Contested,
    positions: super::torque_too_high_on_thin_plate::RULE.positions,
    reads: &[
        Decision::LateDiameter,
        Decision::LateLength,
        Decision::LateFacial,
        Decision::LateDepth,
        Decision::LateTilt,
    ],
    rests_on: &[Fact::SeatingTorque],
    causes: &[],
    evidence: super::torque_too_high_on_thin_plate::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    asked(j.m.late()?.facial?.get(), j.m.late_torque()?.get())
}

/// Beside bone that is there and thin; a layer laid over it is none yet.
fn asked(bone: f64, torque: f64) -> Option<Reading> {
    let bone = comparable(bone);
    (0.0 < bone && bone < 1.0).then_some(Reading::Number(torque))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn fifty_is_still_regular() {
        for (value, zone) in [(49.999, Zone::Ideal), (50.0, Zone::Ideal), (50.001, Zone::Debated)] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn thin_is_less_than_a_millimetre_and_more_than_nothing() {
        assert_eq!(asked(0.0, 60.0), None);
        assert_eq!(asked(0.001, 60.0), Some(Reading::Number(60.0)));
        assert_eq!(asked(0.999, 60.0), Some(Reading::Number(60.0)));
        assert_eq!(asked(1.0, 60.0), None);
    }

    #[test]
    fn a_contour_layer_does_not_thicken_the_bone_that_is_squeezed() {
        let mut trial = Trial::late();
        trial.case.site.density.hu = 1500.0;
        let zones: Vec<_> =
            (-30..=20).map(|place| trial.number(Decision::LateFacial, place).zone(&RULE)).collect();
        // Far orally bone is thick, far facially there is none.
        assert!(zones.first() == Some(&None) && zones.last() == Some(&None), "{zones:?}");
        let thin = zones.iter().position(|zone| *zone == Some(Zone::Debated)).unwrap();
        trial.number(Decision::LateFacial, thin as i32 - 30);
        trial.keys(&[("healed-act", "place-with-contour")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
