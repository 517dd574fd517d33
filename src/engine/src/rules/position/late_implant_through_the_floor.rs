//! An implant in a healed ridge, and the floor of sinus or nose.

use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-implant-through-the-floor",
    ledger: "pos-sinus-nasal",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Stay 1 mm or more below the floor of sinus or nose in a healed ridge too, or know why you do not."
    ),
    why: long!("What is lost from the crest is lost from the height below the floor."),
    mend: long!("Choose a shorter implant or seat it less deep."),
    scale: super::through_the_floor::RULE.scale,
    agreement: Agreement::NumberVaries,
    positions: super::through_the_floor::RULE.positions,
    reads: &[Decision::LateLength, Decision::LateDepth, Decision::LateTilt, Decision::LateFacial],
    rests_on: &[Fact::Floor],
    causes: &[Cause::ImplantTooDeep],
    evidence: super::through_the_floor::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    number(j.m.late()?.to_floor?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Floor, FloorKind};
    use crate::rules::trial::{Trial, zone_at};
    use crate::units::Mm;

    #[test]
    fn more_than_two_millimetres_beyond_the_floor_is_too_far() {
        for (value, zone) in [
            (-2.001, Zone::Compromising),
            (-2.0, Zone::Debated),
            (-1.999, Zone::Debated),
            (0.999, Zone::Debated),
            (1.0, Zone::Ideal),
            (1.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_apex_is_measured_against_the_floor() {
        let mut trial = Trial::late();
        assert_eq!(trial.zone(&RULE), None);
        trial.number(Decision::LateDepth, 0);
        let mut zone = |level| {
            let z = Mm::new(level);
            trial.case.site.vital.floor = Some(Floor { kind: FloorKind::Nose, z, rise: 0.0 });
            trial.zone(&RULE)
        };
        // Level with a crest that has come down by a millimetre, and 10 mm long: the apex is at 11.
        assert_eq!(zone(15.0), Some(Zone::Ideal));
        assert_eq!(zone(10.0), Some(Zone::Debated));
        assert_eq!(zone(8.0), Some(Zone::Compromising));
    }
}
