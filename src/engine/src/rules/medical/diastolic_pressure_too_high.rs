//! Elective surgery waits in severe hypertension: the diastolic figure.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "diastolic-pressure-too-high",
    ledger: "med-blood-pressure",
    family: Family::Medical,
    step: Step::Intention,
    skill: Skill::Patient,
    statement: long!("Defer elective surgery at a diastolic pressure of 110 mmHg or more."),
    why: long!(
        "Pain, fear and adrenaline raise a pressure that is already too high. A stroke in the chair is rare and cannot be taken back."
    ),
    mend: long!(
        "Postpone the elective part, refer to the physician, and measure again after five minutes of rest next time."
    ),
    scale: Scale::Bands(Bands {
        quantity: "diastolic pressure",
        unit: "mmHg",
        lowest: Zone::Ideal,
        cuts: &[
            Cut::from(100.0, Zone::Debated).published(100.0, 120.0),
            Cut::from(120.0, Zone::Unsafe).published(100.0, 120.0),
        ],
    }),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("defer from 110 mmHg, in older advice from 100."),
        other: long!("no fixed value is proven; the most permissive limit is 120 mmHg."),
    }),
    reads: &[Decision::Course],
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
            Status::ConfirmedSecondary,
            "Hupp, textbook of oral surgery",
            "200/110 is one textbook's limit",
        ),
        says(
            Source::Consensus,
            Status::ConfirmedSecondary,
            "dental and cardiology pages on pressure before surgery",
            "160/100 in older dental advice, 180/110 widely, 180/120 in some schools",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !ask::is_elective(judging.plan)? {
        return None;
    }
    number(f64::from(judging.case.patient.pressure[1]))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn between_the_published_limits_it_is_debated_and_beyond_the_last_unsafe() {
        for (pressure, zone) in [
            (99.0, Zone::Ideal),
            (100.0, Zone::Debated),
            (119.0, Zone::Debated),
            (120.0, Zone::Unsafe),
        ] {
            assert_eq!(zone_at(&RULE, pressure), zone, "{pressure}");
        }
    }

    #[test]
    fn the_diastolic_figure_is_read_and_only_for_elective_surgery() {
        let mut trial = Trial::plain();
        trial.case.patient.pressure = [184, 104];
        assert_eq!(trial.reading(&RULE), Some(Reading::Number(104.0)));
        trial.course("postpone");
        assert_eq!(trial.reading(&RULE), None);
    }
}
