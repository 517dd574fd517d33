//! Graft: lay 2 to 3 mm of graft on the outside of a facial dehiscence.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "contour-layer-too-thin",
    ledger: "graft-contour-overbuild",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Lay 2 to 3 mm of graft on the outside of a facial dehiscence."),
    why: long!("The layer shrinks as it heals, so what you lay level ends up hollow."),
    mend: long!("Raise the contour layer to at least 2 mm."),
    scale: Scale::Bands(Bands {
        quantity: "contour layer over the facial defect",
        unit: "mm",
        lowest: Zone::Suboptimal,
        cuts: &[
            Cut::from(2.0, Zone::Ideal).published(2.0, 3.0),
            Cut::past(3.0, Zone::Acceptable).published(2.0, 3.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::GraftMaterial, Decision::ContourLayer],
    rests_on: &[Fact::FacialWall],
    causes: &[Cause::Underfilled],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Chappuis 2018, contour augmentation at 10 years, J Dent Res",
            "The facial wall measured 1.67 mm in the median after 10 years.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "teaching on over-contouring",
            "A layer of 2 to 3 mm, shrinkage expected.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let layer = j.plan.graft_laid()?.contour?;
    regeneration::has_facial_defect(j.case).then_some(regeneration::millimetres(layer))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::zone_at;

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (1.999, Zone::Suboptimal),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
            (2.999, Zone::Ideal),
            (3.0, Zone::Ideal),
            (3.001, Zone::Acceptable),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_layer_is_read_from_the_plan() {
        let mut trial = repaired();
        trial.number(Decision::ContourLayer, 0);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.number(Decision::ContourLayer, 19);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.number(Decision::ContourLayer, 20);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::ContourLayer, 30);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::ContourLayer, 31);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }

    #[test]
    fn a_whole_facial_wall_needs_no_layer() {
        let mut trial = repaired();
        trial.case.site.defects.clear();
        assert_eq!(trial.zone(&RULE), None);
    }
}
