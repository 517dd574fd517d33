//! Membrane: trim the membrane to rounded corners and let it lie passively.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "membrane-wrinkled-or-sharp",
    ledger: "membrane-fit",
    family: Family::Membrane,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: long!("Trim the membrane to rounded corners and let it lie passively."),
    why: long!("Wrinkles leave channels and sharp corners cut through the gum from below."),
    mend: long!(
        "Trim it smaller, round its corners, or reflect further so that it lies without force."
    ),
    scale: Scale::Situations(&[
        when("passive", "the membrane is rounded and lies passively", Zone::Ideal),
        when("as-supplied", "the membrane kept its corners", Zone::Suboptimal),
        when("forced", "the membrane was pressed in oversize and wrinkled", Zone::Suboptimal),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Membrane, Decision::Trim],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::CommonPractice,
        Status::FromMemory,
        "teaching on fit of barriers",
        "Rounded, wrinkle-free, passive; no sharp titanium corners; not wedged in the suture line.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    situation(match j.plan.membrane()?.trim {
        c::Trim::Rounded => "passive",
        c::Trim::AsSupplied => "as-supplied",
        c::Trim::Forced => "forced",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::Trial;

    #[test]
    fn corners_and_wrinkles_cost_a_little() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("trim", "as-supplied")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.keys(&[("trim", "forced")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn without_a_membrane_nothing_is_trimmed() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
