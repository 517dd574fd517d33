//! Too little bone over the apex of the implant.

use crate::anatomy::Jaw;
use crate::rules::prelude::*;

/// Keep at least 1 mm of bone over the apex of the implant.
pub(super) static RULE: Rule = Rule {
    id: "apex-through-the-plate",
    ledger: "pos-fenestration",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Keep at least 1 mm of bone over the apex of the implant."),
    why: long!(
        "You lean the apex out to bring the platform in, and below the concavity there is no bone left to lean into."
    ),
    mend: long!(
        "Bring the apex towards the middle of the ridge, or choose a shorter or narrower implant."
    ),
    scale: Scale::Bands(Bands {
        quantity: "bone over the apical third",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[Cut::from(1.0, Zone::Ideal)],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::Tilt,
        Decision::OffsetFacial,
        Decision::Length,
        Decision::Diameter,
        Decision::Depth,
    ],
    rests_on: &[Fact::RidgeForm],
    causes: &[Cause::ImplantTilted, Cause::ImplantTooFacial, Cause::ImplantTooOral],
    evidence: &[says(
        Source::Textbook,
        Status::FromMemory,
        "bone over the apex",
        "1 mm or more of facial and oral bone over the apex; facial tilt is not traded for a perforation.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let facial = j.m.apical_facial_bone()?;
    // In the lower jaw the lingual side is a matter of safety and has a rule of its own.
    let least = match j.case.site.tooth.jaw() {
        Jaw::Maxilla => facial.min(j.m.apical_oral_bone()?),
        Jaw::Mandible => facial,
    };
    Some(Reading::Number(least.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn one_millimetre_is_the_least() {
        for (value, zone) in [
            (-1.0, Zone::Compromising),
            (0.0, Zone::Compromising),
            (0.999, Zone::Compromising),
            (1.0, Zone::Ideal),
            (1.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn leaning_the_apex_out_breaks_through_the_concavity() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::Tilt, 20);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
