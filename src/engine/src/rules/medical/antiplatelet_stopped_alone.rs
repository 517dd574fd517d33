//! Platelet inhibitors go on, one or two of them.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "antiplatelet-stopped-alone",
    ledger: "med-antiplatelet",
    family: Family::Medical,
    step: Step::Chart,
    skill: Skill::Patient,
    statement: long!("Let platelet inhibitors go on, one or two of them."),
    why: long!(
        "A stent that clots because a tablet was left out can kill within the hour. The socket bleeds longer, and pressure stops it."
    ),
    mend: long!("Leave the tablets and plan local measures against bleeding."),
    scale: Scale::Situations(&[
        when("left", "the platelet inhibitors go on", Zone::Ideal),
        when(
            "stopped-alone",
            "the patient is told to stop a platelet inhibitor without its prescriber",
            Zone::Unsafe,
        ),
        when(
            "holiday-demanded",
            "a holiday of months is demanded from a platelet inhibitor",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Drugs],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "2007 advisory, \"Prevention of premature discontinuation of dual antiplatelet therapy in patients with coronary artery stents\"",
            "therapy is not broken off in the first 12 months; elective work waits or cardiology agrees",
        ),
        says(
            Source::Consensus,
            Status::FromMemory,
            "SDCEP 2022, anticoagulants and antiplatelets, 2nd edition",
            "single and dual platelet inhibitors go on, with local measures",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if judging.case.patient.antiplatelets == 0 {
        return None;
    }
    situation(match judging.plan.chart.as_ref()?.drugs {
        c::DrugAction::StopAlone => "stopped-alone",
        c::DrugAction::DemandHoliday => "holiday-demanded",
        _ => "left",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn one_or_two_inhibitors_go_on() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        for count in [1, 2] {
            trial.case.patient.antiplatelets = count;
            trial.keys(&[("drugs", "leave")]);
            assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
            trial.keys(&[("drugs", "stop-alone")]);
            assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        }
    }
}
