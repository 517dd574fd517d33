//! Too little bone in front of an implant in a healed ridge.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "healed-facial-bone-too-thin",
    ledger: "facial-bone-target",
    family: Family::Plate,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!("Keep 2 mm of bone in front of an implant in a healed ridge, or build it."),
    why: long!(
        "The ridge is narrower than you left it, and the margin rests on what stands in front of the implant."
    ),
    mend: long!(
        "Choose a narrower implant, move it to the oral side, or lay a contour graft with it."
    ),
    scale: Scale::Bands(Bands {
        quantity: "facial bone beside the late implant",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(1.0, Zone::Suboptimal),
            Cut::from(1.5, Zone::Acceptable).published(1.5, 1.8),
            Cut::from(2.0, Zone::Ideal).published(1.8, 2.0),
        ],
    }),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!(
            "At least 2 mm, or 1.8, or 1.5: thick bone in front of the implant keeps the margin."
        ),
        other: long!("No minimum has been verified in healed ridges."),
    }),
    reads: &[
        Decision::HealedAct,
        Decision::AgainAct,
        Decision::LastAct,
        Decision::LateDiameter,
        Decision::LateFacial,
        Decision::LateDepth,
        Decision::LateTilt,
    ],
    rests_on: &[],
    causes: &[Cause::ImplantTooFacial, Cause::ImplantTooWide],
    evidence: &[
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Monje 2019, Int J Oral Maxillofac Implants",
            "A facial wall of 1.5 mm is given as the lower bound.",
        ),
        says(
            Source::Cohort,
            Status::ConfirmedSecondary,
            "Spray 2000, Ann Periodontol",
            "1.8 mm is given as the lower bound, on clinical outcome.",
        ),
        says(
            Source::Opinion,
            Status::ConfirmedSecondary,
            "Grunder 2005, Int J Periodontics Restorative Dent",
            "2 mm of facial bone is wanted.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "review of facial bone thickness in healed ridges, 2021",
            "Seven human studies verified no minimum, from 0.5 mm up, with 97 to 100 % survival.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "contour layers",
            "A layer of 2 to 3 mm; 2 are counted here.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    number(j.m.late_facial_bone()?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    fn late() -> Trial {
        let mut trial = Trial::plain();
        trial.course("let-heal").keys(&[("healed-act", "place")]);
        trial
    }
    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (0.999, Zone::Compromising),
            (1.0, Zone::Suboptimal),
            (1.001, Zone::Suboptimal),
            (1.499, Zone::Suboptimal),
            (1.5, Zone::Acceptable),
            (1.501, Zone::Acceptable),
            (1.999, Zone::Acceptable),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn far_facially_there_is_no_bone_left_and_a_contour_graft_makes_up_for_it() {
        let mut trial = late();
        trial.number(Decision::LateFacial, 20);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("healed-act", "place-with-contour")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn an_implant_of_the_day_is_judged_elsewhere() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
