//! An implant that had little hold, restored before it had time.

use crate::rules::prelude::*;
use crate::units::comparable;

/// Give an implant that was submerged at low torque at least three months before it carries a crown.
pub(super) static RULE: Rule = Rule {
    id: "low-torque-restored-early",
    ledger: "stability-rescue-data",
    family: Family::Stability,
    step: Step::Restoration,
    skill: Skill::Stability,
    statement: long!(
        "Give an implant that was submerged at low torque at least three months before it carries a crown."
    ),
    why: long!("It began with next to no hold, so everything that will hold it has to grow first."),
    mend: long!("Restore three to four months after placement, and test the stability first."),
    scale: Scale::Bands(Bands {
        quantity: "time from placement to restoration after low torque",
        unit: "weeks",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(12.0, Zone::Acceptable).published(12.0, 16.0),
            Cut::from(16.0, Zone::Ideal),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Three months suffice for a submerged implant."),
        other: long!("Four months and more after a start without hold."),
    }),
    reads: &[Decision::Component, Decision::LateComponent, Decision::RestoreAfter],
    rests_on: &[Fact::SeatingTorque],
    causes: &[Cause::NoHold],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Rodrigo 2010, Clin Oral Implants Res, with two later series",
            "Submerged and unloaded, 95.9 % of 97 implants without stability survived, and mobile ones in another series 84.1 % against 96.8 % at 3 years.",
        ),
        says(
            Source::Trial,
            Status::Confirmed,
            "split-mouth trial, Int J Implant Dent 2019",
            "Below 10 Ncm, submerged, bone formed as at about 30 Ncm.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "months under a cover screw",
            "3 to 4 months or longer under a cover screw.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let weeks = j.plan.later.restoration.as_ref()?.after;
    let torque = match j.plan.later.placement {
        Some(_) => j.m.late_torque()?,
        None => j.plan.implant_in_place().and(j.m.seating_torque())?,
    };
    let low = comparable(torque.get()) < 15.0;
    low.then(|| Reading::Number(f64::from(weeks)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn three_months_are_the_least_and_four_are_ideal() {
        for (value, zone) in [
            (11.0, Zone::Compromising),
            (11.999, Zone::Compromising),
            (12.0, Zone::Acceptable),
            (15.999, Zone::Acceptable),
            (16.0, Zone::Ideal),
            (17.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn it_is_asked_after_low_torque_only() {
        for mut trial in [Trial::plain(), Trial::late()] {
            assert_eq!(trial.zone(&RULE), None);
            trial.case.site.density.hu = 120.0;
            assert_eq!(trial.reading(&RULE), Some(Reading::Number(16.0)));
        }
    }
}
