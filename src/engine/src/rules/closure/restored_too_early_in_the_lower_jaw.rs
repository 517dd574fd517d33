//! Closure and follow-up: in the lower jaw without a graft, wait two months before you restore.

use crate::anatomy::Jaw;
use crate::rules::prelude::*;
use crate::rules::regeneration::{self, Over};

pub(super) static RULE: Rule = Rule {
    id: "restored-too-early-in-the-lower-jaw",
    ledger: "load-healing-time",
    family: Family::Closure,
    step: Step::Restoration,
    skill: Skill::FollowingUp,
    statement: long!("In the lower jaw without a graft, wait two months before you restore."),
    why: long!(
        "The lower jaw heals sooner than the upper, and you can still lose the implant if you hurry."
    ),
    mend: long!("Restore after 9 weeks or later."),
    scale: Scale::Bands(Bands {
        quantity: "time from placement to restoration in the lower jaw",
        unit: "weeks",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(6.0, Zone::Debated).published(6.0, 9.0),
            Cut::from(9.0, Zone::Ideal).published(9.0, 13.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Wait two months or more."),
        other: long!("Six to eight weeks will do for a stable implant with a rough surface."),
    }),
    reads: &[Decision::GraftMaterial, Decision::RestoreAfter],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "Gallucci 2018, loading protocols, COIR",
            "Conventional loading begins after 2 months.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Linares 2023, review",
            "6 to 8 weeks are accepted for stable rough surfaces.",
        ),
        says(
            Source::Opinion,
            Status::ConfirmedSecondary,
            "Immediate implantation at fresh extraction sockets, original protocol restated",
            "Lower jaw 3 months.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let weeks = j.plan.later.restoration.as_ref()?.after;
    let lower = j.case.site.tooth.jaw() == Jaw::Mandible;
    let plain = regeneration::heals_over(j.case, j.plan) == Over::Bone;
    (lower && plain).then(|| Reading::Number(f64::from(weeks)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::lower;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (5.999, Zone::Compromising),
            (6.0, Zone::Debated),
            (6.001, Zone::Debated),
            (8.999, Zone::Debated),
            (9.0, Zone::Ideal),
            (9.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_weeks_are_read_from_the_plan() {
        let mut trial = lower(Trial::plain());
        trial.number(Decision::RestoreAfter, 5);
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = lower(Trial::plain());
        trial.number(Decision::RestoreAfter, 6);
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = lower(Trial::plain());
        trial.number(Decision::RestoreAfter, 8);
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = lower(Trial::plain());
        trial.number(Decision::RestoreAfter, 9);
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn a_grafted_gap_waits_longer_elsewhere() {
        assert_eq!(lower(Trial::plain()).zone(&RULE), None);
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
