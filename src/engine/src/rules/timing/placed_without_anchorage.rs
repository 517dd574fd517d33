//! An implant in a fresh socket is held by bone beyond the apex or along the oral wall.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "placed-without-anchorage",
    ledger: "iip-apical-anchorage",
    family: Family::Timing,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Let the implant engage at least 3 mm of bone beyond the apex, or the oral wall or a molar's septum instead."
    ),
    why: long!(
        "The socket is wider than the implant, so only bone beyond it or beside it holds. Without hold the implant moves and heals in gum."
    ),
    mend: long!(
        "Choose a longer implant or lean it against the oral wall; if neither finds bone, graft and return."
    ),
    scale: Scale::Bands(Bands {
        quantity: "bone that holds the implant",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(2.0, Zone::Debated).published(2.0, 5.0),
            Cut::from(3.0, Zone::Acceptable).published(2.0, 5.0),
            Cut::from(5.0, Zone::Ideal).published(2.0, 5.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("3 mm beyond the apex is the least."),
        other: long!("2 mm will do where the oral wall helps; others ask for up to 5 mm."),
    }),
    reads: &[
        Decision::Diameter,
        Decision::Length,
        Decision::OffsetFacial,
        Decision::OffsetDistal,
        Decision::Depth,
        Decision::Tilt,
        Decision::Tip,
    ],
    rests_on: &[Fact::ApicalBone],
    causes: &[Cause::NoHold, Cause::SiteNotReady],
    evidence: &[
        says(
            Source::Textbook,
            Status::Partly,
            "Textbook teaching on the immediate implant in an extraction socket",
            "bone beyond the apex or along the palatal wall must be engaged (concept read)",
        ),
        says(
            Source::Cohort,
            Status::FromMemory,
            "Rosenquist & Grenthe 1996, IJOMI; Schwartz-Arad & Chaushu 1997, J Periodontol",
            "at least 3 mm beyond the apex; sources quote 2 to 5, mostly 3 to 5",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "two millimetres along the oral wall count as one beyond the apex, one in a septum as one",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    judging.plan.implant.as_ref()?;
    let beyond = judging.m.anchorage_beyond_apex()?.get();
    let along = judging.m.oral_engagement().map_or(0.0, |length| length.get() / ask::ORAL_FOR_ONE);
    // The septum between the roots of a molar holds as bone beyond an apex does.
    let septum = match ask::has_septum(judging.case) {
        true => judging.m.septum_engagement().map_or(0.0, crate::units::Mm::get),
        false => 0.0,
    };
    number(beyond.max(along).max(septum))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn the_published_figures_cut_the_scale() {
        for (bone, zone) in [
            (1.0, Zone::Compromising),
            (1.999, Zone::Compromising),
            (2.0, Zone::Debated),
            (2.999, Zone::Debated),
            (3.0, Zone::Acceptable),
            (4.0, Zone::Acceptable),
            (5.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, bone), zone, "{bone}");
        }
    }

    #[test]
    fn the_oral_wall_counts_half_and_never_lessens_what_the_apex_gives() {
        let trial = Trial::plain();
        let plan = trial.plan();
        let m = crate::measure::Measurements::of(&trial.case, &plan);
        let (beyond, along) = (m.anchorage_beyond_apex().unwrap(), m.oral_engagement().unwrap());
        let Some(Reading::Number(read)) = trial.reading(&RULE) else { panic!("a number") };
        assert!(read >= beyond.get() && read >= along.get() / 2.0 && read > 0.0, "{read}");
    }

    #[test]
    fn the_septum_of_a_molar_holds_as_bone_beyond_an_apex_does() {
        let trial = Trial::molar();
        let plan = trial.plan();
        let m = crate::measure::Measurements::of(&trial.case, &plan);
        let septum = m.septum_engagement().unwrap().get();
        assert!(septum > m.anchorage_beyond_apex().unwrap().get(), "{septum}");
        let Some(Reading::Number(read)) = trial.reading(&RULE) else { panic!("a number") };
        assert!(read >= septum && septum > 2.0, "{read} {septum}");
    }

    #[test]
    fn without_an_implant_there_is_nothing_to_hold() {
        let mut trial = Trial::plain();
        trial.course("let-heal");
        assert_eq!(trial.reading(&RULE), None);
    }
}
