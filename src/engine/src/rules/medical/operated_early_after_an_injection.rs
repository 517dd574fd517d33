//! Elective surgery fits three to four months after an osteoporosis injection.

use crate::chart::Antiresorptive;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "operated-early-after-an-injection",
    ledger: "med-mronj-osteoporosis",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Plan elective surgery three to four months after the last injection for osteoporosis."
    ),
    why: long!(
        "The effect of the injection wanes towards its sixth month, and the wound heals better then. The next dose is still given on time."
    ),
    mend: long!("Plan the operation for three to four months after the dose, with the prescriber."),
    scale: Scale::Bands(Bands {
        quantity: "time since the injection",
        unit: "months",
        lowest: Zone::Suboptimal,
        cuts: &[
            Cut::from(3.0, Zone::Debated).published(3.0, 4.0),
            Cut::from(4.0, Zone::Ideal).published(3.0, 4.0),
        ],
    }),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("three to four months after a dose."),
        other: long!("four to seven months after a dose."),
    }),
    reads: &[Decision::Course],
    rests_on: &[Fact::History],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::Consensus,
            Status::FromMemory,
            "advice on timing surgery under denosumab",
            "three to four months after a dose; others quote four to seven",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "\"Management dilemmas with denosumab\" (case)",
            "the next dose must not be delayed long",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Some(Antiresorptive::Injected { months_since }) = judging.case.patient.antiresorptive
    else {
        return None;
    };
    if ask::is_elective(judging.plan)? { number(f64::from(months_since)) } else { None }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn three_and_four_months_cut_the_scale() {
        for (months, zone) in [
            (2.0, Zone::Suboptimal),
            (2.999, Zone::Suboptimal),
            (3.0, Zone::Debated),
            (3.999, Zone::Debated),
            (4.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, months), zone, "{months}");
        }
    }

    #[test]
    fn only_elective_surgery_can_wait_for_it() {
        let mut trial = Trial::plain();
        trial.case.patient.antiresorptive = Some(Antiresorptive::Injected { months_since: 2 });
        assert_eq!(trial.reading(&RULE), Some(Reading::Number(2.0)));
        trial.course("let-heal");
        assert_eq!(trial.reading(&RULE), None);
    }
}
