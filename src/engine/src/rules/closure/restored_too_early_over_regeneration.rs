//! Closure and follow-up: over a regenerated wall, wait at least 16 weeks before you restore.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "restored-too-early-over-regeneration",
    ledger: "load-healing-time",
    family: Family::Closure,
    step: Step::Restoration,
    skill: Skill::FollowingUp,
    statement: long!("Over a regenerated wall, wait at least 16 weeks before you restore."),
    why: long!("A wall that is still soft cannot hold the margin above it."),
    mend: long!("Restore after 16 weeks or later."),
    scale: Scale::Bands(Bands {
        quantity: "time from placement to restoration over a regenerated wall",
        unit: "weeks",
        lowest: Zone::Compromising,
        cuts: &[Cut::from(16.0, Zone::Ideal).published(16.0, 26.0)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::GraftMaterial, Decision::RestoreAfter],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "Assessment of dehydrothermally cross-linked collagen membrane, trial at dehiscences",
            "Re-entry at 16 weeks.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "healing before the final impression",
            "About 4 months with a grafted facial defect.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "teaching on healing over regeneration",
            "4 to 6 months.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let weeks = j.plan.later.restoration.as_ref()?.after;
    let built = j.plan.graft_laid().is_some() || j.plan.later.placement.is_some();
    let regenerated = regeneration::heals_over(j.case, j.plan) == regeneration::Over::Regeneration;
    (built && regenerated).then(|| Reading::Number(f64::from(weeks)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in
            [(15.999, Zone::Compromising), (16.0, Zone::Ideal), (16.001, Zone::Ideal)]
        {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_weeks_are_read_from_the_plan() {
        let mut trial = repaired();
        trial.number(Decision::UncoverAfter, 12).number(Decision::RestoreAfter, 15);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.number(Decision::RestoreAfter, 16);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::RestoreAfter, 60);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn whole_walls_have_a_band_of_their_own() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
