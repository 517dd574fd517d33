//! Flap: raise the oral margin when the membrane is to be folded over the socket.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "oral-margin-left-down-for-fold",
    ledger: "membrane-margin",
    family: Family::Flap,
    step: Step::Graft,
    skill: Skill::FlapDesign,
    statement: long!("Raise the oral margin when the membrane is to be folded over the socket."),
    why: long!(
        "A membrane that ends under nothing lifts with the first movement of the tongue and lets saliva in."
    ),
    mend: long!(
        "Raise the oral margin before you fold, at least 2 mm further than the membrane is to lie."
    ),
    scale: Scale::Situations(&[
        when("raised", "the oral margin was raised for the fold", Zone::Ideal),
        when(
            "left-down",
            "the membrane is folded over and the oral margin was left down",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::OralElevation, Decision::Membrane, Decision::Fold],
    rests_on: &[],
    causes: &[Cause::FlapTooSmall],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "oral margin raised for the fold",
            "The oral margin is elevated when the membrane is to be folded over; a fold without it is outside.",
        ),
        says(
            Source::Trial,
            Status::Confirmed,
            "native bilayer membrane in ridge preservation, trial protocol",
            "The membrane is tucked 2 to 3 mm past the rim of the socket.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let membrane = j.plan.membrane()?;
    let flap = j.plan.flap.as_ref()?;
    if membrane.fold == c::Fold::FacialOnly {
        return None;
    }
    let raised = flap.oral.get() > 0.0;
    Some(Reading::Situation(if raised { "raised" } else { "left-down" }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;

    #[test]
    fn a_fold_under_a_raised_margin_is_ideal_and_under_none_is_not() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::OralElevation, 0);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.number(Decision::OralElevation, 1);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn a_membrane_that_stays_on_its_wall_asks_for_nothing() {
        let mut trial = repaired();
        trial.number(Decision::OralElevation, 0);
        trial.keys(&[("fold", "facial-only")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
