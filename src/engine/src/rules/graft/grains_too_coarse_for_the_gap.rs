//! Graft: use grains of at most 1 mm in the gap.

use crate::rules::prelude::*;
use crate::rules::regeneration;
use crate::units::{Ratio, comparable};

pub(super) static RULE: Rule = Rule {
    id: "grains-too-coarse-for-the-gap",
    ledger: "graft-particle-size",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Use grains of at most 1 mm in the gap."),
    why: long!("Coarse grains bridge at the mouth of the gap and leave it empty behind."),
    mend: long!("Choose grains of 0.25 to 1.0 mm for the gap."),
    scale: Scale::Situations(&[
        when("fits", "the grains are at most 1 mm and narrower than the gap", Zone::Ideal),
        when(
            "coarse-with-layer",
            "coarse grains serve a contour layer and still enter the gap",
            Zone::Acceptable,
        ),
        when("coarse", "grains above 1 mm were packed into the gap", Zone::Suboptimal),
        when("wider-than-the-gap", "the largest grain is wider than the gap", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[
        Decision::GraftMaterial,
        Decision::GrainSize,
        Decision::ContourLayer,
        Decision::OffsetFacial,
        Decision::Diameter,
        Decision::Depth,
        Decision::Tilt,
    ],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "The effect of bone particle size on lateral ridge augmentation, trial",
            "0.25 to 1 against 1 to 2 mm: gain 3.7 against 5.1 mm, not significant; vital bone 41 against 31 %.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "teaching on grain size in a gap",
            "At most 1.0 mm in a gap; 1 to 2 mm is an option for bulk.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let graft = j.plan.graft_laid()?;
    j.plan.implant_in_place()?;
    let coarse = graft.grains == c::GrainSize::Large;
    let ratio = j.m.grain_to_gap().map_or(0.0, Ratio::get);
    situation(if comparable(ratio) > 1.0 {
        "wider-than-the-gap"
    } else if !coarse {
        "fits"
    } else if regeneration::contour(j.plan).is_some() {
        "coarse-with-layer"
    } else {
        "coarse"
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::{preserved, repaired};
    use crate::rules::trial::Trial;

    #[test]
    fn coarse_grains_belong_outside_the_wall() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("grain-size", "1.0-2.0")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.keys(&[("grain-size", "1.0-2.0")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }

    #[test]
    fn a_socket_without_an_implant_has_no_gap() {
        let mut trial = preserved();
        trial.keys(&[("grain-size", "1.0-2.0")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn in_a_gap_narrower_than_the_grain_even_small_grains_are_too_wide() {
        let mut trial = Trial::plain();
        trial.number(Decision::OffsetFacial, 5);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
