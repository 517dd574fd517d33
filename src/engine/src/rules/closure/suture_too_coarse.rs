//! Closure and follow-up: suture with 4-0 to 6-0 thread.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "suture-too-coarse",
    ledger: "suture-choice-removal",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!("Suture with 4-0 to 6-0 thread."),
    why: long!(
        "A coarse thread tears the edge before it breaks; a fine one breaks first and warns you of tension."
    ),
    mend: long!("Take 5-0, or 4-0 to 6-0 as the tissue allows."),
    scale: Scale::Situations(&[
        when("fine", "the thread is 4-0 to 6-0", Zone::Ideal),
        when("coarse", "the thread is coarser than 4-0", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::SutureSize],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Burkhardt 2008, thread and tearing of tissue, COIR",
            "Thin thread breaks before the tissue tears.",
        ),
        says(Source::CommonPractice, Status::FromMemory, "teaching on thread size", "4-0 to 6-0."),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let coarse = j.plan.closure.as_ref()?.size == c::SutureSize::Three0;
    situation(if coarse { "coarse" } else { "fine" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn four_to_six_zero_are_fine_and_three_zero_is_coarse() {
        let mut trial = Trial::plain();
        trial.keys(&[("suture-size", "4-0")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("suture-size", "6-0")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("suture-size", "3-0")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
