//! Graft: fill up to the crest.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "filled-short-of-the-crest",
    ledger: "graft-fill-height",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Fill up to the crest."),
    why: long!(
        "You cannot expect bone above the graft, so where you stop is about where the new crest will stand."
    ),
    mend: long!("Fill to the level of the crest."),
    scale: Scale::Bands(Bands {
        quantity: "shortfall of graft below the crest",
        unit: "mm",
        lowest: Zone::Ideal,
        cuts: &[
            Cut::past(0.0, Zone::Acceptable).published(0.0, 1.0),
            Cut::past(1.0, Zone::Debated).published(1.0, 2.0),
            Cut::past(2.0, Zone::Suboptimal).published(1.0, 2.0),
        ],
    }),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("More than 1 mm short of the crest is a fault."),
        other: long!("Only more than 2 mm short is a fault."),
    }),
    reads: &[Decision::GraftMaterial, Decision::FillLevel],
    rests_on: &[],
    causes: &[Cause::Underfilled],
    evidence: &[says(
        Source::CommonPractice,
        Status::FromMemory,
        "teaching on fill height",
        "Fill to the crest or up to 1 mm above; more than 1 to 2 mm short is a fault.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let fill = j.plan.graft_laid()?.fill.get();
    number(if fill < 0.0 { -fill } else { 0.0 })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (-0.001, Zone::Ideal),
            (0.0, Zone::Ideal),
            (0.001, Zone::Acceptable),
            (0.999, Zone::Acceptable),
            (1.0, Zone::Acceptable),
            (1.001, Zone::Debated),
            (1.999, Zone::Debated),
            (2.0, Zone::Debated),
            (2.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_shortfall_is_read_from_the_plan() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.number(Decision::FillLevel, -10);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = Trial::plain();
        trial.number(Decision::FillLevel, -11);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = Trial::plain();
        trial.number(Decision::FillLevel, -20);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = Trial::plain();
        trial.number(Decision::FillLevel, -21);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn above_the_crest_nothing_is_short() {
        let mut trial = Trial::plain();
        trial.number(Decision::FillLevel, 30);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
