//! A platform that stands above the facial crest of a healed ridge.

use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-platform-above-the-crest",
    ledger: "pos-depth-from-crest",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!("Set a late platform level with the healed facial crest or below it."),
    why: long!(
        "The planned margin pulls the platform up and the crest has gone down; what stands between them is bare thread, whatever layer lies over it."
    ),
    mend: long!(
        "Seat the implant deeper; where that is too deep for the margin, build the ridge up first."
    ),
    scale: Scale::Bands(Bands {
        quantity: "depth below the healed facial crest",
        unit: "mm",
        lowest: Zone::Suboptimal,
        cuts: &[Cut::from(0.0, Zone::Acceptable)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::HealedAct, Decision::AgainAct, Decision::LastAct, Decision::LateDepth],
    rests_on: &[],
    causes: &[Cause::ImplantTooShallow],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Palacios-Garzon 2019, Materials",
            "Crestal and subcrestal platforms differed by 0.028 mm of bone, mostly in healed sites.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "platform in a healed ridge",
            "Level with the crest or a little below, so that no thread stands bare.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    number(j.m.late()?.from_crest?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn level_with_the_crest_is_acceptable() {
        for (value, zone) in
            [(-0.001, Zone::Suboptimal), (0.0, Zone::Acceptable), (0.001, Zone::Acceptable)]
        {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_depth_is_counted_from_the_healed_crest_and_a_layer_does_not_raise_that() {
        let mut trial = Trial::late();
        for act in ["place", "place-with-contour"] {
            trial.keys(&[("healed-act", act)]);
            // The crest has come down, and the depth with it.
            for weeks in [14, 40] {
                trial.number(Decision::PlaceAfter, weeks).number(Decision::LateDepth, 1);
                assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable), "{act}");
                trial.number(Decision::LateDepth, -1);
                assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal), "{act}");
            }
        }
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
