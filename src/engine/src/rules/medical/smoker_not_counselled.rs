//! A smoker is counselled and it is written down.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "smoker-not-counselled",
    ledger: "med-smoking",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Advise a smoker to stop, with help, and note it."),
    why: long!(
        "Smoking doubles the loss of implants. No step of the operation changes that as much as stopping does."
    ),
    mend: long!("Advise to stop smoking, with help and a note in the record."),
    scale: Scale::Situations(&[
        when("counselled", "the smoker was advised to stop", Zone::Ideal),
        when(
            "not-counselled",
            "an implant or graft is planned in a smoker who was not advised to stop",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Advices, Decision::Course],
    rests_on: &[Fact::History],
    causes: &[],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Moraschini 2016, IJOMS",
            "any smoking: odds ratio of failure 1.96 (1.68 to 2.30)",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "window for stopping",
            "one to two weeks before to eight weeks after",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if judging.case.patient.cigarettes == 0 || !ask::is_elective(judging.plan)? {
        return None;
    }
    let told = judging.plan.chart.as_ref()?.advice.has(c::Advice::StopSmoking);
    situation(if told { "counselled" } else { "not-counselled" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn from_the_first_cigarette_on_advice_is_due() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        trial.case.patient.cigarettes = 1;
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.keys(&[("advice", "stop-smoking")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
