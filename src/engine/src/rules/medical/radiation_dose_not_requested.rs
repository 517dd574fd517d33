//! After radiotherapy the dose at the site is asked for.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "radiation-dose-not-requested",
    ledger: "med-radiotherapy",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Ask for the dose record of the jaw before you operate on a patient who had radiotherapy there."
    ),
    why: long!("The dose at the site decides, and only the record tells it."),
    mend: long!("Ask for the dose record at the chart."),
    scale: Scale::Situations(&[
        when("known", "the dose record was asked for", Zone::Ideal),
        when(
            "not-known",
            "an operation is planned in an irradiated jaw whose dose nobody asked for",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Requests, Decision::Course, Decision::Today],
    rests_on: &[Fact::History, Fact::RadiationDose],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "ISOO-MASCC-ASCO 2024, osteoradionecrosis guideline",
            "the risk goes by the dose at the site: 50 Gy or more is high",
        ),
        says(Source::Ours, Status::Ours, "this project", "asking is part of clearing the patient"),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    judging.case.patient.radiotherapy.as_ref()?;
    if !ask::tooth_comes_out(judging.plan)? {
        return None;
    }
    let asked = judging.plan.chart.as_ref()?.requests.has(c::Request::DoseRecord);
    situation(if asked { "known" } else { "not-known" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Radiotherapy;
    use crate::rules::trial::Trial;

    #[test]
    fn radiotherapy_asks_for_its_record() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        trial.case.patient.radiotherapy =
            Some(Radiotherapy { gray_at_site: 20.0, years_since: 8.0 });
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("requests", "dose-record")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
