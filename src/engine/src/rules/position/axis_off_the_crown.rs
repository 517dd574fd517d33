//! An axis that does not meet the planned crown, with a straight screw channel.

use crate::plan::choices::ScrewChannel;
use crate::rules::prelude::*;

/// Aim the implant at the planned crown, within 25 to 30 degrees.
pub(super) static RULE: Rule = Rule {
    id: "axis-off-the-crown",
    ledger: "pos-axis",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Aim the implant at the planned crown, within 25 to 30 degrees."),
    why: long!(
        "You can follow the socket or the crown; follow the socket and the screw comes out through the lip side of the crown."
    ),
    mend: long!(
        "Lean the implant towards the axis of the crown, or plan an angled screw channel beforehand."
    ),
    scale: Scale::Bands(Bands {
        quantity: "angle between implant and planned crown",
        unit: "degrees",
        lowest: Zone::Ideal,
        cuts: &[
            Cut::past(25.0, Zone::Debated).published(25.0, 30.0),
            Cut::past(30.0, Zone::Compromising).published(25.0, 30.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Past 25 degrees correction by the abutment becomes a problem."),
        other: long!("Up to 30 degrees it can be corrected."),
    }),
    reads: &[Decision::Tilt, Decision::Tip, Decision::ScrewChannel],
    rests_on: &[],
    causes: &[Cause::ImplantTilted],
    evidence: &[
        says(
            Source::Anatomy,
            Status::Confirmed,
            "survey of the angle between root and bone, BMC Oral Health 2021",
            "Root and bone part by 15 degrees at upper central and 19 degrees at upper lateral incisors on average.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "limit of correction",
            "Correction past 25 to 30 degrees is a problem.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    // The channel is chosen with the course; a course revised later goes with the straight one.
    let channel = j.plan.intention.as_ref().and_then(|intention| intention.channel);
    if channel == Some(ScrewChannel::Angled) {
        return None;
    }
    Some(Reading::Number(j.m.angle_to_crown()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn between_twenty_five_and_thirty_the_sources_differ() {
        for (value, zone) in [
            (0.0, Zone::Ideal),
            (24.999, Zone::Ideal),
            (25.0, Zone::Ideal),
            (25.001, Zone::Debated),
            (29.999, Zone::Debated),
            (30.0, Zone::Debated),
            (30.001, Zone::Compromising),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn tilt_and_tip_away_from_the_crown_add_up() {
        let mut trial = Trial::plain();
        let angle = |trial: &Trial| match trial.reading(&RULE) {
            Some(Reading::Number(angle)) => angle,
            other => panic!("{other:?}"),
        };
        assert!((angle(&trial) - 8.0).abs() < 0.01);
        trial.number(Decision::Tilt, -28).number(Decision::Tip, 20);
        assert!(angle(&trial) > 30.0);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn an_angled_channel_is_left_to_its_own_rule() {
        let mut trial = Trial::plain();
        trial.keys(&[("screw-channel", "angled")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
