//! Drill and mental foramen with its loop.

use crate::rules::prelude::*;

/// Keep at least 2 mm between the drill's tip and the mental foramen or its loop.
pub(super) static RULE: Rule = Rule {
    id: "too-near-the-foramen",
    ledger: "pos-mental-foramen",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Keep at least 2 mm between the drill's tip and the mental foramen or its loop."
    ),
    why: long!(
        "The nerve may run forward of its opening before it comes back; what looks clear of the hole can still meet the loop."
    ),
    mend: long!("Choose a shorter implant, seat it less deep, or move it away from the foramen."),
    scale: Scale::Bands(Bands {
        quantity: "distance from the drill's tip to foramen or loop",
        unit: "mm",
        lowest: Zone::Unsafe,
        cuts: &[Cut::from(2.0, Zone::Ideal)],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Measure the loop on sections and keep 2 mm from it."),
        other: long!("A fixed distance of 7 mm from the foramen, where nothing was measured."),
    }),
    reads: &[
        Decision::Length,
        Decision::Depth,
        Decision::Tilt,
        Decision::Tip,
        Decision::OffsetFacial,
        Decision::OffsetDistal,
    ],
    rests_on: &[Fact::Foramen],
    causes: &[Cause::ImplantTooDeep, Cause::ImplantTilted],
    evidence: &[
        says(
            Source::Anatomy,
            Status::Confirmed,
            "surveys of the anterior loop, J Oral Implantol 2015 and 2019",
            "The loop was 1.46 mm (standard deviation 1.25) in 85 % and from 0.52 to 3.92 mm in another sample; no fixed distance is safe.",
        ),
        says(
            Source::Opinion,
            Status::ConfirmedSecondary,
            "Greenstein, Cavallaro and Tarnow 2008, practical anatomy, J Periodontol",
            "2 mm or more stay between drill and nerve.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant.as_ref()?;
    Some(Reading::Number(j.m.to_foramen()?.get()))
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
            (1.999, Zone::Unsafe),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn the_loop_counts_as_the_foramen_does() {
        let mut trial = lower(Trial::plain());
        assert_eq!(trial.zone(&RULE), None);
        trial.case.site.vital.foramen = Some(P3::new(9.0, 5.0, 15.0));
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let (from, to) = (P3::new(9.0, 3.0, 15.0), P3::new(2.0, -1.0, 15.0));
        trial.case.site.vital.loop_ = Some(Tube { from, to, radius: Mm::new(1.0) });
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }
}
