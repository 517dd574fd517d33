//! The lingual cortex of a healed lower jaw.

use crate::anatomy::Jaw;
use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-lingual-cortex-perforated",
    ledger: "pos-lingual-cortex",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!("Never perforate the lingual cortex of a healed lower jaw."),
    why: long!(
        "No socket leads the drill any more, and the arteries behind that cortex have not moved; open one and the floor of the mouth swells until your patient cannot breathe."
    ),
    mend: long!(
        "Change the tilt towards the facial side, or choose a shorter or narrower implant."
    ),
    scale: super::lingual_cortex_perforated::RULE.scale,
    agreement: Agreement::Agreed,
    positions: super::lingual_cortex_perforated::RULE.positions,
    reads: &[
        Decision::LateFacial,
        Decision::LateTilt,
        Decision::LateLength,
        Decision::LateDiameter,
        Decision::LateDepth,
    ],
    rests_on: &[Fact::RidgeForm, Fact::OralWall],
    causes: &[Cause::ImplantTooOral, Cause::ImplantTilted, Cause::ImplantTooDeep],
    evidence: super::lingual_cortex_perforated::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.case.site.tooth.jaw() != Jaw::Mandible {
        return None;
    }
    let late = j.m.late()?;
    number(late.oral?.min(late.apical_oral?).get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::lower;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn a_perforation_is_unsafe() {
        for (value, zone) in [
            (-1.0, Zone::Unsafe),
            (0.0, Zone::Unsafe),
            (0.001, Zone::Compromising),
            (0.999, Zone::Compromising),
            (1.0, Zone::Debated),
            (1.001, Zone::Debated),
            (1.999, Zone::Debated),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn an_apex_through_the_lingual_face_is_unsafe() {
        let mut trial = lower(Trial::late());
        for knot in &mut trial.case.site.ridge.oral.knots {
            knot.y = -5.2;
        }
        trial.number(Decision::LateTilt, 0).number(Decision::LateFacial, 0);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::LateTilt, -35);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        assert_eq!(Trial::late().zone(&RULE), None);
    }
}
