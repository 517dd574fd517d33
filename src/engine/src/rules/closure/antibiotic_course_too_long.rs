//! Closure and follow-up: do not prescribe antibiotics for more than seven days after the operation.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "antibiotic-course-too-long",
    ledger: "antibiotic-postop",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!("Do not prescribe antibiotics for more than seven days after the operation."),
    why: long!(
        "Even a short course is habit more than proof, and a long one only breeds resistance."
    ),
    mend: long!("Leave it out, or end it after at most seven days."),
    scale: Scale::Situations(&[
        when("none", "no antibiotic was prescribed afterwards", Zone::Ideal),
        when("short", "a course of up to seven days was prescribed", Zone::Debated),
        when("long", "a course of more than seven days was prescribed", Zone::Suboptimal),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("Five to seven days after grafting."),
        other: long!("None: the evidence is weak."),
    }),
    reads: &[Decision::AntibioticAfter],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::CommonPractice,
        Status::FromMemory,
        "courses after grafting",
        "5 to 7 days is habit with weak proof; 0 to 7 days is the range.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    situation(match j.plan.closure.as_ref()?.antibiotic {
        c::AntibioticAfter::None => "none",
        c::AntibioticAfter::ShortCourse => "short",
        c::AntibioticAfter::LongCourse => "long",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_short_course_is_debated_and_a_long_one_outside() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("antibiotic-after", "short-course")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = Trial::plain();
        trial.keys(&[("antibiotic-after", "long-course")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
