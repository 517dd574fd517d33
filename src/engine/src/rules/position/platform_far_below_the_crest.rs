//! How far below the facial crest a platform may lie: contested up to 2 mm.

use crate::rules::prelude::*;
use crate::units::{Mm, comparable};

/// Set the platform no more than 2 mm below the facial crest.
pub(super) static RULE: Rule = Rule {
    id: "platform-far-below-the-crest",
    ledger: "pos-depth-from-crest",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Set the platform no more than 2 mm below the facial crest."),
    why: long!(
        "You allow for a crest that goes down; allow for more than it will lose and you take the bone down with the platform."
    ),
    mend: long!("Seat the implant less deep."),
    scale: Scale::Bands(Bands {
        quantity: "depth below the facial crest",
        unit: "mm",
        lowest: Zone::Debated,
        cuts: &[Cut::past(2.0, Zone::Suboptimal)],
    }),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("0.5 to 1.5 mm below the crest, because a fresh crest will remodel."),
        other: long!(
            "Level with the crest: reviews found no difference between crestal and subcrestal."
        ),
    }),
    reads: &[Decision::Depth, Decision::OffsetFacial, Decision::Tilt],
    rests_on: &[Fact::CrestLevel],
    causes: &[Cause::ImplantTooDeep],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Palacios-Garzon 2019, Materials",
            "Crestal and subcrestal platforms differed by 0.028 mm of bone, mostly in healed sites.",
        ),
        says(
            Source::Laboratory,
            Status::FromMemory,
            "Caneva 2010, Clin Oral Implants Res",
            "About 0.8 mm deeper and to the lingual side in fresh sockets.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "platform in a fresh socket",
            "About 1 mm below the crest, because the crest remodels.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    asked(j, j.m.depth_from_crest()?, j.m.depth_from_margin())
}

/// A depth below the crest, where this is asked of it: not above the crest, and the planned margin has
/// priority where it shows and is met.
pub(super) fn asked(j: &Judging<'_>, from_crest: Mm, from_margin: Option<Mm>) -> Option<Reading> {
    let met = from_margin.is_some_and(|mm| comparable(mm.get()) <= 5.0);
    let depth = from_crest.get();
    (depth >= 0.0 && !(comparable(depth) > 2.0 && met && j.case.site.is_aesthetic()))
        .then_some(Reading::Number(depth))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn within_two_millimetres_the_sources_differ() {
        for (value, zone) in [
            (0.0, Zone::Debated),
            (1.0, Zone::Debated),
            (1.999, Zone::Debated),
            (2.0, Zone::Debated),
            (2.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn a_millimetre_below_the_crest_is_a_matter_of_opinion() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Debated));
    }

    #[test]
    fn the_planned_margin_has_priority_where_it_shows() {
        let mut trial = Trial::plain();
        trial.number(Decision::Depth, 30);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.case.site.crown.margin_z = Mm::new(-1.0);
        assert_eq!(trial.zone(&RULE), None);
    }
}
