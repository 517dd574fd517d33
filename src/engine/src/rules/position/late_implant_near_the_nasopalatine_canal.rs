//! An implant in a healed ridge, and the nasopalatine canal.

use crate::anatomy::Kind;
use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-implant-near-the-nasopalatine-canal",
    ledger: "pos-nasopalatine",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Keep at least 1 mm between a central incisor implant in a healed ridge and the nasopalatine canal."
    ),
    why: long!(
        "A ridge that has shrunk from the facial side sends you to the palate, and there the canal is."
    ),
    mend: long!(
        "Move the implant towards the facial side with a contour graft, or choose a narrower one."
    ),
    scale: super::too_near_the_nasopalatine_canal::RULE.scale,
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::LateFacial, Decision::LateTilt, Decision::LateDiameter],
    rests_on: &[Fact::Nasopalatine],
    causes: &[Cause::ImplantTooOral, Cause::ImplantTilted, Cause::ImplantTooWide],
    evidence: super::too_near_the_nasopalatine_canal::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.case.site.tooth.kind() != Kind::CentralIncisor {
        return None;
    }
    number(j.m.late()?.to_nasopalatine?.get())
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
            (0.999, Zone::Compromising),
            (1.0, Zone::Ideal),
            (1.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn a_wide_canal_in_the_midline_comes_near() {
        let mut trial = Trial::late();
        assert_eq!(trial.zone(&RULE), None);
        let mut zone = |x: f64| {
            let (from, to) = (P3::new(x, -5.0, 0.0), P3::new(x, -6.0, 14.0));
            trial.case.site.vital.nasopalatine = Some(Tube { from, to, radius: Mm::new(1.8) });
            trial.zone(&RULE)
        };
        assert_eq!(zone(-7.0), Some(Zone::Ideal));
        assert_eq!(zone(-2.0), Some(Zone::Compromising));
    }
}
