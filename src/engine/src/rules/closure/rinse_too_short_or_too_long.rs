//! Closure and follow-up: rinse for 7 to 14 days.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "rinse-too-short-or-too-long",
    ledger: "antiseptic-hygiene",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!("Rinse for 7 to 14 days."),
    why: long!(
        "Stop earlier and the wound is still open to plaque; go on and you stain teeth instead of brushing them."
    ),
    mend: long!("Prescribe the rinse for about 10 days."),
    scale: Scale::Bands(Bands {
        quantity: "rinsing with chlorhexidine",
        unit: "days",
        lowest: Zone::Suboptimal,
        cuts: &[
            Cut::from(7.0, Zone::Ideal).published(7.0, 10.0),
            Cut::past(14.0, Zone::Suboptimal).published(10.0, 14.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Antiseptic, Decision::AntisepticDays],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "ridge preservation, trial protocol",
            "0.12 % twice a day for 10 days.",
        ),
        says(Source::CommonPractice, Status::FromMemory, "teaching on duration", "7 to 14 days."),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    number(f64::from(j.plan.closure.as_ref()?.antiseptic_days?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (6.999, Zone::Suboptimal),
            (7.0, Zone::Ideal),
            (7.001, Zone::Ideal),
            (13.999, Zone::Ideal),
            (14.0, Zone::Ideal),
            (14.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_days_are_read_from_the_plan() {
        let mut trial = Trial::plain();
        trial.number(Decision::AntisepticDays, 6);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = Trial::plain();
        trial.number(Decision::AntisepticDays, 7);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.number(Decision::AntisepticDays, 14);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.number(Decision::AntisepticDays, 15);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn without_chlorhexidine_there_are_no_days() {
        let mut trial = Trial::plain();
        trial.keys(&[("antiseptic", "none")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
