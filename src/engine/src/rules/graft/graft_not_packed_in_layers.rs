//! Graft: lay the graft in layers and press gently.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "graft-not-packed-in-layers",
    ledger: "graft-hydration-compaction",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Lay the graft in layers and press gently."),
    why: long!(
        "Crushed grains leave no room for vessels, and a load tipped in at once leaves voids."
    ),
    mend: long!("Pack layer by layer with light pressure."),
    scale: Scale::Situations(&[
        when("layers", "the graft was laid in layers, gently", Zone::Ideal),
        when("crushed", "the graft was crushed in hard", Zone::Suboptimal),
        when("loose", "the graft was tipped in at one go", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::GraftMaterial, Decision::Packing],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::CommonPractice,
        Status::FromMemory,
        "teaching on packing",
        "Layers, gentle pressure, no crushing.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    situation(match j.plan.graft_laid()?.packing {
        c::Packing::InLayers => "layers",
        c::Packing::Crushed => "crushed",
        c::Packing::Loose => "loose",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn crushing_and_tipping_both_cost_a_little() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("packing", "crushed")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = Trial::plain();
        trial.keys(&[("packing", "loose")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn without_a_graft_nothing_is_packed() {
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
