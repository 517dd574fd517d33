//! Very high torque beside a thin facial plate: contested.

use crate::rules::prelude::*;
use crate::units::comparable;

/// Beside a plate of under 1 mm, stay at 50 Ncm or less.
pub(super) static RULE: Rule = Rule {
    id: "torque-too-high-on-thin-plate",
    ledger: "torque-upper",
    family: Family::Stability,
    step: Step::Seating,
    skill: Skill::Stability,
    statement: long!("Beside a plate of under 1 mm, stay at 50 Ncm or less."),
    why: long!(
        "You can squeeze a thin plate hard enough to lose some of it, though not everybody who looked has found that."
    ),
    mend: long!("Prepare the bed to full width, or tap it."),
    scale: Scale::Bands(Bands {
        quantity: "seating torque beside a thin plate",
        unit: "Ncm",
        lowest: Zone::Ideal,
        cuts: &[Cut::past(50.0, Zone::Debated)],
    }),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("Above 50 Ncm beside a thin plate the margin loses more."),
        other: long!("Torques far above that did no harm in animals and in people."),
    }),
    reads: &[Decision::Preparation, Decision::Diameter, Decision::Length],
    rests_on: &[Fact::SeatingTorque, Fact::FacialThickness],
    causes: &[],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "Barone 2016, Clin Implant Dent Relat Res, with its report at 2 years",
            "At 24 months, with a plate under 1 mm, the margin had changed by 1.15 mm after high torque and by 0.21 mm after regular torque.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Khayat 2013 and Trisi 2011",
            "Up to 176 Ncm in people and 110 Ncm in sheep went without harm.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let plate = comparable(j.m.facial_plate()?.get());
    let torque = j.m.seating_torque()?.get();
    (0.0 < plate && plate < 1.0).then_some(Reading::Number(torque))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn fifty_is_still_regular() {
        for (value, zone) in [
            (49.999, Zone::Ideal),
            (50.0, Zone::Ideal),
            (50.001, Zone::Debated),
            (90.0, Zone::Debated),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn it_is_asked_beside_a_plate_of_under_one_millimetre() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None, "1.2 mm is not thin");
        for knot in &mut trial.case.site.ridge.facial.knots {
            knot.y -= 0.5;
        }
        assert!(matches!(trial.reading(&RULE), Some(Reading::Number(_))));
    }
}
