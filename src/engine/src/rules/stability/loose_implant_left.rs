//! An implant that moves, left to carry something.

use crate::plan::{Component, Seating};
use crate::rules::prelude::*;
use crate::units::comparable;

/// Take out an implant that finds no hold, or submerge it; never let it carry anything.
pub(super) static RULE: Rule = Rule {
    id: "loose-implant-left",
    ledger: "iip-stability-gate",
    family: Family::Stability,
    step: Step::Seating,
    skill: Skill::Stability,
    statement: long!(
        "Take out an implant that finds no hold, or submerge it; never let it carry anything."
    ),
    why: long!(
        "An implant that moves under your finger moves under the tongue too, and bone does not grow onto what moves."
    ),
    mend: long!("Remove it and graft, or close the gum over it with a cover screw."),
    scale: Scale::Situations(&[
        when("holds", "the implant holds in its bed", Zone::Ideal),
        when("taken-out", "the implant that found no hold is taken out", Zone::Ideal),
        when(
            "submerged",
            "the implant that found no hold is submerged and left unloaded",
            Zone::Debated,
        ),
        when("loaded", "the implant that found no hold stands through the gum", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: Some(Positions {
        one: long!("Remove it, graft and return, as many clinicians do below 10 Ncm."),
        other: long!("Submerge it unloaded: in the series most of them survived."),
    }),
    reads: &[Decision::SeatingAct, Decision::SecondAct, Decision::Component],
    rests_on: &[Fact::SeatingTorque],
    causes: &[Cause::NoHold],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "Tonetti 2019, extraction socket and timing, J Clin Periodontol",
            "Inability to gain stability is among the first considerations against placing.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Rodrigo 2010, Clin Oral Implants Res, with two later series",
            "Survival was 99.1 % without rotation, 98.1 % with light and 94.1 % with free rotation in 4114 implants; 84.1 % against 96.8 % when mobile; 95.9 % of 97 unstable ones that were submerged.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Al-Sabbagh 2019, Dent Clin North Am",
            "A spinning implant is corrected once within limits, else removed or submerged, and never given a provisional.",
        ),
        says(
            Source::Trial,
            Status::Confirmed,
            "split-mouth trial, Int J Implant Dent 2019",
            "Below 10 Ncm and about 30 Ncm showed no significant difference in human histology.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let seating = j.plan.seating.as_ref()?;
    situation(j.m.seating_torque()?.get(), seating)
}

/// Below 10 Ncm an implant is taken to turn and rock. `None` when a firm one is taken out: why that
/// was done is judged elsewhere.
pub(super) fn situation(torque: f64, seating: &Seating) -> Option<Reading> {
    let loose = comparable(torque) < 10.0;
    Some(Reading::Situation(match (loose, seating) {
        (false, Seating::Stays(_)) => "holds",
        (false, _) => return None,
        (true, Seating::Stays(Component::CoverScrew)) => "submerged",
        (true, Seating::Stays(_)) => "loaded",
        (true, Seating::RemovedForGraft | Seating::RemovedToHeal) => "taken-out",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn under_ten_newton_centimetres_it_has_no_hold() {
        let stays = Seating::Stays(Component::HealingAbutment);
        assert_eq!(situation(9.999, &stays), Some(Reading::Situation("loaded")));
        assert_eq!(situation(10.0, &stays), Some(Reading::Situation("holds")));
        assert_eq!(situation(10.001, &stays), Some(Reading::Situation("holds")));
    }

    #[test]
    fn removing_or_submerging_a_loose_implant_answers_it() {
        let zone = |seating| RULE.zone_of(situation(4.0, &seating).unwrap());
        assert_eq!(zone(Seating::RemovedForGraft), Some(Zone::Ideal));
        assert_eq!(zone(Seating::RemovedToHeal), Some(Zone::Ideal));
        assert_eq!(zone(Seating::Stays(Component::CoverScrew)), Some(Zone::Debated));
        assert_eq!(zone(Seating::Stays(Component::CustomAbutment)), Some(Zone::Compromising));
    }

    #[test]
    fn the_torque_that_was_shown_decides() {
        let trial = Trial::plain();
        assert_eq!(trial.reading(&RULE), Some(Reading::Situation("holds")));
    }
}
