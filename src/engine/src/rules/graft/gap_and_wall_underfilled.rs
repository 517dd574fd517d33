//! Graft: have enough graft for gap, wall and contour once it has been packed.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "gap-and-wall-underfilled",
    ledger: "graft-volume",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Have enough graft for gap, wall and contour once it has been packed."),
    why: long!(
        "What is not filled fills with clot and then with soft tissue, and the contour sinks there."
    ),
    mend: long!("Open more, or plan less contour."),
    scale: Scale::Bands(Bands {
        quantity: "graft after packing, for each cc to be filled",
        unit: "cc",
        lowest: Zone::Suboptimal,
        cuts: &[Cut::from(0.9, Zone::Acceptable), Cut::from(1.0, Zone::Ideal)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[
        Decision::Diameter,
        Decision::Length,
        Decision::Depth,
        Decision::GraftMaterial,
        Decision::GraftAmount,
        Decision::FillLevel,
        Decision::ContourLayer,
    ],
    rests_on: &[Fact::FacialWall],
    causes: &[Cause::Underfilled],
    evidence: &[
        says(
            Source::Anatomy,
            Status::Confirmed,
            "A root volume study of the adult dentition for ridge preservation purposes",
            "0.5 cc fills most sockets; first molars take more.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "teaching on amounts by site",
            "Gap 0.25 to 0.5 cc, single-root socket 0.5 (0.25 to 1.0) cc, molar 1.0 to 1.5 and up to 2.0 cc.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "packing loss",
            "A fifth of the opened volume is lost to packing and handling, and nine tenths of what is needed still counts as acceptable.",
        ),
    ],
    measure,
};

/// Share of the opened volume that is left once it has been packed (our own figure).
const AFTER_PACKING: f64 = 0.8;

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let graft = j.plan.graft_laid()?;
    let needed = j.m.volume_to_graft()?.get();
    (needed > 0.0).then(|| Reading::Number(graft.amount.get() * AFTER_PACKING / needed))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (0.899, Zone::Suboptimal),
            (0.9, Zone::Acceptable),
            (0.901, Zone::Acceptable),
            (0.999, Zone::Acceptable),
            (1.0, Zone::Ideal),
            (1.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn without_a_graft_there_is_no_amount() {
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn a_twentieth_of_a_cc_fills_no_socket_and_half_a_cc_fills_this_gap() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.number(Decision::GraftAmount, 5);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.number(Decision::GraftAmount, 300);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::GraftAmount, 5);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
