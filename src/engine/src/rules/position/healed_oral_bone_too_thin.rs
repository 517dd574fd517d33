//! Too little bone on the oral side of an implant in a healed ridge.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "healed-oral-bone-too-thin",
    ledger: "pos-palatal-lingual-bone",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Keep at least 1 mm of bone on the oral side of an implant in a healed ridge."
    ),
    why: long!("A narrow ridge tempts you from one wall into the other."),
    mend: long!(
        "Move the implant to the facial side with a contour graft, change its tilt, or choose a narrower one."
    ),
    scale: Scale::Bands(Bands {
        quantity: "oral bone beside the late implant",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[Cut::from(1.0, Zone::Ideal)],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::LateDiameter,
        Decision::LateLength,
        Decision::LateFacial,
        Decision::LateTilt,
    ],
    rests_on: &[],
    causes: &[Cause::ImplantTooOral, Cause::ImplantTilted, Cause::ImplantTooWide],
    evidence: &[says(
        Source::Opinion,
        Status::Confirmed,
        "Maximizing esthetics and function with immediate implants, 2016",
        "1 mm of bone all round the implant.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    number(j.m.late_oral_bone()?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    fn late() -> Trial {
        let mut trial = Trial::plain();
        trial.course("let-heal").keys(&[("healed-act", "place")]);
        trial
    }
    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [(0.999, Zone::Compromising), (1.0, Zone::Ideal), (1.001, Zone::Ideal)]
        {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn pushed_to_the_palate_it_leaves_no_bone_there() {
        let mut trial = late();
        trial.number(Decision::LateFacial, -40);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
