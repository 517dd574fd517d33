//! Membrane: cover a wall defect of 2 mm or more with a membrane.

use crate::anatomy::Defect;
use crate::rules::prelude::*;
use crate::rules::regeneration;
use crate::units::{Mm, comparable};

pub(super) static RULE: Rule = Rule {
    id: "defect-left-uncovered",
    ledger: "membrane-indication",
    family: Family::Membrane,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: long!("Cover a wall defect of 2 mm or more with a membrane."),
    why: long!(
        "Gum grows faster than bone, and an uncovered window fills from your flap instead of from the walls."
    ),
    mend: long!("Lay a membrane over the defect, reaching at least 2 mm onto intact bone."),
    scale: Scale::Situations(&[
        when("covered", "a membrane lies over the missing wall", Zone::Ideal),
        when("whole-walls", "the walls are whole and need no membrane", Zone::Ideal),
        when("whole-walls-covered", "a membrane lies over whole walls", Zone::Acceptable),
        when("small", "a defect under 2 mm has no membrane", Zone::Acceptable),
        when(
            "plugged",
            "a contained defect of a preserved socket lies under a seal",
            Zone::Debated,
        ),
        when("contained-uncovered", "a contained defect has no membrane", Zone::Suboptimal),
        when("lost-uncovered", "a lost wall has no membrane", Zone::Compromising),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("A membrane covers every defect of 2 mm or more."),
        other: long!(
            "In a preserved socket with a contained defect a plug or a soft-tissue seal does as well."
        ),
    }),
    reads: &[Decision::GraftMaterial, Decision::Membrane, Decision::SocketSeal],
    rests_on: &[Fact::FacialWall],
    causes: &[Cause::DefectLeftOpen, Cause::DefectNotLookedFor],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Kim and Ku 2020, guided bone regeneration, JKAOMS",
            "A dehiscence or fenestration of 2 mm or more is covered; over whole walls a membrane is optional.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Del Fabbro 2021, network review of ridge preservation",
            "Coverage beats none; plugs and soft-tissue grafts compete.",
        ),
        says(
            Source::Opinion,
            Status::FromMemory,
            "Benic and Hammerle 2014, horizontal augmentation, Periodontol 2000",
            "Gap with whole walls: filler, membrane optional; contained dehiscence: particulate and a resorbable barrier; not contained: a stiff or fixed barrier as well.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let laid = j.plan.graft.as_ref()?;
    let covered = laid.membrane.is_some();
    let largest = j.case.site.defects.iter().map(Defect::extent).reduce(Mm::max);
    let Some(largest) = largest else {
        laid.graft.as_ref()?;
        let over_a_socket = covered && regeneration::is_preservation(j.plan);
        return situation(match (covered, over_a_socket) {
            (false, _) => "whole-walls",
            (true, true) => "covered",
            (true, false) => "whole-walls-covered",
        });
    };
    let sealed = matches!(laid.seal, Some(c::SocketSeal::Plug | c::SocketSeal::SoftTissueSeal));
    situation(if covered {
        "covered"
    } else if comparable(largest.get()) < SMALLEST {
        "small"
    } else if !regeneration::is_contained(j.case) {
        "lost-uncovered"
    } else if sealed && laid.graft.is_some() {
        "plugged"
    } else {
        "contained-uncovered"
    })
}

/// Defects from this extent on are covered, in millimetres.
const SMALLEST: f64 = 2.0;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{DefectKind, Wall};
    use crate::geometry::Outline;
    use crate::rules::regeneration::{defect, preserved, repaired};
    use crate::rules::trial::Trial;

    #[test]
    fn a_dehiscence_with_graft_and_no_membrane_is_a_caution_and_a_lost_wall_more() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("membrane", "none")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.keys(&[("membrane", "none")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn two_millimetres_is_where_covering_begins() {
        let mut trial = repaired();
        trial.case.site.defects[0].outline =
            Outline::new(vec![[-9, 20], [10, 20], [0, 39]]).unwrap();
        trial.keys(&[("membrane", "none")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.case.site.defects[0].outline =
            Outline::new(vec![[-10, 20], [10, 20], [0, 39]]).unwrap();
        trial.keys(&[("membrane", "none")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn over_whole_walls_it_is_optional() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.case.site.defects.clear();
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }

    #[test]
    fn a_plug_over_a_contained_defect_of_a_preserved_socket_is_debated() {
        let mut trial = preserved();
        trial.case.site.defects.push(defect(Wall::Facial, DefectKind::DehiscenceV));
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = preserved();
        trial.case.site.defects.push(defect(Wall::Facial, DefectKind::DehiscenceV));
        trial.keys(&[("socket-seal", "open")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
