//! Implant and floor of sinus or nose.

use crate::rules::prelude::*;

/// Stay 1 mm or more below the floor of sinus or nose, or know why you do not.
pub(super) static RULE: Rule = Rule {
    id: "through-the-floor",
    ledger: "pos-sinus-nasal",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Stay 1 mm or more below the floor of sinus or nose, or know why you do not."),
    why: long!(
        "You may enter it on purpose for hold, and you may tear its lining by accident; from inside the mouth both look alike."
    ),
    mend: long!("Choose a shorter implant or seat it less deep."),
    scale: Scale::Bands(Bands {
        quantity: "distance from the apex to the floor",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[Cut::from(-2.0, Zone::Debated), Cut::from(1.0, Zone::Ideal).published(1.0, 2.0)],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Stay 1 to 2 mm below the floor."),
        other: long!("Engage the floor on purpose, or enter by up to 2 mm with the lining whole."),
    }),
    reads: &[Decision::Length, Decision::Depth, Decision::Tilt],
    rests_on: &[Fact::Floor],
    causes: &[Cause::ImplantTooDeep],
    evidence: &[says(
        Source::CommonPractice,
        Status::FromMemory,
        "distance to the floor",
        "1 mm or more below, usually 1 to 2; entry up to 2 mm with the lining whole is usually tolerated.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    Some(Reading::Number(j.m.to_floor()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Floor, FloorKind};
    use crate::rules::trial::{Trial, zone_at};
    use crate::units::Mm;

    #[test]
    fn more_than_two_millimetres_beyond_the_floor_is_too_far() {
        for (value, zone) in [
            (-2.001, Zone::Compromising),
            (-2.0, Zone::Debated),
            (-1.999, Zone::Debated),
            (0.0, Zone::Debated),
            (0.999, Zone::Debated),
            (1.0, Zone::Ideal),
            (1.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn the_apex_is_measured_against_the_floor() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        let mut zone = |level| {
            let z = Mm::new(level);
            trial.case.site.vital.floor = Some(Floor { kind: FloorKind::Nose, z, rise: 0.0 });
            trial.zone(&RULE)
        };
        assert_eq!(zone(20.0), Some(Zone::Ideal));
        assert_eq!(zone(13.0), Some(Zone::Debated));
        assert_eq!(zone(9.0), Some(Zone::Compromising));
    }
}
