//! A gap of 2 mm or less that is left to the clot: contested, except beside a thin plate that shows.

use crate::rules::prelude::*;
use crate::units::comparable;

/// Fill even a gap of 2 mm or less where the plate is thin and the margin shows.
pub(super) static RULE: Rule = Rule {
    id: "narrow-gap-left-empty",
    ledger: "gap-2-or-less",
    family: Family::Gap,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!(
        "Fill even a gap of 2 mm or less where the plate is thin and the margin shows."
    ),
    why: long!(
        "A narrow gap mostly fills on its own, but a thin plate leaves, and the contour with it, unless you put something slow behind it."
    ),
    mend: long!("Lay graft into the gap for the sake of the contour."),
    scale: Scale::Situations(&[
        when("filled", "the narrow gap is filled with graft", Zone::Ideal),
        when(
            "empty-hidden",
            "the narrow gap is left empty beside a plate of more than 1 mm where the margin stays hidden",
            Zone::Acceptable,
        ),
        when("empty", "the narrow gap is left empty", Zone::Debated),
        when(
            "empty-thin-showing",
            "the narrow gap is left empty beside a plate of 1 mm or less where the margin shows",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("A gap of 2 mm or less with intact walls fills unaided; graft is not needed."),
        other: long!(
            "Graft saves width and margin on average, so fill every gap in a site that shows."
        ),
    }),
    reads: &[
        Decision::OffsetFacial,
        Decision::Diameter,
        Decision::Depth,
        Decision::Tilt,
        Decision::GraftMaterial,
    ],
    rests_on: &[Fact::FacialWall, Fact::FacialThickness, Fact::SmileLine],
    causes: &[Cause::Underfilled],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Seyssens 2022, socket grafting, Clin Implant Dent Relat Res",
            "Grafting the gap saved 0.59 mm of width and 0.58 mm of margin on average.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Maximizing esthetics and function with immediate implants, 2016",
            "Below 2 mm no graft, above 2 mm graft.",
        ),
        says(
            Source::Cohort,
            Status::FromMemory,
            "Paolantonio 2001, J Periodontol",
            "Tight gaps without filler healed with bone in human specimens.",
        ),
        says(
            Source::Trial,
            Status::Confirmed,
            "Ferrus 2010, ridge alterations, Clin Oral Implants Res",
            "Thick plates and larger gaps filled better, with strata at 1 mm for both, in 93 ungrafted sites.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let step = j.plan.graft.as_ref()?;
    let gap = j.m.facial_gap()?;
    if !gap.wall_present {
        return None;
    }
    let thin = comparable(j.m.facial_plate()?.get()) <= 1.0;
    situation(gap.width.get(), step.graft.is_some(), thin, j.case.site.is_aesthetic())
}

/// `None` where there is no gap, or a wide one: other rules judge those.
fn situation(width: f64, grafted: bool, thin: bool, shows: bool) -> Option<Reading> {
    let width = comparable(width);
    let key = match (grafted, thin, shows) {
        (true, _, _) => "filled",
        (false, true, true) => "empty-thin-showing",
        (false, false, false) => "empty-hidden",
        (false, _, _) => "empty",
    };
    (0.0 < width && width <= 2.0).then_some(Reading::Situation(key))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn it_ends_at_two_millimetres_and_at_contact() {
        assert_eq!(situation(0.0, false, false, true), None);
        assert_eq!(situation(0.001, false, false, true), Some(Reading::Situation("empty")));
        assert_eq!(situation(2.0, false, false, true), Some(Reading::Situation("empty")));
        assert_eq!(situation(2.001, false, false, true), None);
    }

    #[test]
    fn only_a_thin_plate_that_shows_makes_an_empty_gap_a_fault() {
        let zone = |thin, shows| RULE.zone_of(situation(1.2, false, thin, shows).unwrap());
        assert_eq!(zone(true, true), Some(Zone::Suboptimal));
        assert_eq!(zone(true, false), Some(Zone::Debated));
        assert_eq!(zone(false, true), Some(Zone::Debated));
        assert_eq!(zone(false, false), Some(Zone::Acceptable));
    }

    #[test]
    fn a_gap_of_one_and_a_half_beside_a_whole_wall_is_read_as_narrow() {
        let mut trial = Trial::plain();
        trial.number(Decision::OffsetFacial, -6).keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
    }
}
