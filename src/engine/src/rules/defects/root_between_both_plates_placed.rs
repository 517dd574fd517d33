//! An immediate implant where the root fills the bone from plate to plate.

use crate::anatomy::Jaw;
use crate::rules::prelude::*;

/// Do not place today where the root touches both cortices along two thirds of its length.
pub(super) static RULE: Rule = Rule {
    id: "root-between-both-plates-placed",
    ledger: "class-kan-root",
    family: Family::Defects,
    step: Step::Implant,
    skill: Skill::Course,
    statement: long!(
        "Do not place today where the root touches both cortices along two thirds of its length."
    ),
    why: long!(
        "A root that fills the bone from plate to plate leaves you nothing to drill into: every implant there hangs on the walls."
    ),
    mend: long!("Let the site heal or rebuild it, and place later."),
    scale: Scale::Bands(Bands {
        quantity: "part of the root between both cortices",
        unit: "of its length",
        lowest: Zone::Ideal,
        cuts: &[Cut::from(0.667, Zone::Compromising)],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Course, Decision::AfterExtraction, Decision::AfterFlap],
    rests_on: &[Fact::RidgeForm, Fact::ApicalBone],
    causes: &[Cause::SiteNotReady, Cause::NoHold],
    evidence: &[
        says(
            Source::Anatomy,
            Status::FromMemory,
            "Kan 2011, sagittal root position, Int J Oral Maxillofac Implants",
            "In class IV at least two thirds of the root touch both cortices; 11.7 % of 600 teeth.",
        ),
        says(
            Source::Anatomy,
            Status::Confirmed,
            "other surveys of sagittal root position",
            "Class IV was found in 2.9 to 26.3 % of upper front teeth.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "what counts as touching",
            "A root touches a cortex where 1.5 mm of bone or less lies between it and the outer face.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let tooth = j.case.site.tooth;
    if tooth.jaw() != Jaw::Maxilla || !tooth.is_anterior() {
        return None;
    }
    Some(Reading::Number(j.m.root_between_cortices()?.get()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn two_thirds_of_the_root_decide() {
        for (value, zone) in [
            (0.0, Zone::Ideal),
            (0.666, Zone::Ideal),
            (0.667, Zone::Compromising),
            (0.668, Zone::Compromising),
            (1.0, Zone::Compromising),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn a_root_with_bone_behind_it_is_no_such_root() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn a_ridge_as_narrow_as_the_root_is() {
        let mut trial = Trial::plain();
        for knot in &mut trial.case.site.ridge.facial.knots {
            knot.y = 3.6;
        }
        for knot in &mut trial.case.site.ridge.oral.knots {
            knot.y = -3.6;
        }
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
