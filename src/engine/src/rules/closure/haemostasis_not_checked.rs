//! Closure and follow-up: press for at least 20 minutes and check that bleeding has stopped before the patient leaves.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "haemostasis-not-checked",
    ledger: "rescue-simple-bleed",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!(
        "Press for at least 20 minutes and check that bleeding has stopped before the patient leaves."
    ),
    why: long!(
        "Bleeding that begins at home frightens the patient and, in some patients, does not stop by itself."
    ),
    mend: long!("Add firm pressure and the check."),
    scale: Scale::Situations(&[
        when(
            "pressed-and-checked",
            "pressure or a pack was used and haemostasis was checked",
            Zone::Ideal,
        ),
        when("checked", "haemostasis was checked without pressure or a pack", Zone::Acceptable),
        when(
            "unchecked",
            "pressure or a pack was used, and nobody checked the result",
            Zone::Compromising,
        ),
        when("nothing", "nothing was done against bleeding and nothing was checked", Zone::Unsafe),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Bleeding],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::ConfirmedSecondary,
            "Postextraction problems, handbook, and a dental haemorrhage page",
            "Unbroken pressure for at least 20 minutes, in one text for an hour.",
        ),
        says(
            Source::Consensus,
            Status::FromMemory,
            "guideline teaching on escalation",
            "What still bleeds after 30 minutes is escalated.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    use c::BleedingMeasure as Of;
    let done = j.plan.closure.as_ref()?.bleeding;
    let pressed = done.has(Of::Pressure) || done.has(Of::PackAndSuture);
    situation(match (pressed, done.has(Of::Checked)) {
        (true, true) => "pressed-and-checked",
        (false, true) => "checked",
        (true, false) => "unchecked",
        (false, false) => "nothing",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::Value;
    use crate::rules::trial::Trial;

    #[test]
    fn what_was_neither_pressed_nor_checked_is_unsafe() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("bleeding", "pack-and-suture checked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("bleeding", "checked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = Trial::plain();
        trial.keys(&[("bleeding", "pressure")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = Trial::plain();
        trial.keys(&[("bleeding", "tranexamic")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }

    #[test]
    fn nothing_at_all_is_unsafe() {
        let mut trial = Trial::plain();
        trial.draft.choose(Decision::Bleeding, Value::Many(0)).unwrap();
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }
}
