//! A gap of more than 2 mm that is left to the clot.

use crate::rules::prelude::*;
use crate::units::comparable;

/// Fill a facial gap of more than 2 mm with graft where the margin shows.
pub(super) static RULE: Rule = Rule {
    id: "wide-gap-left-empty",
    ledger: "gap-over-2-graft",
    family: Family::Gap,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Fill a facial gap of more than 2 mm with graft where the margin shows."),
    why: long!(
        "You lose less width and less margin when a wide gap is filled; an empty one sinks in where everybody can see it."
    ),
    mend: long!("Fill the gap with particulate before you close."),
    scale: Scale::Situations(&[
        when("filled", "the gap of more than 2 mm is filled with graft", Zone::Ideal),
        when(
            "empty-hidden",
            "the gap of more than 2 mm is left empty where the margin stays hidden",
            Zone::Acceptable,
        ),
        when(
            "empty-showing",
            "the gap of more than 2 mm is left empty where the margin shows",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: Some(Positions {
        one: long!("Graft every gap of more than 2 mm in a site that shows."),
        other: long!("A single human specimen healed a gap of 4.2 mm without graft."),
    }),
    reads: &[
        Decision::OffsetFacial,
        Decision::Diameter,
        Decision::Depth,
        Decision::Tilt,
        Decision::GraftMaterial,
    ],
    rests_on: &[Fact::FacialWall, Fact::SmileLine],
    causes: &[Cause::Underfilled],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "7th consensus conference, group 5, 2023",
            "A gap of more than 2 mm together with graft is linked with better results.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Seyssens 2022, socket grafting, Clin Implant Dent Relat Res",
            "Grafting the gap saved 0.59 mm (0.41 to 0.78) of width and 0.58 mm (0.28 to 0.88) of margin in 15 trials of 604 implants.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Greenstein and Cavallaro 2013",
            "A gap of more than 2 mm is to be grafted.",
        ),
        says(
            Source::Cohort,
            Status::FromMemory,
            "Tarnow and Chu 2011, human histology, Int J Periodontics Restorative Dent",
            "One ungrafted gap of 4.2 mm healed with bone.",
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
    situation(gap.width.get(), step.graft.is_some(), j.case.site.is_aesthetic())
}

/// `None` for a gap that is not wide: another rule judges it.
fn situation(width: f64, grafted: bool, shows: bool) -> Option<Reading> {
    let key = match (grafted, shows) {
        (true, _) => "filled",
        (false, true) => "empty-showing",
        (false, false) => "empty-hidden",
    };
    (comparable(width) > 2.0).then_some(Reading::Situation(key))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn it_begins_past_two_millimetres() {
        assert_eq!(situation(1.999, false, true), None);
        assert_eq!(situation(2.0, false, true), None);
        assert_eq!(situation(2.001, false, true), Some(Reading::Situation("empty-showing")));
        assert_eq!(situation(2.5, true, true), Some(Reading::Situation("filled")));
        assert_eq!(situation(2.5, false, false), Some(Reading::Situation("empty-hidden")));
    }

    #[test]
    fn an_empty_wide_gap_costs_only_where_it_shows() {
        let mut trial = Trial::plain();
        trial.number(Decision::OffsetFacial, -18);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.case.site.soft.lip = crate::anatomy::LipLine::Low;
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }
}
