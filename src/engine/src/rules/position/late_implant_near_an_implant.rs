//! Too little bone between an implant in a healed ridge and a neighbouring implant.

use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-implant-near-an-implant",
    ledger: "pos-inter-implant",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Keep 3 mm of bone between an implant in a healed ridge and a neighbouring implant."
    ),
    why: long!("Each implant takes its share of the crest beside it, whenever it was placed."),
    mend: long!("Choose a narrower implant."),
    scale: super::too_near_an_implant::RULE.scale,
    agreement: Agreement::NumberVaries,
    positions: super::too_near_an_implant::RULE.positions,
    reads: &[Decision::LateDiameter, Decision::LateLength],
    rests_on: &[Fact::NeighbourRoots],
    causes: &[Cause::ImplantTooNearNeighbour, Cause::ImplantTooWide, Cause::ImplantTilted],
    evidence: super::too_near_an_implant::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    number(j.m.late()?.to_implant?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Implanted, Neighbour};
    use crate::geometry::P3;
    use crate::rules::trial::{Trial, zone_at};
    use crate::units::{Deg, Mm};

    #[test]
    fn between_two_and_three_the_sources_differ() {
        for (value, zone) in [
            (1.999, Zone::Compromising),
            (2.0, Zone::Debated),
            (2.001, Zone::Debated),
            (2.999, Zone::Debated),
            (3.0, Zone::Ideal),
            (3.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn it_is_asked_beside_an_implant_only() {
        let mut trial = Trial::late();
        assert_eq!(trial.zone(&RULE), None);
        let beside = |x: f64| {
            Neighbour::Implant(Implanted {
                platform: P3::new(x, 0.0, 1.0),
                diameter: Mm::new(4.0),
                length: Mm::new(12.0),
                tilt: Deg::ZERO,
                tip: Deg::ZERO,
            })
        };
        trial.case.site.neighbours.mesial = beside(-8.0);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.case.site.neighbours.mesial = beside(-5.0);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
