//! Implant and nasopalatine canal.

use crate::anatomy::Kind;
use crate::rules::prelude::*;

/// Keep at least 1 mm between a central incisor implant and the nasopalatine canal.
pub(super) static RULE: Rule = Rule {
    id: "too-near-the-nasopalatine-canal",
    ledger: "pos-nasopalatine",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Keep at least 1 mm between a central incisor implant and the nasopalatine canal."
    ),
    why: long!(
        "Where the canal is wide, the palatal bone you aim for is not bone; an implant in soft tissue does not hold."
    ),
    mend: long!("Move the implant distally or towards the facial side, or change its tilt."),
    scale: Scale::Bands(Bands {
        quantity: "distance to the nasopalatine canal",
        unit: "mm",
        lowest: Zone::Compromising,
        cuts: &[Cut::from(1.0, Zone::Ideal)],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::OffsetFacial,
        Decision::OffsetDistal,
        Decision::Tilt,
        Decision::Tip,
        Decision::Diameter,
    ],
    rests_on: &[Fact::Nasopalatine],
    causes: &[Cause::ImplantTooOral, Cause::ImplantTilted, Cause::ImplantTooWide],
    evidence: &[says(
        Source::Anatomy,
        Status::FromMemory,
        "Mraiwa 2004, Dentomaxillofac Radiol",
        "1 mm or more stay between implant and canal.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    if j.case.site.tooth.kind() != Kind::CentralIncisor {
        return None;
    }
    Some(Reading::Number(j.m.to_nasopalatine()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Tube;
    use crate::geometry::P3;
    use crate::rules::trial::{Trial, zone_at};
    use crate::units::Mm;

    #[test]
    fn one_millimetre_is_the_least() {
        for (value, zone) in [
            (-0.5, Zone::Compromising),
            (0.0, Zone::Compromising),
            (0.999, Zone::Compromising),
            (1.0, Zone::Ideal),
            (1.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn a_wide_canal_in_the_midline_comes_near() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), None);
        let mut zone = |x: f64| {
            let (from, to) = (P3::new(x, -5.0, 0.0), P3::new(x, -6.0, 14.0));
            trial.case.site.vital.nasopalatine = Some(Tube { from, to, radius: Mm::new(1.8) });
            trial.zone(&RULE)
        };
        assert_eq!(zone(-7.0), Some(Zone::Ideal));
        assert_eq!(zone(-2.5), Some(Zone::Compromising));
    }
}
