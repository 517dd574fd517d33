//! Membrane: hold the membrane so that it cannot move.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "membrane-unfixed",
    ledger: "membrane-fixation",
    family: Family::Membrane,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: long!("Hold the membrane so that it cannot move."),
    why: long!("A barrier that shifts opens one edge, and moving grains heal as scar."),
    mend: long!(
        "Tuck it under the margins for a contained defect; suture or tack it for a larger one."
    ),
    scale: Scale::Situations(&[
        when("held", "the membrane is held as firmly as the defect asks", Zone::Ideal),
        when(
            "tucked-over-large",
            "a defect that is not contained lies under a membrane that is only tucked in",
            Zone::Compromising,
        ),
        when("free", "nothing holds the membrane", Zone::Compromising),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Membrane, Decision::Fixation],
    rests_on: &[],
    causes: &[Cause::MembraneLoose],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Kim and Ku 2020, guided bone regeneration, JKAOMS",
            "Rigid fixation of the barrier.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Wessing 2018, IJOMI",
            "Fixation had a weak association with vertical gain.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "teaching on means of fixation",
            "Tuck or suture for small contained defects; two tacks or periosteal sutures for others.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let fixation = j.plan.membrane()?.fixation;
    let contained = regeneration::is_contained(j.case);
    situation(match fixation {
        c::Fixation::Free => "free",
        c::Fixation::Tucked if !contained => "tucked-over-large",
        c::Fixation::Tucked | c::Fixation::Sutured | c::Fixation::Tacks => "held",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DefectKind;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::Trial;

    #[test]
    fn a_contained_defect_may_be_tucked() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("fixation", "tucked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("fixation", "none")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn a_lost_wall_asks_for_sutures_or_tacks() {
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.keys(&[("fixation", "tucked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.keys(&[("fixation", "tacks")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn without_a_membrane_nothing_is_held() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
