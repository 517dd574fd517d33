//! Too little bone in front of the implant once the graft has healed.

use crate::rules::prelude::*;

/// Finish with at least 2 mm of bone in front of the implant.
pub(super) static RULE: Rule = Rule {
    id: "facial-bone-too-thin-after-grafting",
    ledger: "facial-bone-target",
    family: Family::Plate,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Finish with at least 2 mm of bone in front of the implant."),
    why: long!(
        "The margin in front of an implant rests on this bone; below a millimetre little is left to lose."
    ),
    mend: long!(
        "Move the implant to the oral side, choose a narrower one, or lay a thicker contour layer."
    ),
    scale: Scale::Bands(Bands {
        quantity: "facial bone after grafting",
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
        other: long!(
            "No minimum has been verified; sites that began under 1 mm did not lose significantly more."
        ),
    }),
    reads: &[
        Decision::OffsetFacial,
        Decision::Diameter,
        Decision::Depth,
        Decision::Tilt,
        Decision::GraftMaterial,
        Decision::FillLevel,
        Decision::ContourLayer,
    ],
    rests_on: &[Fact::FacialWall, Fact::FacialThickness],
    causes: &[Cause::ImplantTooFacial, Cause::Underfilled, Cause::ImplantTooWide],
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
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let step = j.plan.graft.as_ref()?;
    if !j.case.site.is_aesthetic() {
        return None;
    }
    // An empty gap has no bone in it yet; rules of the gap judge whether it may stay empty.
    if step.graft.is_none() && j.m.facial_gap().is_some_and(|gap| gap.width.get() > 0.0) {
        return None;
    }
    Some(Reading::Number(j.m.facial_bone_after_grafting()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn one_and_a_half_is_acceptable_and_two_is_ideal() {
        for (value, zone) in [
            (0.999, Zone::Compromising),
            (1.0, Zone::Suboptimal),
            (1.001, Zone::Suboptimal),
            (1.499, Zone::Suboptimal),
            (1.5, Zone::Acceptable),
            (1.999, Zone::Acceptable),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn a_grafted_gap_and_its_plate_count_together() {
        let trial = Trial::plain();
        let Some(Reading::Number(bone)) = trial.reading(&RULE) else { panic!("it applies") };
        // Gap of about 2 mm and a plate of about 1.2 mm.
        assert!((2.0..=4.5).contains(&bone), "{bone}");
    }

    #[test]
    fn an_empty_gap_is_left_to_the_rules_of_the_gap() {
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), None);
        trial.number(Decision::OffsetFacial, 16);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
