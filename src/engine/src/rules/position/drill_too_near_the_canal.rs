//! Drill and inferior alveolar canal.

use crate::rules::prelude::*;

/// Keep at least 2 mm between the drill's tip and the inferior alveolar canal.
pub(super) static RULE: Rule = Rule {
    id: "drill-too-near-the-canal",
    ledger: "pos-ian-canal",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Keep at least 2 mm between the drill's tip and the inferior alveolar canal."),
    why: long!("The nerve in it gives your patient lip and chin; it does not forgive a drill."),
    mend: long!("Choose a shorter implant or seat it less deep."),
    scale: Scale::Bands(Bands {
        quantity: "distance from the drill's tip to the canal",
        unit: "mm",
        lowest: Zone::Unsafe,
        cuts: &[Cut::from(2.0, Zone::Ideal)],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::Length,
        Decision::Depth,
        Decision::Tilt,
        Decision::Tip,
        Decision::OffsetFacial,
        Decision::OffsetDistal,
    ],
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
    j.plan.implant.as_ref()?;
    Some(Reading::Number(j.m.to_canal()?.get()))
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
        for (value, zone) in [
            (-1.0, Zone::Unsafe),
            (0.0, Zone::Unsafe),
            (1.0, Zone::Unsafe),
            (1.999, Zone::Unsafe),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
            (2.3, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn the_overshoot_counts_against_the_canal() {
        let mut trial = lower(Trial::plain());
        trial.number(Decision::OffsetFacial, 0).number(Decision::Tilt, 0);
        // The apex stands 14 mm below the crest, the drill a millimetre further.
        let mut zone = |roof: f64| {
            let (from, to) = (P3::new(-20.0, 0.0, roof + 1.5), P3::new(20.0, 0.0, roof + 1.5));
            trial.case.site.vital.canal = Some(Tube { from, to, radius: Mm::new(1.5) });
            trial.zone(&RULE)
        };
        assert_eq!(zone(17.1), Some(Zone::Ideal));
        assert_eq!(zone(16.5), Some(Zone::Unsafe));
    }

    #[test]
    fn without_a_canal_there_is_nothing_to_ask() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
