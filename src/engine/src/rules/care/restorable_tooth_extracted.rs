//! A tooth that can be restored is kept.

use crate::chart::Complaint;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "restorable-tooth-extracted",
    ledger: "care-keep-or-extract",
    family: Family::Care,
    step: Step::Intention,
    skill: Skill::Course,
    statement: long!("Keep a tooth that can be restored."),
    why: long!(
        "No implant is better than a tooth that would have lasted. Once out it cannot go back."
    ),
    mend: long!("Keep the tooth, or ask for a second opinion."),
    scale: Scale::Situations(&[
        when("kept", "the restorable tooth is kept", Zone::Ideal),
        when("second-opinion", "a second opinion comes first", Zone::Acceptable),
        when("put-off", "the tooth stays in for now", Zone::Acceptable),
        when("extracted", "a tooth that can be restored comes out", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::Today],
    rests_on: &[Fact::History],
    causes: &[],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "habit of the trade",
            "the options of consent begin with keeping the tooth",
        ),
        says(Source::Ours, Status::Ours, "this project", "the course of care is judged both ways"),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if judging.case.patient.complaint != Complaint::Restorable {
        return None;
    }
    let intended = judging.plan.intention.as_ref()?.course;
    situation(match intended {
        _ if ask::tooth_comes_out(judging.plan)? => "extracted",
        c::Course::KeepTooth => "kept",
        c::Course::SecondOpinion => "second-opinion",
        _ => "put-off",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn keeping_is_ideal_and_every_extraction_is_a_fault() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        trial.case.patient.complaint = Complaint::Restorable;
        for (course, zone) in [
            ("keep-tooth", Zone::Ideal),
            ("second-opinion", Zone::Acceptable),
            ("postpone", Zone::Acceptable),
            ("place-today", Zone::Compromising),
            ("bridge", Zone::Compromising),
        ] {
            trial.course(course);
            assert_eq!(trial.zone(&RULE), Some(zone), "{course}");
        }
    }
}
