//! A length outside the usual.

use crate::rules::prelude::*;

/// Choose a length that reaches from the platform past the apex within the anatomy, usually 10 to 13 mm.
pub(super) static RULE: Rule = Rule {
    id: "implant-length-unusual",
    ledger: "dim-length",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Choose a length that reaches from the platform past the apex within the anatomy, usually 10 to 13 mm."
    ),
    why: long!(
        "You need length for hold past the apex, and each millimetre more brings you nearer to what you must not reach."
    ),
    mend: long!("Take a length from 10 to 13 mm if anchorage and anatomy allow."),
    scale: Scale::Bands(Bands {
        quantity: "length",
        unit: "mm",
        lowest: Zone::Suboptimal,
        cuts: &[
            Cut::from(8.0, Zone::Acceptable),
            Cut::from(10.0, Zone::Ideal),
            Cut::past(13.0, Zone::Acceptable),
            Cut::past(16.0, Zone::Suboptimal),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Length],
    rests_on: &[Fact::ApicalBone],
    causes: &[],
    evidence: &[says(
        Source::CommonPractice,
        Status::FromMemory,
        "length of immediate implants",
        "Usually 10 to 13 mm, from 8 to 16; socket depth below the platform plus anchorage.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let length = j.plan.implant_in_place()?.length;
    // Usual lengths are those of single roots.
    j.case.site.socket.only().map(|_| Reading::Number(length.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn ten_to_thirteen_is_usual() {
        for (value, zone) in [
            (7.999, Zone::Suboptimal),
            (8.0, Zone::Acceptable),
            (8.001, Zone::Acceptable),
            (9.999, Zone::Acceptable),
            (10.0, Zone::Ideal),
            (13.0, Zone::Ideal),
            (13.001, Zone::Acceptable),
            (16.0, Zone::Acceptable),
            (16.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn it_reads_the_length_that_was_chosen() {
        let mut trial = Trial::plain();
        assert_eq!(trial.reading(&RULE), Some(Reading::Number(13.0)));
        trial.number(Decision::Length, 80);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }
}
