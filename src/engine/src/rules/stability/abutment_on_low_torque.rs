//! A part that stands through the gum on an implant with little hold.

use crate::plan::Component;
use crate::rules::prelude::*;

/// Put a healing abutment on an implant only at 20 Ncm or more.
pub(super) static RULE: Rule = Rule {
    id: "abutment-on-low-torque",
    ledger: "torque-transmucosal",
    family: Family::Stability,
    step: Step::Seating,
    skill: Skill::Stability,
    statement: long!("Put a healing abutment on an implant only at 20 Ncm or more."),
    why: long!(
        "Whatever stands through the gum is pushed by tongue and food, and an implant with little hold feels every push."
    ),
    mend: long!("Take a cover screw instead."),
    scale: Scale::Bands(Bands {
        quantity: "seating torque under an abutment",
        unit: "Ncm",
        lowest: Zone::Suboptimal,
        cuts: &[
            Cut::from(15.0, Zone::Debated).published(15.0, 25.0),
            Cut::from(20.0, Zone::Acceptable),
            Cut::past(20.0, Zone::Ideal),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("A cover screw up to 20 or 25 Ncm."),
        other: long!("A healing abutment from 15 Ncm, where nothing presses on it."),
    }),
    reads: &[Decision::Component],
    rests_on: &[Fact::SeatingTorque],
    causes: &[Cause::NoHold],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "Ottoni 2005, placement torque and survival, Int J Oral Maxillofac Implants",
            "20 Ncm was the least at entry; 1 of 23 left unrestored was lost, and torque made no significant difference there.",
        ),
        says(Source::CommonPractice, Status::FromMemory, "range of habits", "15 to 25 Ncm."),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if !matches!(j.plan.component()?, Component::HealingAbutment | Component::CustomAbutment) {
        return None;
    }
    Some(Reading::Number(j.m.seating_torque()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn a_cover_screw_is_preferred_under_twenty() {
        for (value, zone) in [
            (14.999, Zone::Suboptimal),
            (15.0, Zone::Debated),
            (15.001, Zone::Debated),
            (19.999, Zone::Debated),
            (20.0, Zone::Acceptable),
            (20.001, Zone::Ideal),
            (33.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn a_cover_screw_is_not_asked() {
        let mut trial = Trial::plain();
        trial.keys(&[("component", "cover-screw")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn an_abutment_reads_the_torque_of_the_site() {
        let mut trial = Trial::plain();
        let torque = |trial: &Trial| match trial.reading(&RULE) {
            Some(Reading::Number(torque)) => torque,
            other => panic!("{other:?}"),
        };
        let ordinary = torque(&trial);
        trial.case.site.density.hu = 300.0;
        trial.case.site.density.class = crate::anatomy::DensityClass::D4;
        assert!(torque(&trial) < ordinary);
    }
}
