//! Closure and follow-up: send the patient home with a written sheet, pain relief and the warning against pressure.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "home-care-left-out",
    ledger: "common-practice",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!(
        "Send the patient home with a written sheet, pain relief and the warning against pressure."
    ),
    why: long!(
        "What you only say is forgotten at the door, and pressure in the first weeks moves what you have laid."
    ),
    mend: long!("Add what is missing to the sheet."),
    scale: Scale::Situations(&[
        when(
            "complete",
            "sheet, pain relief and the warning against pressure are all there",
            Zone::Ideal,
        ),
        when("with-gaps", "part of the home care was left out", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Instructions],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::Ours,
        Status::Ours,
        "home care",
        "Written instructions, analgesia that suits the history, and no pressure on a grafted or implanted site.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let told = j.plan.closure.as_ref()?.instructions;
    let at_rest = j.plan.implant_in_place().is_some() || j.plan.graft_laid().is_some();
    let complete = told.has(c::Instruction::Written)
        && told.has(c::Instruction::Analgesia)
        && (!at_rest || told.has(c::Instruction::NoPressure));
    situation(if complete { "complete" } else { "with-gaps" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn each_of_the_three_is_missed() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("instructions", "emergency-number analgesia no-pressure")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = Trial::plain();
        trial.keys(&[("instructions", "written emergency-number no-pressure")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = Trial::plain();
        trial.keys(&[("instructions", "written emergency-number analgesia")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn an_empty_socket_may_be_pressed_on() {
        let mut trial = Trial::plain();
        trial.number(Decision::PlaceAfter, 20);
        trial.keys(&[
            ("course", "let-heal"),
            ("instructions", "written emergency-number analgesia"),
        ]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
