//! What stands on a late implant that a contour graft covers.

use crate::plan::choices::{HealedAct, LateComponent};
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "late-abutment-through-regeneration",
    ledger: "component-choice",
    family: Family::Membrane,
    step: Step::LatePlacement,
    skill: Skill::Covering,
    statement: long!("Close a contour graft beside a late implant over a cover screw."),
    why: long!(
        "What stands up through the wound keeps it from closing over the membrane, and the mouth follows it down to the graft."
    ),
    mend: long!("Put on a cover screw and uncover it when the graft has had its time."),
    scale: Scale::Situations(&[
        when("closed-over", "the contour graft is closed over a cover screw", Zone::Ideal),
        when("through", "an abutment stands up through the contour graft", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::HealedAct, Decision::AgainAct, Decision::LastAct, Decision::LateComponent],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Wang and Boyapati 2006, four principles, Implant Dent",
            "Regeneration wants closure over it without tension.",
        ),
        says(
            Source::Consensus,
            Status::Partly,
            "consensus on loading and torque, composed",
            "Regeneration or low torque asks for a cover screw.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let later = &j.plan.later;
    if later.found()?.act != HealedAct::PlaceWithContour {
        return None;
    }
    situation(match later.placement.as_ref()?.component {
        LateComponent::CoverScrew => "closed-over",
        LateComponent::HealingAbutment => "through",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn an_abutment_stands_in_the_way_of_a_contour_graft_only() {
        let mut trial = Trial::late();
        trial.keys(&[("late-component", "healing-abutment")]);
        assert_eq!(trial.zone(&RULE), None);
        trial.keys(&[("healed-act", "place-with-contour")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.keys(&[("late-component", "cover-screw")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
