//! Blood pressure is measured before surgery.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "pressure-not-measured",
    ledger: "med-blood-pressure",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Measure the blood pressure before you operate."),
    why: long!("High pressure gives no sign until it does harm. The cuff takes a minute."),
    mend: long!("Ask for the blood pressure after five minutes of rest."),
    scale: Scale::Situations(&[
        when("measured", "the blood pressure was measured", Zone::Ideal),
        when(
            "not-measured",
            "an operation is planned and nobody measured the blood pressure",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Requests, Decision::Course, Decision::Today],
    rests_on: &[Fact::Pressure],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Yarows 2020, cancelling dental procedures, JADA",
            "no evidence for any fixed value at which to cancel: what was measured has to be weighed",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "measuring is part of clearing every patient",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !ask::tooth_comes_out(judging.plan)? {
        return None;
    }
    let measured = judging.plan.chart.as_ref()?.requests.has(c::Request::BloodPressure);
    situation(if measured { "measured" } else { "not-measured" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn every_operation_asks_for_the_cuff() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("requests", "allergies")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.course("keep-tooth");
        assert_eq!(trial.zone(&RULE), None);
    }
}
