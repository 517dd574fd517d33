//! How far below the healed crest a late platform may lie: contested up to 2 mm.

use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day.
pub(super) static RULE: Rule = Rule {
    id: "late-platform-far-below-the-crest",
    ledger: "pos-depth-from-crest",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!("Set a late platform no more than 2 mm below the healed facial crest."),
    why: long!(
        "This crest has done most of its shrinking; you need allow for little more, and what you sink is bone that you lose."
    ),
    mend: long!("Seat the implant less deep."),
    scale: Scale::Bands(Bands {
        quantity: "depth below the healed facial crest",
        unit: "mm",
        lowest: Zone::Debated,
        cuts: &[Cut::past(2.0, Zone::Suboptimal)],
    }),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("0.5 to 1.5 mm below the crest, as in a fresh socket."),
        other: long!(
            "Level with the crest: reviews found no difference between crestal and subcrestal."
        ),
    }),
    reads: &[Decision::LateDepth],
    rests_on: &[],
    causes: &[Cause::ImplantTooDeep],
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
            "platform below the crest",
            "0.5 to 1.5 mm below the crest, 2 mm at the most.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let late = j.m.late()?;
    super::platform_far_below_the_crest::asked(j, late.from_crest?, late.from_margin)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};
    use crate::units::Mm;

    #[test]
    fn within_two_millimetres_the_sources_differ() {
        for (value, zone) in [
            (0.0, Zone::Debated),
            (1.999, Zone::Debated),
            (2.0, Zone::Debated),
            (2.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_planned_margin_has_priority_where_it_shows() {
        let mut trial = Trial::late();
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        trial.number(Decision::LateDepth, 30);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.case.site.crown.margin_z = Mm::new(1.0);
        assert_eq!(trial.zone(&RULE), None);
        trial.number(Decision::LateDepth, -1);
        assert_eq!(trial.zone(&RULE), None, "above the crest another rule asks");
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
