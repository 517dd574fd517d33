//! A platform so far to the oral side that the crown laps the ridge.

use crate::anatomy::Kind;
use crate::rules::prelude::*;

/// Do not set the platform more than 3 to 4 mm behind the neighbours' facial line.
pub(super) static RULE: Rule = Rule {
    id: "platform-too-far-oral",
    ledger: "pos-facial-clearance",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Do not set the platform more than 3 to 4 mm behind the neighbours' facial line."
    ),
    why: long!(
        "The crown has to come forward to where the tooth was; the further back you begin, the more it overhangs, and the patient cannot clean under it."
    ),
    mend: long!("Move the implant a little to the facial side, keeping 2 mm behind the line."),
    scale: Scale::Bands(Bands {
        quantity: "clearance from the facial line",
        unit: "mm",
        lowest: Zone::Ideal,
        cuts: &[
            Cut::past(3.0, Zone::Debated).published(3.0, 4.0),
            Cut::past(4.0, Zone::Suboptimal).published(3.0, 4.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Past 3 mm the crown begins to lap the ridge."),
        other: long!("Up to 4 mm is still accepted."),
    }),
    reads: &[Decision::OffsetFacial, Decision::Diameter, Decision::Tilt],
    rests_on: &[],
    causes: &[Cause::ImplantTooOral],
    evidence: &[says(
        Source::CommonPractice,
        Status::FromMemory,
        "note to the facial line",
        "Too palatal a platform makes a ridge lap; past 3 to 4 mm counts as suboptimal.",
    )],
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
    fn past_four_millimetres_the_crown_laps_the_ridge() {
        for (value, zone) in [
            (2.0, Zone::Ideal),
            (2.999, Zone::Ideal),
            (3.0, Zone::Ideal),
            (3.001, Zone::Debated),
            (3.999, Zone::Debated),
            (4.0, Zone::Debated),
            (4.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn five_millimetres_to_the_palate_are_too_many() {
        let mut trial = Trial::plain();
        trial.number(Decision::OffsetFacial, -50);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
