//! Early placement behind a thin or lost wall goes with a contour graft.

use crate::rules::prelude::*;
use crate::units::comparable;

pub(super) static RULE: Rule = Rule {
    id: "early-placement-without-contour",
    ledger: "early-placement-alternative",
    family: Family::Timing,
    step: Step::ReEntry,
    skill: Skill::Grafting,
    statement: long!(
        "Lay a contour graft with an early implant where the facial plate was thin or lost."
    ),
    why: long!(
        "Early placement is as good as its neighbours because the contour is built up with it; without that only the loss is early."
    ),
    mend: long!("Place it with a contour graft under a membrane."),
    scale: Scale::Situations(&[
        when("with", "the early implant goes with a contour graft", Zone::Ideal),
        when("without", "the early implant goes without a contour graft", Zone::Suboptimal),
    ]),
    agreement: Agreement::Agreed,
    positions: Some(Positions {
        one: long!(
            "One visible tooth with a thin or lost plate is placed early, with contour graft."
        ),
        other: long!("The ridge is preserved first, or the implant goes in today with grafts."),
    }),
    reads: &[
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::SeatingAct,
        Decision::PlaceAfter,
        Decision::HealedAct,
        Decision::WaitFor,
        Decision::AgainAct,
        Decision::WaitForLast,
        Decision::LastAct,
    ],
    rests_on: &[Fact::FacialWall, Fact::FacialThickness],
    causes: &[],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Chappuis 2018, contour augmentation over 10 years, J Dent Res",
            "Placed at 4 to 8 weeks with a contour graft: a facial wall of 1.67 mm (median of 20), 0.17 mm of recession.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "what counts as thin",
            "A plate of 1 mm or less, or one that is lost, in a site that shows.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    use c::HealedAct as Of;
    let back = j.plan.later.decided()?;
    let thin = j.m.facial_plate().is_none_or(|plate| comparable(plate.get()) <= 1.0);
    let asked = j.plan.course()? == c::Course::ReturnEarly && j.case.site.is_aesthetic() && thin;
    match back.act {
        Of::PlaceWithContour if asked => situation("with"),
        Of::Place if asked => situation("without"),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn early(act: &str, thinner: f64) -> Trial {
        let mut trial = Trial::plain();
        trial.course("return-early").keys(&[("healed-act", act)]);
        let plate = crate::measure::Measurements::of(&trial.case, &trial.plan()).facial_plate();
        let off = plate.map_or(0.0, Mm::get) - thinner;
        for knot in &mut trial.case.site.ridge.facial.knots {
            knot.y -= off;
        }
        trial
    }

    #[test]
    fn behind_a_thin_plate_an_early_implant_wants_a_contour_graft() {
        assert_eq!(early("place", 0.999).zone(&RULE), Some(Zone::Suboptimal));
        assert_eq!(early("place", 1.0).zone(&RULE), Some(Zone::Suboptimal));
        assert_eq!(early("place-with-contour", 0.999).zone(&RULE), Some(Zone::Ideal));
        assert_eq!(early("place", 1.002).zone(&RULE), None);
    }

    #[test]
    fn a_later_course_and_another_decision_are_not_asked() {
        assert_eq!(early("wait", 0.9).zone(&RULE), None);
        let mut trial = early("place", 0.9);
        trial.course("let-heal");
        assert_eq!(trial.zone(&RULE), None);
    }
}
