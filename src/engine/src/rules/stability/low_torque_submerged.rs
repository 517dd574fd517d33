//! How little torque a submerged implant may have: contested.

use crate::plan::Component;
use crate::rules::prelude::*;

/// Submerge an implant of low torque only when it does not move sideways.
pub(super) static RULE: Rule = Rule {
    id: "low-torque-submerged",
    ledger: "torque-submerged",
    family: Family::Stability,
    step: Step::Seating,
    skill: Skill::Stability,
    statement: long!("Submerge an implant of low torque only when it does not move sideways."),
    why: long!("Under closed gum you ask little of it, but it still has to lie still for months."),
    mend: long!("Take it out and stage, or leave it submerged and unloaded for the longer time."),
    scale: Scale::Bands(Bands {
        quantity: "seating torque under a cover screw",
        unit: "Ncm",
        lowest: Zone::Debated,
        cuts: &[Cut::from(15.0, Zone::Ideal).published(10.0, 15.0)],
    }),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("Below 10 to 15 Ncm the implant is removed and the site staged."),
        other: long!("Below 10 Ncm it can still integrate when it is submerged and left alone."),
    }),
    reads: &[Decision::SeatingAct, Decision::Component],
    rests_on: &[Fact::SeatingTorque],
    causes: &[Cause::NoHold],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "split-mouth trial, Int J Implant Dent 2019",
            "Below 10 Ncm and about 30 Ncm showed no significant difference in human histology.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "habit of removing below 10 Ncm",
            "Below 10 Ncm many clinicians remove and stage.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.plan.component()? != Component::CoverScrew {
        return None;
    }
    Some(Reading::Number(j.m.seating_torque()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn the_quarrel_ends_at_fifteen() {
        for (value, zone) in [
            (5.0, Zone::Debated),
            (9.999, Zone::Debated),
            (10.0, Zone::Debated),
            (14.999, Zone::Debated),
            (15.0, Zone::Ideal),
            (15.001, Zone::Ideal),
            (40.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn it_is_asked_under_a_cover_screw_only() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn the_model_of_torque_is_read_under_a_cover_screw() {
        let mut trial = Trial::plain();
        trial.keys(&[("component", "cover-screw")]);
        assert!(matches!(trial.reading(&RULE), Some(Reading::Number(torque)) if torque > 0.0));
    }
}
