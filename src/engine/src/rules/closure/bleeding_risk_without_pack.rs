//! Closure and follow-up: use local haemostasis in every patient whose blood clots badly.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "bleeding-risk-without-pack",
    ledger: "med-warfarin-type",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!("Use local haemostasis in every patient whose blood clots badly."),
    why: long!("You do not stop the drug, so you have to stop the bleeding where it is."),
    mend: long!("Pack and suture the socket, and press."),
    scale: Scale::Situations(&[
        when("pack-and-pressure", "the socket was packed, sutured and pressed", Zone::Ideal),
        when("one-measure", "the socket was packed and sutured, or pressed", Zone::Acceptable),
        when("rinse-only", "a tranexamic rinse is the only measure", Zone::Compromising),
        when("nothing", "no local measure was taken in a patient who bleeds easily", Zone::Unsafe),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Bleeding],
    rests_on: &[Fact::History],
    causes: &[],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "SDCEP 2022, anticoagulants and antiplatelets, guideline companion",
            "Vitamin K antagonists are not stopped below an INR of 4; local haemostasis is used.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Patel 2017, direct anticoagulants, Br Dent J",
            "Persistent bleeding in 13.5 %; omission was often unnecessary.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Pototski and Amenabar 2007, J Oral Sci",
            "Local measures suffice.",
        ),
        says(
            Source::Consensus,
            Status::FromMemory,
            "SDCEP 2022, antiplatelets, guideline",
            "Single and dual antiplatelets go on, with local measures.",
        ),
    ],
    measure,
};

/// Platelets below this many 10^9 a litre ask for local measures by the older guidance.
const FEW_PLATELETS: f64 = 75.0;

fn measure(j: &Judging<'_>) -> Option<Reading> {
    use c::BleedingMeasure as Of;
    let done = j.plan.closure.as_ref()?.bleeding;
    let patient = &j.case.patient;
    let few = patient.bleeding.as_ref().is_some_and(|it| it.platelets < FEW_PLATELETS);
    if patient.anticoagulant.is_none() && patient.antiplatelets == 0 && !few {
        return None;
    }
    situation(match (done.has(Of::PackAndSuture), done.has(Of::Pressure)) {
        (true, true) => "pack-and-pressure",
        (true, false) | (false, true) => "one-measure",
        (false, false) if done.has(Of::Tranexamic) => "rinse-only",
        (false, false) => "nothing",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Anticoagulant;
    use crate::chart::Bleeding;
    use crate::rules::trial::Trial;

    #[test]
    fn on_an_anticoagulant_local_measures_are_not_optional() {
        let mut trial = Trial::plain();
        trial.case.patient.anticoagulant = Some(Anticoagulant::VitaminK { inr: 2.8 });
        trial.keys(&[("bleeding", "pressure pack-and-suture checked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.case.patient.anticoagulant = Some(Anticoagulant::VitaminK { inr: 2.8 });
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = Trial::plain();
        trial.case.patient.anticoagulant = Some(Anticoagulant::VitaminK { inr: 2.8 });
        trial.keys(&[("bleeding", "tranexamic checked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = Trial::plain();
        trial.case.patient.anticoagulant = Some(Anticoagulant::VitaminK { inr: 2.8 });
        trial.keys(&[("bleeding", "checked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }

    #[test]
    fn antiplatelets_and_few_platelets_count_as_well() {
        let mut trial = Trial::plain();
        trial.case.patient.antiplatelets = 1;
        trial.keys(&[("bleeding", "checked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        let mut trial = Trial::plain();
        trial.case.patient.bleeding = Some(Bleeding { neutrophils: 3.0, platelets: 74.9 });
        trial.keys(&[("bleeding", "checked")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        let mut trial = Trial::plain();
        trial.case.patient.bleeding = Some(Bleeding { neutrophils: 3.0, platelets: 75.0 });
        trial.keys(&[("bleeding", "checked")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn a_patient_whose_blood_clots_well_is_not_judged_here() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
