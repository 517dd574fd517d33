//! Closure and follow-up: send every patient home with an emergency number.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "no-emergency-number",
    ledger: "rescue-simple-bleed",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!("Send every patient home with an emergency number."),
    why: long!(
        "Bleeding, swelling and numbness begin when you are no longer there, and minutes can matter."
    ),
    mend: long!("Add the emergency number to the written sheet."),
    scale: Scale::Situations(&[
        when("given", "the patient has an emergency number", Zone::Ideal),
        when("missing", "the patient has no number to call", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Instructions],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::ConfirmedSecondary,
            "Postextraction problems, handbook",
            "Bleeding that pressure does not stop is seen again at once.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "written instructions",
            "The sheet carries an emergency number.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let told = j.plan.closure.as_ref()?.instructions;
    let number = told.has(c::Instruction::EmergencyNumber);
    situation(if number { "given" } else { "missing" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_sheet_without_a_number_is_likely_to_compromise() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("instructions", "written analgesia no-pressure")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
