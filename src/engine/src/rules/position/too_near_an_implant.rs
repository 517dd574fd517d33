//! Too little bone between two implants.

use crate::rules::prelude::*;
use crate::units::Mm;

/// Keep 3 mm of bone between two implants.
pub(super) static RULE: Rule = Rule {
    id: "too-near-an-implant",
    ledger: "pos-inter-implant",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Keep 3 mm of bone between two implants."),
    why: long!(
        "Each implant takes its share of the crest beside it; set them too close and the shares meet, and the peak between them is gone."
    ),
    mend: long!("Move the implant away, or choose a narrower one."),
    scale: Scale::Bands(Bands {
        quantity: "distance to the neighbouring implant",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[Cut::from(2.0, Zone::Debated), Cut::from(3.0, Zone::Ideal).published(2.0, 3.0)],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("3 mm: below it the crest between two implants lost more than twice as much."),
        other: long!(
            "2 mm with a platform narrower than its body, and animal work saw mostly no difference from 1 to 3 mm."
        ),
    }),
    reads: &[Decision::Diameter, Decision::OffsetDistal, Decision::Tip],
    rests_on: &[Fact::NeighbourRoots],
    causes: &[Cause::ImplantTooNearNeighbour, Cause::ImplantTooWide, Cause::ImplantTilted],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Tarnow, Cho and Wallace 2000, J Periodontol",
            "The crest lost 0.45 mm with more than 3 mm between implants and 1.04 mm with 3 mm or less.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Al Amri 2016, J Prosthet Dent",
            "Animal work found mostly no difference from 1 to 3 mm.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "2 mm beside switched platforms",
            "About 2 mm is often accepted with platform switching.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let sides = [j.m.to_mesial_neighbour(), j.m.to_distal_neighbour()];
    let implants = sides.into_iter().flatten().filter(|it| it.to_implant);
    implants.map(|it| it.distance).reduce(Mm::min).map(|least| Reading::Number(least.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Implanted, Neighbour};
    use crate::geometry::P3;
    use crate::rules::trial::{Trial, zone_at};
    use crate::units::Deg;

    #[test]
    fn between_two_and_three_the_sources_differ() {
        for (value, zone) in [
            (0.0, Zone::Compromising),
            (1.999, Zone::Compromising),
            (2.0, Zone::Debated),
            (2.001, Zone::Debated),
            (2.999, Zone::Debated),
            (3.0, Zone::Ideal),
            (3.001, Zone::Ideal),
            (3.5, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn it_is_asked_beside_an_implant_only() {
        let mut trial = Trial::plain();
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
        trial.case.site.neighbours.mesial = beside(-5.5);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
