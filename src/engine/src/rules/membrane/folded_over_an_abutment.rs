//! Membrane: fold a membrane over a cover screw, not over an abutment.

use crate::plan::Component;
use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "folded-over-an-abutment",
    ledger: "component-choice",
    family: Family::Membrane,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: long!("Fold a membrane over a cover screw, not over an abutment."),
    why: long!("An abutment under the fold tents it and pierces it, and the mouth follows."),
    mend: long!("Put on a cover screw, or punch the membrane around the abutment."),
    scale: Scale::Situations(&[
        when("over-cover-screw", "the membrane is folded over a cover screw", Zone::Ideal),
        when(
            "punched-around",
            "the membrane is punched around what stands on the implant",
            Zone::Acceptable,
        ),
        when(
            "custom-seal",
            "a customised abutment seals a facial defect under a punched resorbable barrier",
            Zone::Debated,
        ),
        when(
            "punched-over-screw",
            "the membrane was punched although only a cover screw lies under it",
            Zone::Suboptimal,
        ),
        when(
            "over-abutment",
            "the membrane is folded over an abutment or a provisional",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Regeneration is closed over a cover screw."),
        other: long!(
            "A customised abutment can seal it in one stage, the membrane punched around it."
        ),
    }),
    reads: &[Decision::Component, Decision::Membrane, Decision::Fold],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Consensus,
            Status::Partly,
            "consensus on loading and torque, composed",
            "Regeneration or low torque asks for a cover screw.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "cover screw under a folded membrane",
            "Hand-tightened.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "punched fold",
            "A fold over the orifice excludes an abutment or provisional unless it is punched around it.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let membrane = j.plan.membrane()?;
    let component = j.plan.component()?;
    let screw = component == Component::CoverScrew;
    let custom = component == Component::CustomAbutment
        && regeneration::has_facial_defect(j.case)
        && regeneration::resorbs(membrane.kind);
    situation(match (membrane.fold, screw) {
        (c::Fold::FacialOnly, _) => return None,
        (c::Fold::OverOrifice, true) => "over-cover-screw",
        (c::Fold::OverOrifice, false) => "over-abutment",
        (c::Fold::PunchedAround, true) => "punched-over-screw",
        (c::Fold::PunchedAround, false) if custom => "custom-seal",
        (c::Fold::PunchedAround, false) => "punched-around",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;

    #[test]
    fn a_cover_screw_lies_under_a_whole_fold() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("fold", "punched-around")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn an_abutment_needs_a_punched_membrane() {
        let mut trial = repaired();
        trial.keys(&[("component", "healing-abutment")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.keys(&[("component", "healing-abutment"), ("fold", "punched-around")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }

    #[test]
    fn a_customised_seal_over_a_facial_defect_is_debated() {
        let mut trial = repaired();
        trial.keys(&[("component", "custom-abutment"), ("fold", "punched-around")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
    }

    #[test]
    fn a_membrane_that_stays_on_its_wall_is_not_judged() {
        let mut trial = repaired();
        trial.keys(&[("component", "healing-abutment"), ("fold", "facial-only")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
