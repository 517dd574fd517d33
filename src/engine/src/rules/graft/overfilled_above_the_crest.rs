//! Graft: stop within 1 mm above the crest unless you fill the soft-tissue zone on purpose.

use crate::rules::prelude::*;
use crate::units::comparable;

pub(super) static RULE: Rule = Rule {
    id: "overfilled-above-the-crest",
    ledger: "graft-fill-height",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!(
        "Stop within 1 mm above the crest unless you fill the soft-tissue zone on purpose."
    ),
    why: long!("Grains above the crest lie in gum: they may thicken it or they may be shed."),
    mend: long!("Take graft away down to 1 mm above the crest."),
    scale: Scale::Situations(&[
        when("to-crest", "the graft ends at most 1 mm above the crest", Zone::Ideal),
        when(
            "dual-zone",
            "the graft fills the soft-tissue zone as well, up to the margin",
            Zone::Debated,
        ),
        when(
            "above-margin",
            "the graft stands above the gum margin, where nothing can hold it",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("Fill to the crest and stop."),
        other: long!("Carry the graft on through the soft-tissue zone to support the margin."),
    }),
    reads: &[Decision::GraftMaterial, Decision::FillLevel],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Chu 2012, dual-zone grafting, Compendium",
            "Graft was carried on to the free margin around a provisional (case report, concept).",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "teaching on fill height",
            "Crest or up to 1 mm above.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "upper end",
            "Above the free margin there is no tissue to hold grains.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let fill = comparable(j.plan.graft_laid()?.fill.get());
    let margin = comparable(-j.case.site.soft.margin_z.get());
    situation(if fill <= 1.0 {
        "to-crest"
    } else if fill <= margin {
        "dual-zone"
    } else {
        "above-margin"
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn one_millimetre_above_the_crest_is_the_end_of_what_is_agreed() {
        let mut trial = Trial::plain();
        trial.number(Decision::FillLevel, 9);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.number(Decision::FillLevel, 10);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.number(Decision::FillLevel, 11);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
    }

    #[test]
    fn graft_cannot_stand_above_the_margin_which_lies_3_mm_above_this_crest() {
        let mut trial = Trial::plain();
        trial.number(Decision::FillLevel, 29);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = Trial::plain();
        trial.number(Decision::FillLevel, 30);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = Trial::plain();
        trial.number(Decision::FillLevel, 31);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
