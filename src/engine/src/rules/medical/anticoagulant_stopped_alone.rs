//! A drug against clotting is never stopped by the operator alone.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "anticoagulant-stopped-alone",
    ledger: "med-warfarin-type",
    family: Family::Medical,
    step: Step::Chart,
    skill: Skill::Patient,
    statement: long!("Leave a drug against clotting to the one who prescribed it."),
    why: long!(
        "A clot in the brain or the heart costs more than a socket that oozes. You can press on a socket."
    ),
    mend: long!(
        "Leave the drug, contact the prescriber, and plan local measures against bleeding."
    ),
    scale: Scale::Situations(&[
        when(
            "left-to-the-prescriber",
            "the drug stays as it is or its timing is agreed with the prescriber",
            Zone::Ideal,
        ),
        when(
            "stopped-alone",
            "the patient is told to stop a drug against clotting without its prescriber",
            Zone::Unsafe,
        ),
        when(
            "holiday-demanded",
            "a holiday of months is demanded from a drug against clotting",
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
            "SDCEP 2022, anticoagulants and antiplatelets, 2nd edition",
            "vitamin K antagonists go on below an INR of 4; direct anticoagulants are never stopped for days unprompted",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Pototski & Amenabar 2007, J Oral Sci",
            "vitamin K antagonists go on for oral surgery, with local measures",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Patel 2017, Br Dent J",
            "with direct anticoagulants persistent bleeding in 13.5 %; leaving doses out was often unnecessary",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    judging.case.patient.anticoagulant.as_ref()?;
    situation(match judging.plan.chart.as_ref()?.drugs {
        c::DrugAction::StopAlone => "stopped-alone",
        c::DrugAction::DemandHoliday => "holiday-demanded",
        _ => "left-to-the-prescriber",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Anticoagulant;
    use crate::rules::trial::Trial;

    #[test]
    fn stopping_it_alone_is_unsafe_and_every_other_answer_is_not() {
        let mut trial = Trial::plain();
        trial.case.patient.anticoagulant = Some(Anticoagulant::VitaminK { inr: 2.4 });
        for (drugs, zone) in [
            ("leave", Zone::Ideal),
            ("contact-prescriber", Zone::Ideal),
            ("time-with-prescriber", Zone::Ideal),
            ("stop-alone", Zone::Unsafe),
            ("demand-holiday", Zone::Unsafe),
        ] {
            trial.keys(&[("drugs", drugs)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{drugs}");
        }
    }

    #[test]
    fn without_such_a_drug_there_is_nothing_to_stop() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
