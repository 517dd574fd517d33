//! A healed ridge that is wide enough by every position gets its implant.

use crate::anatomy::Kind;
use crate::rules::prelude::*;
use crate::units::comparable;

pub(super) static RULE: Rule = Rule {
    id: "held-back-from-a-healed-ridge",
    ledger: "care-both-ways",
    family: Family::Care,
    step: Step::ReEntry,
    skill: Skill::FollowingUp,
    statement: long!("Place where the healed ridge is wide enough by every position."),
    why: long!(
        "Another operation or another waiting room without a reason costs the patient months."
    ),
    mend: long!("Place the implant."),
    scale: Scale::Situations(&[
        when("placed", "an implant goes into a ridge that is wide enough", Zone::Ideal),
        when("waited", "the ridge is wide enough, and it waits longer", Zone::Acceptable),
        when(
            "held-back",
            "the ridge is wide enough, and it was augmented or referred",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::HealedAct],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Ours,
            Status::Ours,
            "width that nobody finds too narrow",
            "4 mm of implant, 2 mm of bone facially and 1 mm orally: 7 mm.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Maximizing esthetics and function with immediate implants, 2016",
            "1 mm of bone all round the implant.",
        ),
    ],
    measure,
};

/// Width 1 mm below the crest that no position finds too narrow, mm: see the evidence.
const WIDE_ENOUGH: f64 = 7.0;

fn measure(j: &Judging<'_>) -> Option<Reading> {
    use c::HealedAct as Of;
    let act = j.plan.later.re_entry.as_ref()?.act;
    let [_, width] = j.m.healed()?.width;
    let front = j.case.site.tooth.kind() != Kind::Molar;
    if !front || comparable(width.get()) < WIDE_ENOUGH {
        return None;
    }
    situation(match act {
        Of::Place | Of::PlaceWithContour => "placed",
        Of::Wait => "waited",
        Of::Augment | Of::Refer => "held-back",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    /// After a week, with the ridge as much wider as its width then asks.
    fn healed(width: f64, act: &str) -> Trial {
        let mut trial = Trial::plain();
        trial.course("let-heal").keys(&[("healed-act", act)]);
        let plan = trial.plan();
        let now = crate::measure::Measurements::of(&trial.case, &plan).healed().unwrap().width[1];
        for knot in &mut trial.case.site.ridge.oral.knots {
            knot.y -= width - now.get();
        }
        trial
    }

    #[test]
    fn seven_millimetres_are_wide_enough_by_every_position() {
        assert_eq!(healed(6.99, "refer").zone(&RULE), None);
        assert_eq!(healed(7.0, "refer").zone(&RULE), Some(Zone::Suboptimal));
        assert_eq!(healed(7.01, "augment").zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn placing_is_ideal_and_waiting_is_no_fault() {
        assert_eq!(healed(7.5, "place").zone(&RULE), Some(Zone::Ideal));
        assert_eq!(healed(7.5, "wait").zone(&RULE), Some(Zone::Acceptable));
    }
}
