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

/// Width 1 mm below the crest, and room between neighbours, that nobody finds too little, mm.
const WIDE_ENOUGH: f64 = 7.0;
/// Outer limit of `platform-too-deep`, mm: at a crest farther below the margin it is passed.
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
    let narrow = |room: Mm| comparable(room.get()) < WIDE_ENOUGH;
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
    use crate::anatomy::{LipLine, Neighbour};
    use crate::measure::Measurements;
    use crate::rules::Known;
    use crate::rules::trial::Trial;

    /// After a week, with the ridge as much wider as its width then asks.
    fn healed(width: f64, act: &str) -> Trial {
        let mut trial = Trial::plain();
        trial.course("let-heal").keys(&[("healed-act", act)]);
        let now = Measurements::of(&trial.case, &trial.plan()).healed().unwrap().width[1];
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
        let (m, known) = (Measurements::of(&waited.case, &plan), Known::of(&waited.case, &plan));
        let judging = Judging { case: &waited.case, plan: &plan, m: &m, known: &known };
        assert_eq!(RULE.zone_of(measure(&judging).unwrap()), Some(Zone::Acceptable));
    }

    #[test]
    fn neighbours_less_than_seven_millimetres_apart_are_not_asked() {
        let trial = healed(7.5, "augment");
        let room = Measurements::of(&trial.case, &trial.plan()).mesiodistal_room().unwrap();
        for (wanted, zone) in [(7.001, Some(Zone::Suboptimal)), (6.999, None)] {
            let mut near = trial.clone();
            let Neighbour::Root(root) = &mut near.case.site.neighbours.distal else { panic!() };
            root.x = root.x - (room - Mm::new(wanted));
            assert_eq!(near.zone(&RULE), zone, "{wanted}");
        }
    }

    #[test]
    fn a_crest_more_than_five_millimetres_below_a_margin_that_shows_is_not_asked() {
        let mut trial = healed(7.5, "augment");
        let crest = Measurements::of(&trial.case, &trial.plan()).healed().unwrap().crest;
        let mut at = |lip, below: f64| {
            trial.case.site.soft.lip = lip;
            trial.case.site.crown.margin_z = crest - Mm::new(below);
            trial.zone(&RULE)
        };
        assert_eq!(at(LipLine::High, 4.999), Some(Zone::Suboptimal));
        assert_eq!(at(LipLine::High, 5.001), None);
        assert_eq!(at(LipLine::Low, 5.001), Some(Zone::Suboptimal));
    }
}
