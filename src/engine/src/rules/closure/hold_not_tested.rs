//! Test the hold of an implant when it is uncovered.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "hold-not-tested",
    ledger: "common-practice",
    family: Family::Closure,
    step: Step::Uncovering,
    skill: Skill::Stability,
    statement: long!("Test the hold when you uncover the implant."),
    why: long!("An implant that never held is found out now, or under the crown."),
    mend: long!("Turn and tap it before you go on."),
    scale: Scale::Situations(&[
        when("tested", "its hold was tested", Zone::Ideal),
        when("untested", "its hold was not tested", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::HoldTest],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "uncovering",
            "Hold is tested before a crown is made.",
        ),
        says(
            Source::Opinion,
            Status::ConfirmedSecondary,
            "Sennerby 2013, resonance bands",
            "Below 60 low, 60 to 69 medium, 70 and more high; supporting evidence only.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    situation(match j.plan.later.uncovering.as_ref()?.hold {
        c::HoldTest::Tested | c::HoldTest::Resonance => "tested",
        c::HoldTest::Untested => "untested",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn any_test_will_do_and_none_will_not() {
        for (key, zone) in
            [("tested", Zone::Ideal), ("resonance", Zone::Ideal), ("none", Zone::Suboptimal)]
        {
            let mut trial = Trial::plain();
            trial.keys(&[("component", "cover-screw"), ("hold-test", key)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{key}");
        }
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
