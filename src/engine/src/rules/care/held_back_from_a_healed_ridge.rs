//! A healed ridge that is wide enough by every position gets its implant.

use crate::anatomy::Kind;
use crate::rules::prelude::*;
use crate::units::{Mm, comparable};

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
    reads: &[Decision::HealedAct, Decision::AgainAct, Decision::LastAct],
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
            Source::Ours,
            Status::Ours,
            "room between neighbours that nobody finds too little",
            "4 mm of implant and 1.5 mm to the root on either side: 7 mm.",
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
/// Room between the neighbours that nobody finds too little, mm: see the evidence.
const LONG_ENOUGH: f64 = 7.0;
/// Depth of a crest below the planned margin past which a platform at it is too deep, mm: the outer limit
/// of `platform-too-deep`.
const HIGH_ENOUGH: f64 = 5.0;

fn measure(j: &Judging<'_>) -> Option<Reading> {
    use c::HealedAct as Of;
    let act = j.plan.later.found()?.act;
    let healed = j.m.healed()?;
    let front = j.case.site.tooth.kind() != Kind::Molar;
    if !front || comparable(healed.width[1].get()) < WIDE_ENOUGH {
        return None;
    }
    // Beside neighbours that are close, width alone is no room.
    let narrow = |room: Mm| comparable(room.get()) < LONG_ENOUGH;
    if j.m.mesiodistal_room().is_some_and(narrow) {
        return None;
    }
    // A platform level with this crest would lie deeper below the margin than anybody seats one.
    let low = comparable((healed.crest - j.case.site.crown.margin_z).get()) > HIGH_ENOUGH;
    if low && j.case.site.is_aesthetic() {
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
        // Wider by what a further wait takes.
        let mut waited = healed(8.0, "wait");
        waited.keys(&[("healed-act-again", "place")]);
        assert_eq!(waited.zone(&RULE), Some(Zone::Ideal));
        let mut plan = waited.plan();
        plan.later.re_entry_again = None;
        let m = crate::measure::Measurements::of(&waited.case, &plan);
        let known = crate::rules::Known::of(&waited.case, &plan);
        let judging = Judging { case: &waited.case, plan: &plan, m: &m, known: &known };
        assert_eq!(RULE.zone_of(measure(&judging).unwrap()), Some(Zone::Acceptable));
    }

    #[test]
    fn neighbours_less_than_seven_millimetres_apart_are_not_asked() {
        let mut trial = healed(7.5, "augment");
        let plan = trial.plan();
        let m = crate::measure::Measurements::of(&trial.case, &plan);
        let room = m.mesiodistal_room().unwrap().get();
        let crate::anatomy::Neighbour::Root(distal) = trial.case.site.neighbours.distal.clone()
        else {
            panic!("a root");
        };
        let at = |trial: &mut Trial, wanted: f64| {
            let x = distal.x - Mm::new(room - wanted);
            let root = crate::anatomy::RootBody { x, ..distal };
            trial.case.site.neighbours.distal = crate::anatomy::Neighbour::Root(root);
            trial.zone(&RULE)
        };
        assert_eq!(at(&mut trial, 7.001), Some(Zone::Suboptimal));
        assert_eq!(at(&mut trial, 6.999), None);
    }

    #[test]
    fn a_crest_more_than_five_millimetres_below_a_margin_that_shows_is_not_asked() {
        let mut trial = healed(7.5, "augment");
        let plan = trial.plan();
        let crest = crate::measure::Measurements::of(&trial.case, &plan).healed().unwrap().crest;
        let at = |trial: &mut Trial, below: f64| {
            trial.case.site.crown.margin_z = crest - crate::units::Mm::new(below);
            trial.zone(&RULE)
        };
        assert_eq!(at(&mut trial, 4.999), Some(Zone::Suboptimal));
        assert_eq!(at(&mut trial, 5.0), Some(Zone::Suboptimal));
        assert_eq!(at(&mut trial, 5.001), None);
        trial.case.site.soft.lip = crate::anatomy::LipLine::Low;
        assert_eq!(at(&mut trial, 5.001), Some(Zone::Suboptimal));
    }
}
