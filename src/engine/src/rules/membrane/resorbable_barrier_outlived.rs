//! Membrane: let the barrier outlast the first bone: longer for a larger defect.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "resorbable-barrier-outlived",
    ledger: "membrane-resorption-window",
    family: Family::Membrane,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: long!("Let the barrier outlast the first bone: longer for a larger defect."),
    why: long!(
        "Once it has dissolved, the soft tissue moves in, whether the bone is there or not."
    ),
    mend: long!(
        "For a larger defect take cross-linked collagen or a barrier that does not resorb."
    ),
    scale: Scale::Situations(&[
        when("outlasts", "the barrier outlasts the first bone of this defect", Zone::Ideal),
        when(
            "outlasts-at-a-price",
            "cross-linked collagen outlasts a contained defect, and is exposed more often",
            Zone::Acceptable,
        ),
        when(
            "outlived",
            "native collagen is gone before a defect of this size has filled",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Membrane],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "Assessment of dehydrothermally cross-linked collagen membrane, trial at dehiscences",
            "At 16 weeks remnants of cross-linked and none of native collagen were found.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Wessing 2018, IJOMI",
            "Cross-linked collagen is exposed about 30 % more often.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "textbooks on barrier times",
            "Native collagen works 4 to 8 weeks, cross-linked 4 to 6 months; needed are 6 to 8 weeks, in larger defects 16 or more.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let kind = j.plan.membrane()?.kind;
    if !regeneration::has_wall_defect(j.case) || !regeneration::resorbs(kind) {
        return None;
    }
    let native = kind == c::MembraneKind::NativeCollagen;
    situation(match (native, regeneration::is_contained(j.case)) {
        (true, true) | (false, false) => "outlasts",
        (false, true) => "outlasts-at-a-price",
        (true, false) => "outlived",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DefectKind;
    use crate::rules::regeneration::repaired;

    #[test]
    fn native_collagen_serves_a_contained_defect_and_is_outlived_by_a_lost_wall() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn cross_linked_collagen_serves_both_at_a_price_in_the_smaller() {
        let mut trial = repaired();
        trial.keys(&[("membrane", "cross-linked-collagen")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.keys(&[("membrane", "cross-linked-collagen")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn what_does_not_resorb_is_not_outlived() {
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 28);
        trial.keys(&[("membrane", "dense-ptfe")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
