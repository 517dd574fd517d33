//! A provisional crown on the day, on too little hold.

use crate::plan::Component;
use crate::rules::prelude::*;

/// Give an implant a provisional crown on the day only at 35 Ncm or more.
pub(super) static RULE: Rule = Rule {
    id: "provisional-on-low-torque",
    ledger: "torque-immediate-restoration",
    family: Family::Stability,
    step: Step::Seating,
    skill: Skill::Stability,
    statement: long!("Give an implant a provisional crown on the day only at 35 Ncm or more."),
    why: long!(
        "A crown is a lever; when you set it on an implant that holds by little, the implants that get lost are these."
    ),
    mend: long!("Take a healing abutment, and let the patient wear a bonded tooth meanwhile."),
    scale: Scale::Bands(Bands {
        quantity: "seating torque under a provisional",
        unit: "Ncm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(25.0, Zone::Suboptimal),
            Cut::from(30.0, Zone::Debated).published(30.0, 35.0),
            Cut::from(35.0, Zone::Ideal).published(30.0, 45.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("30 Ncm is routine for a crown on the day."),
        other: long!("35 Ncm or more; below that a healing abutment."),
    }),
    reads: &[Decision::Component],
    rests_on: &[Fact::SeatingTorque],
    causes: &[Cause::NoHold],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "Ottoni 2005, placement torque and survival, Int J Oral Maxillofac Implants",
            "9 of 10 losses were implants of 20 Ncm; above 32 Ncm a crown on the day was judged safe.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Greenstein and Cavallaro 2017, Compendium",
            "30 Ncm or more is routine; the true minimum is undefined.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Stoilov 2023",
            "25 to 50 Ncm was used as the optimum.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if !matches!(j.plan.component()?, Component::Provisional(_)) {
        return None;
    }
    Some(Reading::Number(j.m.seating_torque()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn thirty_five_allows_it_and_below_twenty_five_it_is_likely_to_fail() {
        for (value, zone) in [
            (20.0, Zone::Compromising),
            (24.999, Zone::Compromising),
            (25.0, Zone::Suboptimal),
            (28.0, Zone::Suboptimal),
            (29.999, Zone::Suboptimal),
            (30.0, Zone::Debated),
            (34.999, Zone::Debated),
            (35.0, Zone::Ideal),
            (35.001, Zone::Ideal),
            (40.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn a_healing_abutment_is_not_asked() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn a_provisional_reads_the_torque_of_the_site() {
        let mut trial = Trial::plain();
        trial.keys(&[("component", "provisional"), ("provisional-contacts", "none")]);
        let Some(Reading::Number(torque)) = trial.reading(&RULE) else { panic!("it applies") };
        assert!(torque > 0.0);
    }
}
