//! Elective surgery waits after a coronary stent.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "stent-too-recent",
    ledger: "med-antiplatelet",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Let elective surgery wait until a coronary stent is 12 months old, or let cardiology agree."
    ),
    why: long!(
        "A new stent clots when platelets are stirred up or tablets are left out. Time covers it with lining."
    ),
    mend: long!("Postpone the elective part or contact the cardiologist."),
    scale: Scale::Situations(&[
        when("a-year-old", "the stent is 12 months old or older", Zone::Ideal),
        when(
            "cardiology-asked",
            "the stent is younger, and the prescriber was asked",
            Zone::Acceptable,
        ),
        when(
            "within-a-year",
            "the stent is 6 to 12 months old and nobody was asked",
            Zone::Debated,
        ),
        when(
            "within-six-months",
            "the stent is younger than 6 months and nobody was asked",
            Zone::Compromising,
        ),
        when("within-a-month", "the stent is younger than a month", Zone::Unsafe),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("12 months before elective surgery."),
        other: long!(
            "6 months after an acute event, 1 month in stable disease, when waiting is undesired."
        ),
    }),
    reads: &[Decision::Drugs, Decision::Advices, Decision::Course],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "2007 advisory, \"Prevention of premature discontinuation of dual antiplatelet therapy in patients with coronary artery stents\"",
            "elective work waits 12 months after a drug-eluting stent",
        ),
        says(
            Source::Consensus,
            Status::ConfirmedSecondary,
            "European consensus 2018",
            "when delay is undesired, 1 month (stable) or 6 (acute syndrome): ask cardiology",
        ),
    ],
    measure,
};

/// Months: the most permissive figure, the next, and the longest.
const LIMITS: [u8; 3] = [1, 6, 12];

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let months = judging.case.patient.stent.as_ref()?.months;
    if !ask::is_elective(judging.plan)? {
        return None;
    }
    let chart = judging.plan.chart.as_ref()?;
    let asked = chart.advice.has(c::Advice::PhysicianLetter)
        || matches!(
            chart.drugs,
            c::DrugAction::ContactPrescriber | c::DrugAction::TimeWithPrescriber
        );
    situation(match months {
        _ if months >= LIMITS[2] => "a-year-old",
        _ if months < LIMITS[0] => "within-a-month",
        _ if asked => "cardiology-asked",
        _ if months < LIMITS[1] => "within-six-months",
        _ => "within-a-year",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::chart::Stent;
    use crate::rules::trial::Trial;

    fn stented(months: u8, drugs: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.patient.stent = Some(Stent { months });
        trial.keys(&[("drugs", drugs)]);
        trial.zone(&RULE)
    }

    #[test]
    fn one_six_and_twelve_months_cut_the_time() {
        for (months, zone) in [
            (0, Zone::Unsafe),
            (1, Zone::Compromising),
            (5, Zone::Compromising),
            (6, Zone::Debated),
            (11, Zone::Debated),
            (12, Zone::Ideal),
        ] {
            assert_eq!(stented(months, "leave"), Some(zone), "{months}");
        }
    }

    #[test]
    fn asking_opens_the_way_from_the_first_month_on() {
        assert_eq!(stented(1, "contact-prescriber"), Some(Zone::Acceptable));
        assert_eq!(stented(0, "contact-prescriber"), Some(Zone::Unsafe));
    }
}
