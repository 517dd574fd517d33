//! A platform in a healed ridge that stands out towards the lip.

use crate::anatomy::Kind;
use crate::rules::prelude::*;

/// Judged by the bands of its twin for an implant of the day, which it shares.
pub(super) static RULE: Rule = Rule {
    id: "late-platform-too-far-facial",
    ledger: "pos-facial-clearance",
    family: Family::Position,
    step: Step::LatePlacement,
    skill: Skill::Placing,
    statement: long!(
        "Set the platform in a healed ridge at least 2 mm to the oral side of the line that joins the neighbours' facial surfaces."
    ),
    why: long!(
        "The bone that stood before it is gone; a platform where the root was now stands in front of the ridge."
    ),
    mend: long!("Move the implant to the oral side, or choose a narrower one."),
    scale: super::platform_too_far_facial::RULE.scale,
    agreement: Agreement::NumberVaries,
    positions: super::platform_too_far_facial::RULE.positions,
    reads: &[Decision::LateFacial, Decision::LateDiameter, Decision::LateTilt],
    rests_on: &[],
    causes: &[Cause::ImplantTooFacial, Cause::ImplantTooWide],
    evidence: super::platform_too_far_facial::RULE.evidence,
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if j.case.site.tooth.kind() == Kind::Molar {
        return None;
    }
    number(j.m.late()?.from_line?.get())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn two_millimetres_behind_the_line_are_ideal() {
        for (value, zone) in [
            (1.499, Zone::Compromising),
            (1.5, Zone::Debated),
            (1.501, Zone::Debated),
            (1.999, Zone::Debated),
            (2.0, Zone::Ideal),
            (2.001, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn moved_out_to_the_line_it_stands_too_far_facially() {
        let mut trial = Trial::late();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::LateFacial, 5);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
