//! Long steroid tablets make the operator ask.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "steroid-not-weighed",
    ledger: "med-immunosuppression",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Ask the prescriber before elective surgery when steroid tablets were taken for more than three to four weeks."
    ),
    why: long!(
        "The body's own steroid may not rise when it is needed. The prescriber knows; stopping the tablets is the one wrong answer."
    ),
    mend: long!("Contact the prescriber and leave the tablets as they are."),
    scale: Scale::Situations(&[
        when("prescriber-asked", "the prescriber was asked about the steroid", Zone::Ideal),
        when(
            "unasked-small-dose",
            "5 to 10 mg a day for more than three weeks, and nobody was asked",
            Zone::Debated,
        ),
        when(
            "unasked",
            "10 mg a day or more for more than four weeks, and nobody was asked",
            Zone::Suboptimal,
        ),
        when(
            "stopped-alone",
            "steroid tablets are stopped without their prescriber",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("long treatment makes adrenal risk worth a call."),
        other: long!("routine steroid cover for minor surgery is largely abandoned."),
    }),
    reads: &[Decision::Drugs, Decision::Advices, Decision::Course],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::FromMemory,
            "oncology and dental guidance on steroids",
            "5 to 10 mg prednisolone-equivalent for more than 3 to 4 weeks: consider adrenal risk",
        ),
        says(
            Source::Consensus,
            Status::FromMemory,
            "advice against routine cover",
            "routine cover for minor surgery is largely abandoned",
        ),
    ],
    measure,
};

/// From this dose and this long on by the lower figures.
const SMALL: (f64, u16) = (5.0, 3);
/// And by the higher ones.
const LARGE: (f64, u16) = (10.0, 4);

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let steroid = judging.case.patient.steroid.as_ref()?;
    if steroid.mg < SMALL.0 || steroid.weeks <= SMALL.1 || !ask::is_elective(judging.plan)? {
        return None;
    }
    let chart = judging.plan.chart.as_ref()?;
    let large = steroid.mg >= LARGE.0 && steroid.weeks > LARGE.1;
    situation(match chart.drugs {
        c::DrugAction::StopAlone | c::DrugAction::DemandHoliday => "stopped-alone",
        c::DrugAction::ContactPrescriber | c::DrugAction::TimeWithPrescriber => "prescriber-asked",
        _ if chart.advice.has(c::Advice::PhysicianLetter) => "prescriber-asked",
        _ if large => "unasked",
        _ => "unasked-small-dose",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Steroid;
    use crate::rules::trial::Trial;

    fn on_steroid(mg: f64, weeks: u16, drugs: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.patient.steroid = Some(Steroid { mg, weeks });
        trial.keys(&[("drugs", drugs)]);
        trial.zone(&RULE)
    }

    #[test]
    fn dose_and_weeks_have_a_lower_and_a_higher_line() {
        assert_eq!(on_steroid(4.9, 20, "leave"), None);
        assert_eq!(on_steroid(5.0, 3, "leave"), None);
        assert_eq!(on_steroid(5.0, 4, "leave"), Some(Zone::Debated));
        assert_eq!(on_steroid(10.0, 4, "leave"), Some(Zone::Debated));
        assert_eq!(on_steroid(10.0, 5, "leave"), Some(Zone::Suboptimal));
    }

    #[test]
    fn asking_is_ideal_and_stopping_alone_is_not() {
        assert_eq!(on_steroid(15.0, 20, "contact-prescriber"), Some(Zone::Ideal));
        assert_eq!(on_steroid(15.0, 20, "stop-alone"), Some(Zone::Compromising));
    }
}
