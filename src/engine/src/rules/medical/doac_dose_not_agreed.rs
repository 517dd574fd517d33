//! The dose of a direct anticoagulant around surgery is agreed with the prescriber.

use crate::chart::Anticoagulant;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "doac-dose-not-agreed",
    ledger: "med-doac",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Agree with the prescriber what happens to the dose of a direct anticoagulant on the day of larger surgery."
    ),
    why: long!(
        "The drug works for hours and its effect is highest soon after a dose. When you operate, and when the next dose is taken, decides how it bleeds."
    ),
    mend: long!("Agree the timing of the morning dose with the prescriber."),
    scale: Scale::Situations(&[
        when("timing-agreed", "the timing of doses is agreed with the prescriber", Zone::Ideal),
        when("prescriber-contacted", "the prescriber was contacted", Zone::Acceptable),
        when(
            "dose-unchanged",
            "surgery with graft or implant goes ahead on the unchanged dose",
            Zone::Debated,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!(
            "before surgery of higher bleeding risk the morning dose is left out (twice a day) or delayed (once a day)."
        ),
        other: long!(
            "the dose goes on unchanged: persistent bleeding was 13.5 % and leaving doses out was often unnecessary."
        ),
    }),
    reads: &[Decision::Drugs, Decision::Course],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "SDCEP 2022, anticoagulants and antiplatelets, 2nd edition",
            "higher-risk surgery: miss or delay the morning dose, restart about 4 hours after haemostasis; a once-daily evening dose needs no change beforehand",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Patel 2017, Br Dent J",
            "persistent bleeding 13.5 %; omission often unnecessary",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Some(Anticoagulant::Direct { .. }) = judging.case.patient.anticoagulant else {
        return None;
    };
    if !ask::is_elective(judging.plan)? {
        return None;
    }
    situation(match judging.plan.chart.as_ref()?.drugs {
        c::DrugAction::TimeWithPrescriber => "timing-agreed",
        c::DrugAction::ContactPrescriber => "prescriber-contacted",
        c::DrugAction::Leave => "dose-unchanged",
        // Stopping it alone has a rule of its own.
        c::DrugAction::StopAlone | c::DrugAction::DemandHoliday => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn agreeing_is_ideal_and_leaving_it_is_debated() {
        let mut trial = Trial::plain();
        trial.case.patient.anticoagulant = Some(Anticoagulant::Direct { doses_a_day: 2 });
        for (drugs, zone) in [
            ("time-with-prescriber", Some(Zone::Ideal)),
            ("contact-prescriber", Some(Zone::Acceptable)),
            ("leave", Some(Zone::Debated)),
            ("stop-alone", None),
        ] {
            trial.keys(&[("drugs", drugs)]);
            assert_eq!(trial.zone(&RULE), zone, "{drugs}");
        }
    }

    #[test]
    fn an_extraction_alone_needs_no_change() {
        let mut trial = Trial::plain();
        trial.case.patient.anticoagulant = Some(Anticoagulant::Direct { doses_a_day: 1 });
        trial.course("let-heal");
        assert_eq!(trial.zone(&RULE), None);
    }
}
