//! An implant where the facial and the oral wall are both lost.

use crate::anatomy::{DefectKind, Wall};
use crate::plan::choices::Course;
use crate::rules::prelude::*;
use crate::rules::regeneration::has_wall_defect;

/// Rebuild first where the facial and the oral wall are both lost.
pub(super) static RULE: Rule = Rule {
    id: "implant-where-two-walls-are-lost",
    ledger: "class-peri-implant-defect",
    family: Family::Defects,
    step: Step::Extraction,
    skill: Skill::Course,
    statement: long!("Rebuild first where the facial and the oral wall are both lost."),
    why: long!(
        "A barrier can stand in for one wall while another holds the implant; with both gone you have nothing to hold either."
    ),
    mend: long!("Revise: graft and return, or let it heal and rebuild the ridge."),
    scale: Scale::Situations(&[
        when(
            "one-side",
            "an implant stands beside a defect of a class that can be rebuilt around it",
            Zone::Ideal,
        ),
        when(
            "rebuilt-first",
            "facial and oral wall are both lost, and the site is rebuilt first",
            Zone::Ideal,
        ),
        when(
            "two-walls",
            "an implant stands where facial and oral wall are both lost",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::SeatingAct,
    ],
    rests_on: &[Fact::FacialWall, Fact::OralWall],
    causes: &[Cause::SiteNotReady, Cause::DefectNotLookedFor],
    evidence: &[
        says(
            Source::Opinion,
            Status::FromMemory,
            "Benic and Hammerle 2014, horizontal augmentation, Periodontol 2000",
            "Gaps and dehiscences (classes 0 to 3) are rebuilt around the implant; a deficit that does not hold an implant, sideways or in height (classes 4 and 5), is staged; the title was read.",
        ),
        says(
            Source::Opinion,
            Status::FromMemory,
            "Caplanis, Lozada and Kan 2005 and 2009, extraction defect classification",
            "Sockets with two walls or more gone are preserved and developed before the implant.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.extraction.as_ref()?;
    if !has_wall_defect(j.case) {
        return None;
    }
    let lost = |wall| j.case.site.defects_of(wall).any(|it| it.kind == DefectKind::LostWall);
    let both = lost(Wall::Facial) && lost(Wall::Oral);
    situation(match (j.plan.course()?, both) {
        (Course::PlaceToday, false) => "one-side",
        (Course::PlaceToday, true) => "two-walls",
        (Course::GraftAndReturn | Course::ReturnEarly | Course::LetHeal, true) => "rebuilt-first",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::defect;
    use crate::rules::trial::Trial;

    fn lost(walls: &[Wall]) -> Trial {
        let mut trial = Trial::plain();
        let lost = walls.iter().map(|wall| defect(*wall, DefectKind::LostWall));
        trial.case.site.defects.extend(lost);
        trial
    }

    #[test]
    fn one_wall_can_be_rebuilt_around_an_implant_and_two_cannot() {
        assert_eq!(Trial::plain().zone(&RULE), None);
        assert_eq!(lost(&[Wall::Facial]).zone(&RULE), Some(Zone::Ideal));
        let mut trial = lost(&[Wall::Facial, Wall::Oral]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.course("let-heal").number(Decision::PlaceAfter, 20);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
