//! A tooth that cannot be kept is not kept.

use crate::chart::Complaint;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "lost-tooth-kept",
    ledger: "care-keep-or-extract",
    family: Family::Care,
    step: Step::Intention,
    skill: Skill::Course,
    statement: long!("Plan the extraction of a tooth that cannot be kept."),
    why: long!("A split or decayed root goes on destroying the wall that you will need."),
    mend: long!("Choose a course that takes the tooth out, today or on a date."),
    scale: Scale::Situations(&[
        when("not-kept", "the plan does not keep the lost tooth", Zone::Ideal),
        when("kept", "a tooth that cannot be kept is kept", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course],
    rests_on: &[Fact::History, Fact::RootForm],
    causes: &[],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "habit of the trade",
            "a vertical root fracture or caries beyond restoring is an indication to extract",
        ),
        says(Source::Ours, Status::Ours, "this project", "the course of care is judged both ways"),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if judging.case.patient.complaint == Complaint::Restorable {
        return None;
    }
    let intended = judging.plan.intention.as_ref()?.course;
    situation(if intended == c::Course::KeepTooth { "kept" } else { "not-kept" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn only_keeping_it_is_a_fault() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.course("postpone");
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.course("keep-tooth");
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.case.patient.complaint = Complaint::Restorable;
        assert_eq!(trial.zone(&RULE), None);
    }
}
