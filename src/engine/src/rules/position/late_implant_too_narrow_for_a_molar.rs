//! A molar crown on a narrow implant in a healed ridge.

use crate::anatomy::Kind;
use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-implant-too-narrow-for-a-molar",
    ledger: "dim-diameter",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Choose 4.5 mm or more for a molar in a healed ridge too, where bone and neighbours leave the room."
    ),
    why: long!(
        "The ridge has shrunk and the crown has not: what fits the bone that is left may be too little under the bite."
    ),
    mend: long!(
        "Choose the next wider diameter; where the ridge has no room for it, augment it first."
    ),
    scale: super::implant_too_narrow_for_a_molar::RULE.scale,
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::LateDiameter],
    rests_on: &[],
    causes: &[],
    evidence: super::implant_too_narrow_for_a_molar::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let placed = j.plan.later.placement.as_ref()?;
    let molar = j.case.site.tooth.kind() == Kind::Molar;
    molar.then(|| Reading::Number(placed.diameter.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn four_millimetres_are_the_least_and_four_and_a_half_usual() {
        for (diameter, zone) in [
            (3.999, Zone::Suboptimal),
            (4.0, Zone::Acceptable),
            (4.001, Zone::Acceptable),
            (4.499, Zone::Acceptable),
            (4.5, Zone::Ideal),
            (4.501, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, diameter), zone, "{diameter}");
        }
    }

    #[test]
    fn only_molars_in_a_healed_ridge_are_asked() {
        let mut trial = Trial::molar();
        assert_eq!(trial.zone(&RULE), None);
        trial.course("let-heal").keys(&[("healed-act", "place")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal), "3.5 mm in the ready plan");
        trial.number(Decision::LateDiameter, 45);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        assert_eq!(Trial::late().zone(&RULE), None);
    }
}
