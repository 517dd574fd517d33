//! Elective implants wait until the gums are under control.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "bleeding-gums-not-treated-first",
    ledger: "med-periodontitis",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!(
        "Bring bleeding of the whole mouth to about 20 to 25 % or less before an elective implant."
    ),
    why: long!("The bacteria of sick gums settle on the implant next to them."),
    mend: long!("Treat the gums and the plaque first; take the tooth out if it has to come out."),
    scale: Scale::Bands(Bands {
        quantity: "full-mouth bleeding score",
        unit: "%",
        lowest: Zone::Ideal,
        cuts: &[
            Cut::past(20.0, Zone::Debated).published(20.0, 25.0),
            Cut::past(25.0, Zone::Compromising).published(20.0, 25.0),
        ],
    }),
    agreement: Agreement::Agreed,
    positions: Some(Positions { one: long!("up to 20 %."), other: long!("up to 25 %.") }),
    reads: &[Decision::Course],
    rests_on: &[Fact::BleedingScore],
    causes: &[Cause::PatientNotCleared],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Hamilton 2023, \"Selection Criteria for Immediate Implant Placement\"",
            "active periodontitis is a selection factor in 54 studies",
        ),
        says(
            Source::Consensus,
            Status::FromMemory,
            "consensus on periodontal control",
            "plaque and bleeding of the whole mouth at about 20 to 25 % or less",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !ask::is_elective(judging.plan)? {
        return None;
    }
    number(f64::from(judging.case.patient.bleeding_score))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn twenty_and_twenty_five_percent_cut_the_scale() {
        for (score, zone) in [
            (20.0, Zone::Ideal),
            (20.001, Zone::Debated),
            (25.0, Zone::Debated),
            (25.001, Zone::Compromising),
        ] {
            assert_eq!(zone_at(&RULE, score), zone, "{score}");
        }
    }

    #[test]
    fn extraction_alone_does_not_wait_for_the_gums() {
        let mut trial = Trial::plain();
        trial.case.patient.bleeding_score = 48;
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.course("let-heal");
        assert_eq!(trial.zone(&RULE), None);
    }
}
