//! An implant that moves, left to carry something.

use super::super::{
    Agreement, Cause, Evidence, Family, Judging, Positions, Reading, Rule, Scale, Situation, Skill,
    Source, Status, Zone,
};
use crate::chart::Fact;
use crate::plan::{
    Decision, Step, {Component, Seating},
};
use crate::units::comparable;

/// Take out an implant that finds no hold, or submerge it; never let it carry anything.
pub(super) static RULE: Rule = Rule {
    id: "loose-implant-left",
    ledger: "iip-stability-gate",
    family: Family::Stability,
    step: Step::Seating,
    skill: Skill::Stability,
    statement: "Take out an implant that finds no hold, or submerge it; never let it carry anything.",
    why: "An implant that moves under your finger moves under the tongue too, and bone does not grow onto what moves.",
    mend: "Remove it and graft, or close the gum over it with a cover screw.",
    scale: Scale::Situations(&[
        Situation { key: "holds", words: "the implant holds in its bed", zone: Zone::Ideal },
        Situation {
            key: "taken-out",
            words: "the implant that found no hold is taken out",
            zone: Zone::Ideal,
        },
        Situation {
            key: "submerged",
            words: "the implant that found no hold is submerged and left in peace",
            zone: Zone::Debated,
        },
        Situation {
            key: "loaded",
            words: "the implant that found no hold stands through the gum",
            zone: Zone::Compromising,
        },
    ]),
    agreement: Agreement::Agreed,
    positions: Some(Positions {
        one: "Remove it, graft and return: most loose implants that are kept are not worth the wait.",
        other: "Submerge it unloaded: most of them integrate.",
    }),
    reads: &[Decision::SeatingAct, Decision::Component],
    rests_on: &[Fact::SeatingTorque],
    causes: &[Cause::NoHold],
    evidence: &[
        Evidence {
            cite: "Tonetti 2019, extraction socket and timing, J Clin Periodontol",
            source: Source::Consensus,
            status: Status::Confirmed,
            says: "Inability to gain stability is among the first considerations against placing.",
        },
        Evidence {
            cite: "Rodrigo 2010, Clin Oral Implants Res, with two later series",
            source: Source::Cohort,
            status: Status::Confirmed,
            says: "Survival was 99.1 % without rotation, 98.1 % with light and 94.1 % with free rotation in 4114 implants; 84.1 % against 96.8 % when mobile; 95.9 % of 97 unstable ones that were submerged.",
        },
        Evidence {
            cite: "Al-Sabbagh 2019, Dent Clin North Am",
            source: Source::Opinion,
            status: Status::Confirmed,
            says: "A spinning implant is corrected once within limits, else removed or submerged, and never given a provisional.",
        },
        Evidence {
            cite: "split-mouth trial, Int J Implant Dent 2019",
            source: Source::Trial,
            status: Status::Confirmed,
            says: "Below 10 Ncm and about 30 Ncm showed no significant difference in human histology.",
        },
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let seating = j.plan.seating.as_ref()?;
    situation(j.m.seating_torque()?.get(), seating)
}

/// Below 10 Ncm an implant is taken to turn and rock. `None` when a firm one is taken out: why that
/// was done is judged elsewhere.
fn situation(torque: f64, seating: &Seating) -> Option<Reading> {
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
}
