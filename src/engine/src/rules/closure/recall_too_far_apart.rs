//! Recall an implant every 6 to 12 months.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "recall-too-far-apart",
    ledger: "review-schedule",
    family: Family::Closure,
    step: Step::Recall,
    skill: Skill::FollowingUp,
    statement: long!("Recall the patient every 6 to 12 months."),
    why: long!("Disease around an implant is painless until it is far gone."),
    mend: long!("Set the recall at 12 months or less."),
    scale: Scale::Bands(Bands {
        quantity: "time from one recall to the next",
        unit: "months",
        lowest: Zone::Ideal,
        cuts: &[Cut::past(12.0, Zone::Suboptimal)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::RecallEvery],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::CommonPractice,
        Status::FromMemory,
        "review schedule",
        "After the restoration every 6 to 12 months.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    number(f64::from(j.plan.later.recall.as_ref()?.every))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};
    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in
            [(11.999, Zone::Ideal), (12.0, Zone::Ideal), (12.001, Zone::Suboptimal)]
        {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_months_are_read_from_the_plan() {
        let mut trial = Trial::plain();
        for (months, zone) in [(3, Zone::Ideal), (12, Zone::Ideal), (13, Zone::Suboptimal)] {
            trial.number(Decision::RecallEvery, months);
            assert_eq!(trial.zone(&RULE), Some(zone), "{months}");
        }
        trial.course("bridge");
        assert_eq!(trial.zone(&RULE), None);
    }
}
