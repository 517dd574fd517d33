//! Membrane: seat the membrane over the missing wall first, and pack from inside it.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "graft-packed-before-membrane",
    ledger: "common-practice",
    family: Family::Membrane,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: long!("Seat the membrane over the missing wall first, and pack from inside it."),
    why: long!(
        "Pack first and grains spill under the flap and past the defect, where nothing holds them."
    ),
    mend: long!("Trim and seat the membrane, pack the graft from inside, then fold and fix."),
    scale: Scale::Situations(&[
        when(
            "membrane-first",
            "the membrane stood in place of the wall before the graft was packed",
            Zone::Ideal,
        ),
        when(
            "graft-first",
            "the graft was packed against a missing wall and the membrane laid on top",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::GraftMaterial, Decision::Membrane, Decision::ActOrder],
    rests_on: &[Fact::FacialWall],
    causes: &[],
    evidence: &[says(
        Source::CommonPractice,
        Status::NoSource,
        "order of acts at the chair",
        "The gap is filled with particulate from inside the membrane.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let order = j.plan.graft.as_ref()?.order?;
    if !regeneration::has_wall_defect(j.case) {
        return None;
    }
    situation(match order {
        c::ActOrder::MembraneFirst => "membrane-first",
        c::ActOrder::GraftFirst => "graft-first",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;

    #[test]
    fn grains_packed_against_a_missing_wall_cost_a_little() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("act-order", "graft-first")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn whole_walls_hold_the_grains_themselves() {
        let mut trial = repaired();
        trial.case.site.defects.clear();
        trial.keys(&[("act-order", "graft-first")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
