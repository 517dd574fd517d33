//! A barrier that is too weak for the class of defect beside the implant.

use crate::anatomy::{DefectKind, Wall};
use crate::plan::choices::{Fixation, MembraneKind};
use crate::rules::prelude::*;
use crate::rules::regeneration::{has_wall_defect, is_contained};

/// Cover a defect that is not contained with a barrier that keeps its space or is fixed, and stage one that takes two walls.
pub(super) static RULE: Rule = Rule {
    id: "defect-class-above-its-barrier",
    ledger: "class-peri-implant-defect",
    family: Family::Defects,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: "Cover a defect that is not contained with a barrier that keeps its space or is fixed, and stage one that takes two walls.",
    why: "Between two walls of bone a soft membrane rests on something; without them it sinks onto the implant and takes your graft with it.",
    mend: "Take a reinforced barrier, or fix the membrane with tacks or sutures; with two walls gone, take the implant out and rebuild first.",
    scale: Scale::Situations(&[
        when(
            "contained-covered",
            "the defect is contained and a barrier covers its graft",
            Zone::Ideal,
        ),
        when(
            "open-held",
            "the defect is not contained, and its barrier keeps its space or is fixed",
            Zone::Ideal,
        ),
        when(
            "open-soft",
            "the defect is not contained, and its barrier is soft and not fixed",
            Zone::Compromising,
        ),
        when(
            "two-walls",
            "an implant stands where facial and oral wall are both lost",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Membrane, Decision::Fixation, Decision::GraftMaterial, Decision::SeatingAct],
    rests_on: &[Fact::FacialWall, Fact::OralWall],
    causes: &[Cause::SiteNotReady],
    evidence: &[
        says(
            Source::Opinion,
            Status::FromMemory,
            "Benic and Hammerle 2014, horizontal augmentation, Periodontol 2000",
            "Gaps and contained dehiscences take particulate and a resorbable barrier, a non-contained one a space-maintaining or fixed barrier, and deficits beyond that are staged.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Kim and Ku 2020, guided bone regeneration, JKAOMS",
            "A barrier over a defect that is not contained is fixed rigidly.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    j.plan.graft.as_ref()?;
    let lost = |wall| j.case.site.defects_of(wall).any(|it| it.kind == DefectKind::LostWall);
    if lost(Wall::Facial) && lost(Wall::Oral) {
        return situation("two-walls");
    }
    // Whether there is a graft and a barrier at all is judged by rules of their own.
    let (Some(_), Some(barrier)) = (j.plan.graft_laid(), j.plan.membrane()) else {
        return None;
    };
    if !has_wall_defect(j.case) {
        return None;
    }
    let held = barrier.kind == MembraneKind::ReinforcedPtfe
        || matches!(barrier.fixation, Fixation::Sutured | Fixation::Tacks);
    situation(match (is_contained(j.case), held) {
        (true, _) => "contained-covered",
        (false, true) => "open-held",
        (false, false) => "open-soft",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::{defect, repaired};
    use crate::rules::trial::Trial;

    fn lost_wall() -> Trial {
        let mut trial = repaired();
        trial.case.site.defects = vec![defect(Wall::Facial, DefectKind::LostWall)];
        trial
    }

    #[test]
    fn a_contained_defect_is_content_with_a_soft_barrier() {
        let mut trial = repaired();
        trial.keys(&[("fixation", "tucked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn a_lost_wall_asks_for_stiffness_or_fixation() {
        let mut trial = lost_wall();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal), "sutured");
        trial.keys(&[("fixation", "tucked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("membrane", "reinforced-ptfe")]).number(Decision::MembraneOut, 120);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn no_barrier_makes_up_for_two_lost_walls() {
        let mut trial = lost_wall();
        trial.case.site.defects.push(defect(Wall::Oral, DefectKind::LostWall));
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
