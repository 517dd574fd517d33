//! Too little bone on the oral side of the implant.

use crate::rules::prelude::*;

/// Keep at least 1 mm of bone on the oral side of the implant.
pub(super) static RULE: Rule = Rule {
    id: "oral-bone-too-thin",
    ledger: "pos-palatal-lingual-bone",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Keep at least 1 mm of bone on the oral side of the implant."),
    why: long!(
        "This is the wall that holds the implant today; leave it a shell and it goes the way of the other one."
    ),
    mend: long!("Move the implant to the facial side, change its tilt, or choose a narrower one."),
    scale: Scale::Bands(Bands {
        quantity: "oral bone beside the implant",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[Cut::from(1.0, Zone::Ideal)],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::OffsetFacial, Decision::Diameter, Decision::Tilt, Decision::Length],
    rests_on: &[Fact::OralWall, Fact::RidgeForm],
    causes: &[Cause::ImplantTooOral, Cause::ImplantTilted, Cause::ImplantTooWide],
    evidence: &[says(
        Source::Opinion,
        Status::Confirmed,
        "Maximizing esthetics and function with immediate implants, 2016",
        "1 mm of bone all round the implant.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    Some(Reading::Number(j.m.oral_bone()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn one_millimetre_is_the_least() {
        for (value, zone) in [
            (-0.5, Zone::Compromising),
            (0.0, Zone::Compromising),
            (0.999, Zone::Compromising),
            (1.0, Zone::Ideal),
            (1.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn pushing_the_implant_to_the_palate_thins_its_bone() {
        let mut trial = Trial::plain();
        trial.number(Decision::OffsetFacial, -40);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn an_implant_along_the_palatal_slope_keeps_it() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
    }
}
