//! Closure and follow-up: let an implant with a grafted gap, or any in the upper jaw, heal for three months.

use crate::anatomy::Jaw;
use crate::rules::prelude::*;
use crate::rules::regeneration::{self, Over};

pub(super) static RULE: Rule = Rule {
    id: "restored-too-early",
    ledger: "load-healing-time",
    family: Family::Closure,
    step: Step::Restoration,
    skill: Skill::FollowingUp,
    statement: long!(
        "Let an implant with a grafted gap, or any in the upper jaw, heal for three months."
    ),
    why: long!(
        "Load it while the bone is still turning over and you trade its hold for a few weeks."
    ),
    mend: long!("Restore after 13 weeks or later."),
    scale: Scale::Bands(Bands {
        quantity: "time from placement to restoration",
        unit: "weeks",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(6.0, Zone::Debated).published(6.0, 12.0),
            Cut::from(12.0, Zone::Acceptable).published(12.0, 17.0),
            Cut::from(13.0, Zone::Ideal).published(13.0, 26.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Wait three months or more."),
        other: long!("Six to eight weeks will do for a stable implant with a rough surface."),
    }),
    reads: &[Decision::GraftMaterial, Decision::RestoreAfter],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Immediate temporization of immediate implants in the esthetic zone, 30 implants",
            "Implants with grafted gaps were ready at 12 weeks.",
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
            "Upper jaw 6 months, lower jaw 3 months.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "teaching on healing with a grafted gap",
            "3 to 4 months.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let weeks = j.plan.later.restoration.as_ref()?.after;
    let upper = j.case.site.tooth.jaw() == Jaw::Maxilla;
    let asked = match regeneration::heals_over(j.case, j.plan) {
        Over::Regeneration => false,
        Over::Graft => true,
        Over::Bone => upper,
    };
    asked.then(|| Reading::Number(f64::from(weeks)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::{lower, repaired};
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (5.999, Zone::Compromising),
            (6.0, Zone::Debated),
            (6.001, Zone::Debated),
            (11.999, Zone::Debated),
            (12.0, Zone::Acceptable),
            (12.001, Zone::Acceptable),
            (12.999, Zone::Acceptable),
            (13.0, Zone::Ideal),
            (13.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_weeks_are_read_from_the_plan_and_long_waits_are_never_a_fault() {
        let mut trial = Trial::plain();
        trial.number(Decision::RestoreAfter, 5);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = Trial::plain();
        trial.number(Decision::RestoreAfter, 6);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = Trial::plain();
        trial.number(Decision::RestoreAfter, 12);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = Trial::plain();
        trial.number(Decision::RestoreAfter, 13);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.number(Decision::RestoreAfter, 60);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn a_regenerated_wall_and_an_ungrafted_lower_jaw_have_bands_of_their_own() {
        assert_eq!(repaired().zone(&RULE), None);
        let mut trial = lower(Trial::plain());
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
