//! Too little bone between the implant and a neighbouring root.

use crate::rules::prelude::*;
use crate::units::Mm;

/// Keep 1.5 mm of bone between implant and neighbouring root along the whole length.
pub(super) static RULE: Rule = Rule {
    id: "too-near-a-root",
    ledger: "pos-adjacent-tooth",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Keep 1.5 mm of bone between implant and neighbouring root along the whole length."
    ),
    why: long!(
        "The bone between is shared: thin it and both papilla and neighbour lose; touch the root and you have harmed a tooth that was well."
    ),
    mend: long!("Move or tip the implant away from the root, or choose a narrower one."),
    scale: Scale::Bands(Bands {
        quantity: "distance to the nearer root",
        unit: "mm",
        lowest: Zone::Unsafe,
        cuts: &[
            Cut::past(0.0, Zone::Compromising),
            Cut::from(1.5, Zone::Acceptable),
            Cut::from(2.0, Zone::Ideal),
        ],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Diameter, Decision::OffsetDistal, Decision::Tip, Decision::Length],
    rests_on: &[Fact::NeighbourRoots],
    causes: &[Cause::ImplantTooNearNeighbour, Cause::ImplantTooWide, Cause::ImplantTilted],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Maximizing esthetics and function with immediate implants, 2016",
            "1.5 mm or more stay between implant and tooth, at platform and apex.",
        ),
        says(
            Source::Cohort,
            Status::FromMemory,
            "Esposito 1993",
            "Bone beside the neighbour was lost more the nearer the implant stood.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "narrow implants in tight sites",
            "1.0 mm is tolerated for narrow implants in tight sites only.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let sides = [j.m.to_mesial_neighbour(), j.m.to_distal_neighbour()];
    let roots = sides.into_iter().flatten().filter(|it| !it.to_implant);
    roots.map(|it| it.distance).reduce(Mm::min).map(|least| Reading::Number(least.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn contact_is_unsafe_and_one_and_a_half_suffices() {
        for (value, zone) in [
            (-0.5, Zone::Unsafe),
            (0.0, Zone::Unsafe),
            (0.001, Zone::Compromising),
            (1.0, Zone::Compromising),
            (1.499, Zone::Compromising),
            (1.5, Zone::Acceptable),
            (1.501, Zone::Acceptable),
            (1.999, Zone::Acceptable),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn an_implant_pushed_into_the_neighbour_is_unsafe() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::OffsetDistal, 40);
        assert_eq!(trial.zone(&RULE), Some(Zone::Unsafe));
    }

    #[test]
    fn tipping_the_apex_towards_the_neighbour_brings_it_nearer() {
        let mut trial = Trial::plain();
        let distance = |trial: &Trial| match trial.reading(&RULE) {
            Some(Reading::Number(distance)) => distance,
            other => panic!("{other:?}"),
        };
        let upright = distance(&trial);
        trial.number(Decision::Tip, 12);
        assert!(distance(&trial) < upright);
    }
}
