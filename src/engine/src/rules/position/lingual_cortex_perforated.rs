//! The lingual cortex of the lower jaw.

use crate::anatomy::Jaw;
use crate::rules::prelude::*;

/// Never perforate the lingual cortex of the lower jaw.
pub(super) static RULE: Rule = Rule {
    id: "lingual-cortex-perforated",
    ledger: "pos-lingual-cortex",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Never perforate the lingual cortex of the lower jaw."),
    why: long!(
        "Arteries run along it; open one and the floor of the mouth swells until your patient cannot breathe."
    ),
    mend: long!(
        "Change the tilt towards the facial side, or choose a shorter or narrower implant."
    ),
    scale: Scale::Bands(Bands {
        quantity: "bone to the lingual face",
        unit: "mm",
        lowest: Zone::Unsafe,
        cuts: &[
            Cut::past(0.0, Zone::Compromising),
            Cut::from(1.0, Zone::Debated),
            Cut::from(2.0, Zone::Ideal).published(1.0, 2.0),
        ],
    }),
    agreement: Agreement::Agreed,
    positions: Some(Positions {
        one: long!("1 mm of bone at the least."),
        other: long!("2 mm of bone at the least."),
    }),
    reads: &[
        Decision::OffsetFacial,
        Decision::Tilt,
        Decision::Length,
        Decision::Diameter,
        Decision::Depth,
    ],
    rests_on: &[Fact::RidgeForm, Fact::OralWall],
    causes: &[Cause::ImplantTooOral, Cause::ImplantTilted, Cause::ImplantTooDeep],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Law 2017, haematoma of the floor of the mouth, J Oral Maxillofac Surg",
            "The lingual cortex had been perforated in 84 % of 25 cases.",
        ),
        says(Source::Textbook, Status::FromMemory, "bone to be left lingually", "1 to 2 mm."),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant.as_ref()?;
    if j.case.site.tooth.jaw() != Jaw::Mandible {
        return None;
    }
    let least = j.m.oral_bone()?.min(j.m.apical_oral_bone()?);
    Some(Reading::Number(least.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::lower;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn a_perforation_is_unsafe() {
        for (value, zone) in [
            (-1.0, Zone::Unsafe),
            (0.0, Zone::Unsafe),
            (0.001, Zone::Compromising),
            (0.999, Zone::Compromising),
            (1.0, Zone::Debated),
            (1.001, Zone::Debated),
            (1.999, Zone::Debated),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn the_upper_jaw_is_not_asked() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn an_apex_through_the_lingual_face_is_unsafe() {
        let mut trial = lower(Trial::plain());
        for knot in &mut trial.case.site.ridge.oral.knots {
            knot.y = -5.2;
        }
        trial.number(Decision::Tilt, -30);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
        trial.number(Decision::Tilt, 0).number(Decision::OffsetFacial, 0);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
