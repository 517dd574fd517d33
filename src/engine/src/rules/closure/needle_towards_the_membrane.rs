//! Closure and follow-up: pass the needle from the crest outward on each side when a membrane lies below.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "needle-towards-the-membrane",
    ledger: "common-practice",
    family: Family::Closure,
    step: Step::Closure,
    skill: Skill::FollowingUp,
    statement: long!(
        "Pass the needle from the crest outward on each side when a membrane lies below."
    ),
    why: long!(
        "A needle that comes from outside points at the membrane, catches it and drags it out of place."
    ),
    mend: long!(
        "Use a reverse-cutting needle from the crest outward, first facially, then orally."
    ),
    scale: Scale::Situations(&[
        when("outward", "the needle leads away from the membrane", Zone::Ideal),
        when("inward", "the needle leads towards the membrane", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Membrane, Decision::NeedlePath],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::CommonPractice,
        Status::NoSource,
        "suturing over a membrane",
        "From the crest outward on the facial side, then reversed and from the crest outward on the oral side, with a reverse-cutting needle, so that the membrane is not caught or dragged.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    situation(match j.plan.closure.as_ref()?.needle? {
        c::NeedlePath::CrestOutward => "outward",
        c::NeedlePath::OutsideIn => "inward",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::Trial;

    #[test]
    fn outside_in_costs_a_little_over_a_membrane() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("needle-path", "outside-in")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn without_a_membrane_either_path_will_do() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
