//! Drill and inferior alveolar canal, in a healed ridge.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "late-drill-near-the-canal",
    ledger: "pos-ian-canal",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Keep at least 2 mm between the drill and the inferior alveolar canal in a healed ridge too."
    ),
    why: long!(
        "The crest has come down and the canal has not gone with it: what was safe at the extraction may not be now."
    ),
    mend: long!("Choose a shorter implant or seat it less deep."),
    scale: Scale::Bands(Bands {
        quantity: "distance from the late drill's tip to the canal",
        unit: "mm",
        lowest: Zone::Unsafe,
        cuts: &[Cut::from(2.0, Zone::Ideal)],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::LateLength, Decision::LateFacial, Decision::LateDepth, Decision::LateTilt],
    rests_on: &[Fact::Canal],
    causes: &[Cause::ImplantTooDeep, Cause::ImplantTilted],
    evidence: &[
        says(
            Source::Opinion,
            Status::ConfirmedSecondary,
            "Greenstein, Cavallaro and Tarnow 2008, practical anatomy, J Periodontol",
            "2 mm or more, plus the error of measuring and the drill's overshoot.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "overshoot of the drill",
            "The tip of the drill passes the apex of the implant by 1 mm.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    number(j.m.late_to_canal()?.get())
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
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (-1.0, Zone::Unsafe),
            (0.0, Zone::Unsafe),
            (1.999, Zone::Unsafe),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn a_longer_implant_reaches_down_to_the_canal() {
        let mut trial = lower(Trial::plain());
        let (from, to) = (P3::new(-15.0, 0.0, 15.0), P3::new(15.0, 0.0, 15.0));
        trial.case.site.vital.canal = Some(Tube { from, to, radius: Mm::new(1.0) });
        trial.course("let-heal").keys(&[("healed-act", "place")]);
        trial.number(Decision::LateLength, 80);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::LateLength, 130);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }
}
