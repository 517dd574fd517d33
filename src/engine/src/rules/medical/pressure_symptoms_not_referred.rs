//! High pressure with symptoms is referred at once.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "pressure-symptoms-not-referred",
    ledger: "med-blood-pressure",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Refer a patient whose high pressure comes with symptoms, the same day."),
    why: long!(
        "Headache, blurred sight or chest pain with such a pressure means that organs suffer now."
    ),
    mend: long!("Stop, and send the patient to hospital or the physician the same day."),
    scale: Scale::Situations(&[
        when(
            "sent-the-same-day",
            "the patient goes to hospital or the physician the same day",
            Zone::Ideal,
        ),
        when(
            "put-off",
            "nothing is operated, but the patient is not seen by a physician the same day",
            Zone::Compromising,
        ),
        when(
            "operated",
            "an operation is planned in a patient with symptoms of high pressure",
            Zone::Unsafe,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::Today, Decision::ByWhen, Decision::ReferTo],
    rests_on: &[Fact::Pressure],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Yarows 2020, cancelling dental procedures, JADA",
            "no evidence for any fixed value at which to cancel",
        ),
        says(
            Source::Textbook,
            Status::Partly,
            "Hupp, textbook of oral surgery",
            "hypertension with symptoms is referred urgently",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !judging.case.patient.pressure_symptoms {
        return None;
    }
    if ask::tooth_comes_out(judging.plan)? {
        return situation("operated");
    }
    let today = judging.plan.intention.as_ref()?.today.as_ref();
    let sent = today.is_some_and(|today| match today.refer_to {
        Some(c::ReferTo::Hospital) => true,
        Some(c::ReferTo::Physician) => today.by_when == c::ByWhen::SameDay,
        _ => false,
    });
    situation(if sent { "sent-the-same-day" } else { "put-off" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn with_symptoms() -> Trial {
        let mut trial = Trial::plain();
        trial.case.patient.pressure = [206, 122];
        trial.case.patient.pressure_symptoms = true;
        trial
    }

    #[test]
    fn operating_is_unsafe_and_putting_off_is_not_enough() {
        let mut trial = with_symptoms();
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        trial.course("postpone");
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn hospital_or_the_physician_the_same_day_is_what_is_asked() {
        let mut trial = with_symptoms();
        trial.course("refer").keys(&[("refer-to", "physician"), ("by-when", "week")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("by-when", "same-day")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("refer-to", "hospital")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
