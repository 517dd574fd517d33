//! Elective surgery waits until after delivery.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "elective-surgery-in-pregnancy",
    ledger: "med-pregnancy",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Postpone elective grafts and implants until after delivery; treat pain and infection at any time."
    ),
    why: long!(
        "Nothing elective is worth a risk to two. Pain and infection are themselves a risk and are treated."
    ),
    mend: long!("Postpone the elective part until after delivery and relieve what hurts today."),
    scale: Scale::Situations(&[
        when("deferred", "nothing elective is done in pregnancy", Zone::Ideal),
        when(
            "sections-taken",
            "nothing elective is done, but sections were taken for it",
            Zone::Suboptimal,
        ),
        when("elective", "an elective implant or graft is planned in pregnancy", Zone::Unsafe),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Examinations, Decision::Course],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Textbook,
            Status::ConfirmedSecondary,
            "\"Is Oral Surgery Safe During Pregnancy?\"",
            "elective surgery is deferred; the second trimester is preferred for what cannot wait",
        ),
        says(
            Source::Textbook,
            Status::Confirmed,
            "\"Dental treatment of the pregnant patient\"",
            "trimesters of 14 weeks; urgent care preferably in weeks 14 to 27",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    judging.case.patient.pregnancy_week?;
    if ask::is_elective(judging.plan)? {
        return situation("elective");
    }
    let sections = judging.plan.examined.as_ref()?.examinations.has(c::Examination::Sections);
    situation(if sections { "sections-taken" } else { "deferred" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn expecting() -> Trial {
        let mut trial = Trial::plain();
        trial.case.patient.pregnancy_week = Some(10);
        trial
    }

    #[test]
    fn an_implant_is_unsafe_at_ten_weeks() {
        assert_eq!(expecting().zone(&RULE), Some(Zone::Unsafe));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn waiting_is_ideal_and_sections_for_it_can_wait_too() {
        let mut trial = expecting();
        trial.course("postpone");
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.keys(&[("examinations", "look film")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
