//! Too little bone over the apex of an implant in a healed ridge.

use crate::anatomy::Jaw;
use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-apex-through-the-plate",
    ledger: "pos-fenestration",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!("Keep at least 1 mm of bone over the apex of an implant in a healed ridge."),
    why: long!("The crest heals shut and looks solid; the hollow below it is where it always was."),
    mend: long!(
        "Bring the apex towards the middle of the ridge, or choose a shorter or narrower implant."
    ),
    scale: super::apex_through_the_plate::RULE.scale,
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::LateTilt,
        Decision::LateFacial,
        Decision::LateLength,
        Decision::LateDiameter,
        Decision::LateDepth,
    ],
    rests_on: &[Fact::RidgeForm],
    causes: &[Cause::ImplantTilted, Cause::ImplantTooFacial, Cause::ImplantTooOral],
    evidence: super::apex_through_the_plate::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let late = j.m.late()?;
    // In the lower jaw the lingual side is a matter of safety and has a rule of its own.
    let least = match j.case.site.tooth.jaw() {
        Jaw::Maxilla => late.apical_facial?.min(late.apical_oral?),
        Jaw::Mandible => late.apical_facial?,
    };
    number(least.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn one_millimetre_is_the_least() {
        for (value, zone) in [
            (-1.0, Zone::Compromising),
            (0.999, Zone::Compromising),
            (1.0, Zone::Ideal),
            (1.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn leaning_the_apex_out_breaks_through_the_concavity() {
        let mut trial = Trial::late();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::LateTilt, 25);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
