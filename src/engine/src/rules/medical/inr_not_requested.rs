//! Surgery under a vitamin K antagonist rests on an INR of the last day.

use crate::chart::Anticoagulant;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "inr-not-requested",
    ledger: "med-warfarin-type",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Ask for an INR of the last 24 hours before you operate under a vitamin K antagonist."
    ),
    why: long!(
        "The INR wanders with food, drugs and illness. Last month's figure does not stop today's bleeding."
    ),
    mend: long!("Ask for the INR at the chart."),
    scale: Scale::Situations(&[
        when("known", "an INR of the last 24 hours was asked for", Zone::Ideal),
        when(
            "not-known",
            "an operation is planned under a vitamin K antagonist without an INR",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Requests, Decision::Course, Decision::Today],
    rests_on: &[Fact::History, Fact::Inr],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "SDCEP 2022, anticoagulants and antiplatelets, 2nd edition",
            "INR within 24 hours before, 72 if stable",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Pototski & Amenabar 2007, J Oral Sci",
            "the INR is checked before surgery",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Some(Anticoagulant::VitaminK { .. }) = judging.case.patient.anticoagulant else {
        return None;
    };
    if !ask::tooth_comes_out(judging.plan)? {
        return None;
    }
    let asked = judging.plan.chart.as_ref()?.requests.has(c::Request::Inr);
    situation(if asked { "known" } else { "not-known" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn operating_without_an_inr_is_unsafe() {
        let mut trial = Trial::plain();
        trial.case.patient.anticoagulant = Some(Anticoagulant::VitaminK { inr: 2.2 });
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        trial.keys(&[("requests", "inr blood-pressure")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn a_direct_anticoagulant_has_no_inr() {
        let mut trial = Trial::plain();
        trial.case.patient.anticoagulant = Some(Anticoagulant::Direct { doses_a_day: 2 });
        assert_eq!(trial.zone(&RULE), None);
    }
}
