//! A platform that stands out towards the lip.

use crate::anatomy::Kind;
use crate::rules::prelude::*;

/// Set the platform at least 2 mm to the oral side of the line that joins the neighbours' facial surfaces.
pub(super) static RULE: Rule = Rule {
    id: "platform-too-far-facial",
    ledger: "pos-facial-clearance",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Set the platform at least 2 mm to the oral side of the line that joins the neighbours' facial surfaces."
    ),
    why: long!(
        "A platform that stands out pushes its own bone away, and the margin recedes with it; no crown hides that."
    ),
    mend: long!("Move the implant to the oral side, or lean its platform that way."),
    scale: Scale::Bands(Bands {
        quantity: "clearance from the facial line",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[Cut::from(1.5, Zone::Debated), Cut::from(2.0, Zone::Ideal).published(1.5, 2.0)],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("2 mm or more behind the line."),
        other: long!("1.5 mm suffices."),
    }),
    reads: &[Decision::OffsetFacial, Decision::Diameter, Decision::Tilt],
    rests_on: &[],
    causes: &[Cause::ImplantTooFacial, Cause::ImplantTooWide],
    evidence: &[
        says(
            Source::Opinion,
            Status::ConfirmedSecondary,
            "Clinical pearls for surgical implant dentistry, part 2",
            "The middle of the bed lies the radius of the implant and 2 mm behind a probe laid across the neighbours.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Levine 2017, ten keys for immediate placement, Compendium",
            "The implant is set against the palatal wall.",
        ),
        says(
            Source::Cohort,
            Status::FromMemory,
            "Evans and Chen 2008, Clin Oral Implants Res",
            "The margin went back 1.8 mm with a facial and 0.6 mm with a palatal shoulder.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    if j.case.site.tooth.kind() == Kind::Molar {
        return None;
    }
    Some(Reading::Number(j.m.facial_line_clearance()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn two_millimetres_behind_the_line_are_ideal() {
        for (value, zone) in [
            (-0.5, Zone::Compromising),
            (1.499, Zone::Compromising),
            (1.5, Zone::Debated),
            (1.501, Zone::Debated),
            (1.999, Zone::Debated),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn every_tenth_facially_is_a_tenth_less_of_clearance() {
        let clearance = |offset| {
            let mut trial = Trial::plain();
            trial.number(Decision::OffsetFacial, offset);
            match trial.reading(&RULE) {
                Some(Reading::Number(clearance)) => clearance,
                other => panic!("{other:?}"),
            }
        };
        assert!((clearance(-12) - clearance(8) - 2.0).abs() < 0.001);
        assert!(clearance(-12) > clearance(30) && clearance(30) < 1.5);
    }
}
