//! Closure and follow-up: suture with monofilament.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "suture-that-wicks",
    ledger: "suture-choice-removal",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!("Suture with monofilament."),
    why: long!("A braid draws saliva and bacteria along itself into the wound."),
    mend: long!("Take a monofilament thread."),
    scale: Scale::Situations(&[
        when("monofilament", "the thread is a monofilament", Zone::Ideal),
        when("braided", "the thread is braided and wicks", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::SutureMaterial],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::Textbook,
        Status::FromMemory,
        "teaching on thread material",
        "Fine monofilament that does not wick.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let braided = j.plan.closure.as_ref()?.material == c::SutureMaterial::Braided;
    situation(if braided { "braided" } else { "monofilament" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_braid_costs_a_little() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("suture-material", "braided")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
