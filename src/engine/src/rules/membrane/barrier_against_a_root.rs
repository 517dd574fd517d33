//! Membrane: keep a barrier that does not resorb at least 1 mm off neighbouring roots.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "barrier-against-a-root",
    ledger: "membrane-tooth-distance",
    family: Family::Membrane,
    step: Step::Graft,
    skill: Skill::Covering,
    statement: long!("Keep a barrier that does not resorb at least 1 mm off neighbouring roots."),
    why: long!("Along a root the gum cannot seal over it, and bacteria run in between."),
    mend: long!("Trim the barrier back from the root."),
    scale: Scale::Bands(Bands {
        quantity: "distance from the barrier to a root",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[
            Cut::from(1.0, Zone::Acceptable).published(1.0, 2.0),
            Cut::from(1.5, Zone::Ideal).published(1.5, 2.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Membrane, Decision::MembraneOutline],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::CommonPractice,
        Status::FromMemory,
        "teaching on barriers beside teeth",
        "At least 1 mm, 1.5 to 2 mm safer; barriers that resorb may lie closer.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if regeneration::resorbs(j.plan.membrane()?.kind) {
        return None;
    }
    j.m.membrane_to_root().map(regeneration::millimetres)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::zone_at;

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (0.999, Zone::Compromising),
            (1.0, Zone::Acceptable),
            (1.001, Zone::Acceptable),
            (1.499, Zone::Acceptable),
            (1.5, Zone::Ideal),
            (1.501, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn collagen_may_lie_closer() {
        assert_eq!(repaired().zone(&RULE), None);
        let mut trial = repaired();
        trial.keys(&[("membrane", "cross-linked-collagen")]);
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn dense_ptfe_is_measured_to_roots_5_3_and_5_5_mm_away() {
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 28);
        trial.outline(Decision::MembraneOutline, &[[-45, -115], [45, -115], [45, 95], [-45, 95]]);
        trial.keys(&[("membrane", "dense-ptfe")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 28);
        trial.outline(Decision::MembraneOutline, &[[-41, -115], [41, -115], [41, 95], [-41, 95]]);
        trial.keys(&[("membrane", "dense-ptfe")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.number(Decision::MembraneOut, 28);
        trial.outline(Decision::MembraneOutline, &[[-30, -115], [30, -115], [30, 95], [-30, 95]]);
        trial.keys(&[("membrane", "dense-ptfe")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
