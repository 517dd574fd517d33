//! A platform that stands above the facial crest of a fresh socket.

use crate::rules::prelude::*;

/// Set the platform level with the facial crest or below it.
pub(super) static RULE: Rule = Rule {
    id: "platform-above-the-crest",
    ledger: "pos-depth-from-crest",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Set the platform level with the facial crest or below it."),
    why: long!(
        "The crest of a fresh socket goes down; a platform that starts above it ends with threads in the gum."
    ),
    mend: long!("Seat the implant deeper, to the crest or a little below."),
    scale: Scale::Bands(Bands {
        quantity: "depth below the facial crest",
        unit: "mm",
        lowest: Zone::Suboptimal,
        cuts: &[Cut::from(0.0, Zone::Acceptable)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Depth, Decision::OffsetFacial, Decision::Tilt],
    rests_on: &[Fact::CrestLevel],
    causes: &[Cause::ImplantTooShallow],
    evidence: &[
        says(
            Source::Textbook,
            Status::ConfirmedSecondary,
            "teaching page on immediate placement",
            "0.5 to 1 mm below the facial crest in a fresh socket.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Palacios-Garzon 2019, Materials",
            "Crestal and subcrestal platforms differed by 0.028 mm of bone, mostly in healed sites.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    Some(Reading::Number(j.m.depth_from_crest()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn level_with_the_crest_is_acceptable() {
        for (value, zone) in [
            (-0.5, Zone::Suboptimal),
            (-0.001, Zone::Suboptimal),
            (0.0, Zone::Acceptable),
            (0.001, Zone::Acceptable),
            (1.5, Zone::Acceptable),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn depth_is_counted_from_the_crest() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        trial.number(Decision::Depth, -20);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
