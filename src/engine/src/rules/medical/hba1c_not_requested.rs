//! Elective surgery on a diabetic patient rests on a recent HbA1c.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "hba1c-not-requested",
    ledger: "med-diabetes",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Ask for the HbA1c before you plan elective surgery on a patient with diabetes."
    ),
    why: long!("Control decides whether you operate, and nobody can see it. One figure tells it."),
    mend: long!("Ask for the HbA1c at the chart."),
    scale: Scale::Situations(&[
        when("known", "the HbA1c was asked for", Zone::Ideal),
        when(
            "not-known",
            "elective surgery is planned on a diabetic patient whose HbA1c nobody asked for",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Requests, Decision::Course],
    rests_on: &[Fact::History, Fact::Hba1c],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Wagner 2022, Int J Implant Dent",
            "outcomes are reported by HbA1c: 92.6 to 100 % survival below 8 %",
        ),
        says(Source::Ours, Status::Ours, "this project", "asking is part of clearing the patient"),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    judging.case.patient.sugar.as_ref()?;
    if !ask::is_elective(judging.plan)? {
        return None;
    }
    let asked = judging.plan.chart.as_ref()?.requests.has(c::Request::Hba1c);
    situation(if asked { "known" } else { "not-known" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Sugar;
    use crate::rules::trial::Trial;

    #[test]
    fn diabetes_asks_for_its_figure() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        trial.case.patient.sugar = Some(Sugar { hba1c: 6.5 });
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("requests", "hba1c")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
