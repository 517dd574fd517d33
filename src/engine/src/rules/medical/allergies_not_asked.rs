//! Allergies are asked for before surgery.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "allergies-not-asked",
    ledger: "graft-origin-consent",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Ask for allergies before you operate."),
    why: long!(
        "Penicillin, chlorhexidine, collagen and latex all wait on the tray. The patient knows; you have to ask."
    ),
    mend: long!("Ask for allergies at the chart."),
    scale: Scale::Situations(&[
        when("asked", "allergies were asked for", Zone::Ideal),
        when(
            "not-asked",
            "an operation is planned and nobody asked for allergies",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Requests, Decision::Course, Decision::Today],
    rests_on: &[Fact::Allergies],
    causes: &[Cause::PatientNotCleared],
    evidence: &[says(
        Source::CommonPractice,
        Status::FromMemory,
        "habit of the trade",
        "ask about graft origin and allergies before choosing",
    )],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !ask::tooth_comes_out(judging.plan)? {
        return None;
    }
    let asked = judging.plan.chart.as_ref()?.requests.has(c::Request::Allergies);
    situation(if asked { "asked" } else { "not-asked" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn every_operation_asks_for_allergies() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("requests", "blood-pressure")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.course("keep-tooth");
        assert_eq!(trial.zone(&RULE), None);
    }
}
