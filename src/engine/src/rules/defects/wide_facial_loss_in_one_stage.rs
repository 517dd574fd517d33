//! One-stage repair of a facial defect by its shape.

use crate::anatomy::DefectKind;
use crate::plan::choices::Course;
use crate::rules::prelude::*;

/// Stage the implant where the facial loss reaches the neighbours.
pub(super) static RULE: Rule = Rule {
    id: "wide-facial-loss-in-one-stage",
    ledger: "class-facial-defect-shape",
    family: Family::Defects,
    step: Step::Extraction,
    skill: Skill::Course,
    statement: long!("Stage the implant where the facial loss reaches the neighbours."),
    why: long!(
        "A defect that reaches the neighbours has no bone on either side to carry your graft, and every margin in the series that looked went down."
    ),
    mend: long!("Revise: graft and return, or return early with contour graft."),
    scale: Scale::Situations(&[
        when("staged", "the facial loss is rebuilt before the implant", Zone::Ideal),
        when(
            "v-shaped",
            "the implant goes in today behind a V-shaped loss in the middle of the wall, an advanced alternative",
            Zone::Debated,
        ),
        when(
            "u-shaped",
            "the implant goes in today behind a U-shaped loss up to the line of the root, an advanced alternative",
            Zone::Debated,
        ),
        when(
            "to-the-neighbours",
            "the implant goes in today behind a loss that reaches the neighbours",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Any facial loss in a site that shows is staged."),
        other: long!(
            "V- and U-shaped losses can be repaired in one stage with contour graft and tissue graft."
        ),
    }),
    reads: &[
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::SeatingAct,
    ],
    rests_on: &[Fact::FacialWall, Fact::SmileLine],
    causes: &[Cause::SiteNotReady, Cause::DefectNotLookedFor],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Kan 2007, facial osseous defect and gingival dynamics, J Oral Maxillofac Surg",
            "Recession past 1.5 mm at 1 year came in 1 of 12 V-shaped, 3 of 7 U-shaped and 4 of 4 defects that reached the neighbours.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Kan 2023, Compendium",
            "All 16 V- and U-shaped defects stayed stable for a mean of 6 years with contour graft and connective tissue graft.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.extraction.as_ref()?;
    if !j.case.site.is_aesthetic() {
        return None;
    }
    let shape = ask::dehiscence(j.case)?;
    situation(match (j.plan.course()?, shape) {
        (Course::GraftAndReturn | Course::ReturnEarly, _) => "staged",
        (Course::PlaceToday, DefectKind::DehiscenceV) => "v-shaped",
        (Course::PlaceToday, DefectKind::DehiscenceU) => "u-shaped",
        (Course::PlaceToday, DefectKind::LostWall) => "to-the-neighbours",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Wall;
    use crate::rules::regeneration::defect;
    use crate::rules::trial::Trial;

    fn behind(kind: DefectKind) -> Trial {
        let mut trial = Trial::plain();
        trial.case.site.defects.push(defect(Wall::Facial, kind));
        trial
    }

    #[test]
    fn only_a_loss_to_the_neighbours_is_a_fault_by_its_shape() {
        assert_eq!(behind(DefectKind::DehiscenceV).zone(&RULE), Some(Zone::Debated));
        assert_eq!(behind(DefectKind::DehiscenceU).zone(&RULE), Some(Zone::Debated));
        assert_eq!(behind(DefectKind::LostWall).zone(&RULE), Some(Zone::Compromising));
        assert_eq!(behind(DefectKind::Fenestration).zone(&RULE), None);
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn returning_early_is_staging() {
        let mut trial = behind(DefectKind::LostWall);
        trial.course("return-early").number(Decision::PlaceAfter, 6);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
