//! Flap: never cut a vertical release over the mental nerve.

use crate::plan::Releases;
use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "release-over-mental-nerve",
    ledger: "flap-vertical-site",
    family: Family::Flap,
    step: Step::Flap,
    skill: Skill::FlapDesign,
    statement: long!("Never cut a vertical release over the mental nerve."),
    why: long!("A blade that crosses the nerve leaves the lip numb, often for good."),
    mend: long!("Release at the mesial end, or do without a release there."),
    scale: Scale::Bands(Bands {
        quantity: "distance of a release from the mental foramen",
        unit: "mm",
        lowest: Zone::Unsafe,
        cuts: &[
            Cut::from(2.0, Zone::Acceptable).published(2.0, 7.0),
            Cut::from(7.0, Zone::Ideal).published(2.0, 7.0),
        ],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::FlapDesign, Decision::ReleaseSide, Decision::FlapOutline],
    rests_on: &[Fact::Foramen],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::Confirmed,
            "Triangular flap, teaching page",
            "No vertical release over the mental nerve.",
        ),
        says(
            Source::Anatomy,
            Status::Confirmed,
            "J Oral Implantol 2015 and 2019, loop of the mental nerve on sections",
            "Loops measure 1.46 mm on average and 0.52 to 3.92 mm in another sample; no fixed distance is safe.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "clearance carried over from implants",
            "At least 2 mm from the foramen; the old blind rule of 5 + 2 mm is kept as ideal.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.plan.raised()?.releases == Releases::None {
        return None;
    }
    j.case.site.vital.foramen?;
    j.m.release_to_foramen().map(regeneration::millimetres)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::P3;
    use crate::rules::regeneration::{lower, repaired};
    use crate::rules::trial::zone_at;

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (1.999, Zone::Unsafe),
            (2.0, Zone::Acceptable),
            (2.001, Zone::Acceptable),
            (6.999, Zone::Acceptable),
            (7.0, Zone::Ideal),
            (7.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn without_a_foramen_nearby_there_is_nothing_to_spare() {
        assert_eq!(repaired().zone(&RULE), None);
    }

    #[test]
    fn a_release_is_measured_to_the_foramen_8_mm_distally() {
        let mut trial = lower(repaired());
        trial.case.site.vital.foramen = Some(P3::new(8.0, 2.5, 11.0));
        trial.outline(Decision::FlapOutline, &[[-80, 0], [80, 0], [80, 140], [-80, 140]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        let mut trial = lower(repaired());
        trial.case.site.vital.foramen = Some(P3::new(8.0, 2.5, 11.0));
        trial.outline(Decision::FlapOutline, &[[-99, 0], [99, 0], [99, 140], [-99, 140]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        let mut trial = lower(repaired());
        trial.case.site.vital.foramen = Some(P3::new(8.0, 2.5, 11.0));
        trial.outline(Decision::FlapOutline, &[[-100, 0], [100, 0], [100, 140], [-100, 140]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = lower(repaired());
        trial.case.site.vital.foramen = Some(P3::new(8.0, 2.5, 11.0));
        trial.outline(Decision::FlapOutline, &[[-150, 0], [150, 0], [150, 140], [-150, 140]]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
