//! A defect that was found changes the plan.

use crate::anatomy::Wall;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "carried-on-past-a-found-defect",
    ledger: "dx-recheck-after-extraction",
    family: Family::Care,
    step: Step::Graft,
    skill: Skill::Course,
    statement: long!(
        "Change the plan when you find a wall defect: repair it or stage the implant."
    ),
    why: long!(
        "A plan made for a whole wall leaves graft and threads bare where the wall is missing."
    ),
    mend: long!("Revise the course, or lay graft and membrane over the defect."),
    scale: Scale::Situations(&[
        when("staged", "a wall defect was found and no implant stays today", Zone::Ideal),
        when("repaired", "a wall defect was found and covered or built up", Zone::Acceptable),
        when(
            "unchanged",
            "a wall defect was found and the plan went on unchanged",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::Examinations,
        Decision::SocketProbing,
        Decision::FlapOutline,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::SeatingAct,
        Decision::GraftMaterial,
        Decision::ContourLayer,
        Decision::Membrane,
    ],
    rests_on: &[],
    causes: &[Cause::DefectLeftOpen, Cause::SiteNotReady],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "consensus conference 2023, statement 3",
            "assess again after the extraction and revise",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Caplanis 2009, extraction defects",
            "the care follows from the defect as graded after extraction",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, known, .. } = *judging;
    plan.graft.as_ref()?;
    case.site.defects_of(Wall::Facial).next()?;
    if !known.is_seen(Fact::FacialWall) {
        return None;
    }
    let repaired = plan.membrane().is_some() || ask::has_contour_layer(plan);
    situation(match plan.implant_in_place() {
        None => "staged",
        Some(_) if repaired => "repaired",
        Some(_) => "unchanged",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind};
    use crate::geometry::Outline;
    use crate::rules::trial::Trial;

    fn defective() -> Trial {
        let mut trial = Trial::plain();
        let outline = Outline::new(vec![[-20, 0], [20, 0], [15, 50], [-15, 50]]).unwrap();
        let kind = DefectKind::DehiscenceV;
        trial.case.site.defects = vec![Defect { wall: Wall::Facial, kind, outline }];
        trial
    }

    #[test]
    fn going_on_unchanged_is_a_fault_once_the_defect_was_seen() {
        let mut trial = defective();
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("examinations", "look film"), ("socket-probing", "nothing")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn revising_on_what_was_found_is_ideal() {
        let mut trial = defective();
        trial
            .course("graft-and-return")
            .keys(&[("course", "place-today"), ("after-extraction", "to-graft-and-return")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
