//! Examine what tells early at each recall.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "recall-without-a-look",
    ledger: "common-practice",
    family: Family::Closure,
    step: Step::Recall,
    skill: Skill::FollowingUp,
    statement: long!("At recall look at plaque, depths, the crest on a film, and the contacts."),
    why: long!("A recall that looks at nothing finds nothing."),
    mend: long!("Add what is missing to the recall."),
    scale: Scale::Bands(Bands {
        quantity: "left out of the recall",
        unit: "examinations",
        lowest: Zone::Ideal,
        cuts: &[Cut::from(1.0, Zone::Acceptable), Cut::from(2.0, Zone::Suboptimal)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::RecallExam],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "recall of implants",
            "Plaque and bleeding, probing against a baseline, a film of the crest, contacts and screw.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "how many may be missing",
            "One is acceptable, two are not.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let exam = j.plan.later.recall.as_ref()?.exam;
    number(f64::from(4 - exam.count().min(4)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};
    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (0.999, Zone::Ideal),
            (1.0, Zone::Acceptable),
            (1.001, Zone::Acceptable),
            (1.999, Zone::Acceptable),
            (2.0, Zone::Suboptimal),
            (2.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn one_may_be_missing_and_two_may_not() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("recall-exam", "plaque probing film")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        trial.keys(&[("recall-exam", "plaque probing")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
