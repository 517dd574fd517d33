//! A platform too close to the margin of the crown.

use crate::rules::prelude::*;

/// Set the platform 3 to 4 mm below the planned margin, not less.
pub(super) static RULE: Rule = Rule {
    id: "platform-too-shallow",
    ledger: "pos-depth-from-margin",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Set the platform 3 to 4 mm below the planned margin, not less."),
    why: long!(
        "The crown needs that height to grow from a round implant to the shape of a tooth; without it metal shows or the gum is pushed."
    ),
    mend: long!("Seat the implant deeper."),
    scale: Scale::Bands(Bands {
        quantity: "depth below the planned margin",
        unit: "mm",
        lowest: Zone::Suboptimal,
        cuts: &[Cut::from(2.5, Zone::Acceptable), Cut::from(3.0, Zone::Ideal)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Depth, Decision::OffsetFacial, Decision::Tilt],
    rests_on: &[Fact::GumMargin],
    causes: &[Cause::ImplantTooShallow],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Maximizing esthetics and function with immediate implants, 2016",
            "3 to 4 mm below the planned margin.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "outer limits",
            "Less than 2.5 mm is too shallow.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    if !j.case.site.is_aesthetic() {
        return None;
    }
    Some(Reading::Number(j.m.depth_from_margin()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn three_millimetres_are_ideal_and_two_and_a_half_acceptable() {
        for (value, zone) in [
            (1.5, Zone::Suboptimal),
            (2.499, Zone::Suboptimal),
            (2.5, Zone::Acceptable),
            (2.501, Zone::Acceptable),
            (2.999, Zone::Acceptable),
            (3.0, Zone::Ideal),
            (3.001, Zone::Ideal),
            (3.5, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn the_planned_margin_is_where_depth_begins() {
        let mut trial = Trial::plain();
        let depth = |trial: &Trial| match trial.reading(&RULE) {
            Some(Reading::Number(depth)) => depth,
            other => panic!("{other:?}"),
        };
        // The margin is planned 3 mm coronal of the crest, the platform stands 1 mm below it.
        assert!((depth(&trial) - 4.0).abs() < 0.2);
        trial.number(Decision::Depth, -15);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
