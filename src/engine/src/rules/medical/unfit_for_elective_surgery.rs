//! Elective surgery in a dental clinic suits ASA classes I to III.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "unfit-for-elective-surgery",
    ledger: "med-asa-and-events",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Operate electively on ASA I and II, on III with the physician's word, on IV not in a dental clinic."
    ),
    why: long!("Disease that threatens life leaves no reserve for an operation that can wait."),
    mend: long!("Write to the physician, or refer."),
    scale: Scale::Situations(&[
        when("fit", "the patient is ASA I or II", Zone::Ideal),
        when(
            "three-with-physician",
            "the patient is ASA III and the physician was asked",
            Zone::Acceptable,
        ),
        when(
            "three-unasked",
            "the patient is ASA III and no physician was asked",
            Zone::Suboptimal,
        ),
        when("four", "elective surgery is planned on a patient of ASA IV", Zone::Compromising),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Drugs, Decision::Advices, Decision::Course],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[says(
        Source::Textbook,
        Status::FromMemory,
        "textbook teaching on ASA classes",
        "elective care suits I and II, III with physician input, IV not in a dental clinic",
    )],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !ask::is_elective(judging.plan)? {
        return None;
    }
    let chart = judging.plan.chart.as_ref()?;
    let asked = chart.advice.has(c::Advice::PhysicianLetter)
        || matches!(
            chart.drugs,
            c::DrugAction::ContactPrescriber | c::DrugAction::TimeWithPrescriber
        );
    situation(match judging.case.patient.asa {
        0..=2 => "fit",
        3 if asked => "three-with-physician",
        3 => "three-unasked",
        _ => "four",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn class(asa: u8) -> Trial {
        let mut trial = Trial::plain();
        trial.case.patient.asa = asa;
        trial
    }

    #[test]
    fn each_class_has_its_word() {
        for (asa, zone) in
            [(1, Zone::Ideal), (2, Zone::Ideal), (3, Zone::Suboptimal), (4, Zone::Compromising)]
        {
            assert_eq!(class(asa).zone(&RULE), Some(zone), "{asa}");
        }
    }

    #[test]
    fn a_letter_to_the_physician_answers_class_three_only() {
        for (asa, zone) in [(3, Zone::Acceptable), (4, Zone::Compromising)] {
            let mut trial = class(asa);
            trial.keys(&[("advice", "physician-letter")]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{asa}");
        }
    }
}
