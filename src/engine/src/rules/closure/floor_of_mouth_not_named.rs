//! Closure and follow-up: after surgery in the lower jaw, name swelling of the floor of the mouth as an emergency.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "floor-of-mouth-not-named",
    ledger: "rescue-floor-of-mouth-bleed",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!(
        "After surgery in the lower jaw, name swelling of the floor of the mouth as an emergency."
    ),
    why: long!(
        "A bleed under the tongue can begin hours later and close the airway; a patient who was not told waits too long."
    ),
    mend: long!("Add swelling of the floor of the mouth to the written emergencies."),
    scale: Scale::Situations(&[
        when("named", "swelling of the floor of the mouth is named as an emergency", Zone::Ideal),
        when(
            "not-named",
            "the patient was not told of swelling of the floor of the mouth",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Instructions],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Law 2017, floor-of-mouth haematoma review, J Oral Maxillofac Surg",
            "68 % needed the airway secured and 72 % surgery in hospital; bleeding can be delayed.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Limongelli 2015, haematoma after flapless surgery",
            "25 minutes of bimanual pressure stopped one case.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let told = j.plan.closure.as_ref()?.instructions;
    if !regeneration::is_lower_surgery(j.case, j.plan) {
        return None;
    }
    let named = told.has(c::Instruction::FloorOfMouth);
    situation(if named { "named" } else { "not-named" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::lower;
    use crate::rules::trial::Trial;

    #[test]
    fn in_the_lower_jaw_leaving_it_out_is_unsafe() {
        assert_eq!(lower(Trial::plain()).zone(&RULE), Some(Zone::Unsafe));
        let mut trial = lower(Trial::plain());
        trial.keys(&[(
            "instructions",
            "written emergency-number floor-of-mouth analgesia no-pressure",
        )]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn in_the_upper_jaw_it_is_not_asked() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn an_extraction_alone_does_not_ask_for_it() {
        let mut trial = lower(Trial::plain());
        trial.number(Decision::PlaceAfter, 20);
        trial.keys(&[("course", "let-heal")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
