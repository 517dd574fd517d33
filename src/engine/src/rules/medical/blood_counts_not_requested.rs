//! Chemotherapy or blood disease asks for blood counts.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "blood-counts-not-requested",
    ledger: "med-immunosuppression",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Ask for blood counts before you operate on a patient whose history puts them in doubt."
    ),
    why: long!("Both counts can fall within days, and neither shows from outside."),
    mend: long!("Ask for the blood counts at the chart."),
    scale: Scale::Situations(&[
        when("known", "blood counts were asked for", Zone::Ideal),
        when(
            "not-known",
            "an operation is planned, and the counts that the history puts in doubt were not asked for",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Requests, Decision::Course, Decision::Today],
    rests_on: &[Fact::History, Fact::Counts],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "\"Dental Treatment in Patients with Leukemia\" (table 2)",
            "platelets 50 or 60 and neutrophils 1.0 x10^9 a litre",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "\"Management Guidelines Relative to Invasive Dental Procedures\"",
            "no support needed above 60; an older version says 75",
        ),
        says(Source::Ours, Status::Ours, "this project", "asking is part of clearing the patient"),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    judging.case.patient.bleeding.as_ref()?;
    if !ask::tooth_comes_out(judging.plan)? {
        return None;
    }
    let asked = judging.plan.chart.as_ref()?.requests.has(c::Request::BloodCounts);
    situation(if asked { "known" } else { "not-known" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Bleeding;
    use crate::rules::trial::Trial;

    #[test]
    fn a_history_of_low_counts_asks_for_them() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        trial.case.patient.bleeding = Some(Bleeding { neutrophils: 3.0, platelets: 180.0 });
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("requests", "blood-counts")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
