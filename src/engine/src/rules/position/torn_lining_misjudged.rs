//! A torn lining of the sinus, answered by its size.

use crate::events::{Tear, torn_lining};
use crate::plan::choices::LiningRescue;
use crate::rules::prelude::*;

/// Patch a small tear of the sinus lining, suture and patch a middling one, stop at a large one.
pub(super) static RULE: Rule = Rule {
    id: "torn-lining-misjudged",
    ledger: "rescue-sinus-perforation",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Patch a small tear of the sinus lining, suture and patch a middling one, stop at a large one."
    ),
    why: long!(
        "The lining keeps graft and germs apart; what a patch holds in a small tear falls through a large one."
    ),
    mend: long!("Look at the size of the tear, and choose the repair that closes it."),
    scale: Scale::Situations(&[
        when("as-its-size-asks", "the tear is treated as its size asks", Zone::Ideal),
        when(
            "more-than-asked",
            "the tear is treated more carefully than its size asks",
            Zone::Acceptable,
        ),
        when("less-than-asked", "a patch alone lies on a tear of 5 to 10 mm", Zone::Suboptimal),
        when(
            "large-not-stopped",
            "the operation goes on over a tear of more than 10 mm",
            Zone::Compromising,
        ),
        when("left", "the tear is left as it is", Zone::Compromising),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::TornLining],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "management of perforations in sinus floor augmentation, 2021",
            "Under 5 mm a patch, 5 to 10 mm suture and patch, beyond 10 mm stop or refer; implants lost in 2.9, 8.1 and about 25 % in one series, 2.3, 2.7 and 4.7 % in another.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Krennmair 2021, CIDRR",
            "Tears are told apart at 10 mm.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let answer = j.plan.rescue.lining?;
    answered(torn_lining(j.m)?, answer)
}

fn answered(tear: Tear, answer: LiningRescue) -> Option<Reading> {
    use LiningRescue::{CarryOn, Patch, Stop, SutureAndPatch};
    situation(match (tear, answer) {
        (Tear::Small, Patch) | (Tear::Middling, SutureAndPatch) | (Tear::Large, Stop) => {
            "as-its-size-asks"
        }
        (Tear::Small, SutureAndPatch) | (Tear::Small | Tear::Middling, Stop) => "more-than-asked",
        (Tear::Middling, Patch) => "less-than-asked",
        (Tear::Large, Patch | SutureAndPatch) => "large-not-stopped",
        (_, CarryOn) => "left",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Floor, FloorKind};
    use crate::chart::Case;
    use crate::measure::Measurements;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn each_size_has_its_repair() {
        use LiningRescue::{CarryOn, Patch, Stop, SutureAndPatch};
        let zones = |tear| {
            [Patch, SutureAndPatch, Stop, CarryOn]
                .map(|answer| RULE.zone_of(answered(tear, answer).unwrap()).unwrap())
        };
        let (ideal, fair, poor, bad) =
            (Zone::Ideal, Zone::Acceptable, Zone::Suboptimal, Zone::Compromising);
        assert_eq!(zones(Tear::Small), [ideal, fair, fair, bad]);
        assert_eq!(zones(Tear::Middling), [poor, ideal, fair, bad]);
        assert_eq!(zones(Tear::Large), [bad, bad, ideal, bad]);
    }

    #[test]
    fn only_a_drill_past_the_floor_brings_it_up() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        let z = Mm::new(8.0);
        trial.case.site.vital.floor = Some(Floor { kind: FloorKind::Sinus, z, rise: 0.0 });
        let plan = trial.plan();
        let torn = |case: &Case| torn_lining(&Measurements::of(case, &plan)) == Some(Tear::Small);
        let mut cases = (0..1000).map(|n| Case { title: n.to_string(), ..trial.case.clone() });
        trial.case = cases.find(torn).unwrap();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("torn-lining", "carry-on")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
