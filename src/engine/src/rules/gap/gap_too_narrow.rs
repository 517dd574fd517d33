//! A facial gap that leaves no room for graft between implant and plate.

use crate::anatomy::{Jaw, Kind};
use crate::rules::prelude::*;

/// Leave a facial gap of at least 2 mm between the implant and an intact facial wall.
pub(super) static RULE: Rule = Rule {
    id: "gap-too-narrow",
    ledger: "gap-target",
    family: Family::Gap,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Leave a facial gap of at least 2 mm between the implant and an intact facial wall."
    ),
    why: long!(
        "You need room for graft and clot in front of the implant; an implant that fills the socket leaves nothing between its threads and a plate that will resorb."
    ),
    mend: long!("Move the implant to the oral side, or choose the next narrower diameter."),
    scale: Scale::Bands(Bands {
        quantity: "facial gap",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::past(0.0, Zone::Suboptimal),
            Cut::from(1.5, Zone::Acceptable).published(1.5, 2.0),
            Cut::from(2.0, Zone::Ideal),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!(
            "A narrower implant set to the palate leaves a gap that graft can fill, and the facial contour keeps better."
        ),
        other: long!(
            "Older teaching filled the socket with the widest implant, for the sake of hold."
        ),
    }),
    reads: &[Decision::Diameter, Decision::OffsetFacial, Decision::Depth, Decision::Tilt],
    rests_on: &[],
    causes: &[Cause::ImplantTooFacial, Cause::ImplantTooWide],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Levine 2017, ten keys for immediate placement, Compendium, with its update",
            "A gap of 2 mm or more is wanted, 1.5 to 2 mm is acceptable, less is unfavourable with a thin plate.",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "7th consensus conference, group 5, 2023",
            "A gap of more than 2 mm together with graft is linked with better results.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Maximizing esthetics and function with immediate implants, 2016",
            "Filling the socket with the widest implant is now discouraged.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let tooth = j.case.site.tooth;
    if tooth.jaw() != Jaw::Maxilla || tooth.kind() == Kind::Molar {
        return None;
    }
    let gap = j.m.facial_gap()?;
    gap.wall_present.then(|| Reading::Number(gap.width.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn contact_compromises_and_two_millimetres_are_ideal() {
        for (value, zone) in [
            (0.0, Zone::Compromising),
            (0.001, Zone::Suboptimal),
            (1.499, Zone::Suboptimal),
            (1.5, Zone::Acceptable),
            (1.999, Zone::Acceptable),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn moving_the_implant_to_the_wall_closes_the_gap() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::OffsetFacial, 12);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn half_a_millimetre_towards_the_wall_is_half_a_millimetre_of_gap() {
        let width = |offset| {
            let mut trial = Trial::plain();
            trial.number(Decision::OffsetFacial, offset);
            match trial.reading(&RULE) {
                Some(Reading::Number(width)) => width,
                other => panic!("{other:?}"),
            }
        };
        assert!((width(-12) - width(-7) - 0.5).abs() < 0.001);
    }
}
