//! Drill and mental foramen with its loop, in a healed ridge.

use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-drill-near-the-foramen",
    ledger: "pos-mental-foramen",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Keep at least 2 mm between the drill's tip and the mental foramen or its loop in a healed ridge too."
    ),
    why: long!(
        "The crest has come down towards the opening, so the length that was safe beside the root may not be now."
    ),
    mend: long!("Choose a shorter implant or seat it less deep."),
    scale: super::too_near_the_foramen::RULE.scale,
    agreement: Agreement::NumberVaries,
    positions: super::too_near_the_foramen::RULE.positions,
    reads: &[Decision::LateLength, Decision::LateDepth, Decision::LateTilt, Decision::LateFacial],
    rests_on: &[Fact::Foramen],
    causes: &[Cause::ImplantTooDeep, Cause::ImplantTilted],
    evidence: super::too_near_the_foramen::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    number(j.m.late()?.to_foramen?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Tube;
    use crate::geometry::P3;
    use crate::rules::regeneration::lower;
    use crate::rules::trial::{Trial, zone_at};
    use crate::units::Mm;

    #[test]
    fn two_millimetres_are_the_least() {
        for (value, zone) in
            [(-1.0, Zone::Unsafe), (1.999, Zone::Unsafe), (2.0, Zone::Ideal), (2.001, Zone::Ideal)]
        {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_loop_counts_as_the_foramen_does() {
        let mut trial = lower(Trial::late());
        assert_eq!(trial.zone(&RULE), None);
        trial.case.site.vital.foramen = Some(P3::new(9.0, 5.0, 15.0));
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let (from, to) = (P3::new(9.0, 3.0, 13.0), P3::new(1.0, -1.0, 13.0));
        trial.case.site.vital.loop_ = Some(Tube { from, to, radius: Mm::new(1.0) });
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }
}
