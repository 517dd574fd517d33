//! Flap: do not drill flapless beside a lingual undercut.

use crate::anatomy::Jaw;
use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "flapless-beside-lingual-undercut",
    ledger: "flapless-conditions",
    family: Family::Flap,
    step: Step::Implant,
    skill: Skill::FlapDesign,
    statement: long!("Do not drill flapless beside a lingual undercut."),
    why: long!(
        "A drill that leaves the lingual cortex unseen can cut an artery of the floor of the mouth, and the swelling can close the airway."
    ),
    mend: long!(
        "Raise a flap and see the lingual face, or choose a path that keeps 2 mm of lingual bone."
    ),
    scale: Scale::Bands(Bands {
        quantity: "lingual bone beside the apical third, drilled flapless over an undercut",
        unit: "mm",
        lowest: Zone::Unsafe,
        cuts: &[
            Cut::from(1.0, Zone::Debated).published(1.0, 2.0),
            Cut::from(2.0, Zone::Acceptable).published(1.0, 2.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("One millimetre of lingual bone is enough."),
        other: long!("Two millimetres of lingual bone are asked for."),
    }),
    reads: &[
        Decision::FlapDesign,
        Decision::OralElevation,
        Decision::Diameter,
        Decision::Length,
        Decision::OffsetFacial,
        Decision::Depth,
        Decision::Tilt,
    ],
    rests_on: &[Fact::RidgeForm],
    causes: &[],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Limongelli 2015, haematoma of the floor of the mouth after flapless surgery",
            "Flapless drilling in the mandible was followed by a haematoma of the floor of the mouth.",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Law 2017, floor-of-mouth haematoma review, J Oral Maxillofac Surg",
            "The lingual plate was perforated in 84 % of 25 cases.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "teaching on lingual clearance",
            "Keep 1 to 2 mm of bone at the lingual cortex.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let undercut = j.m.lingual_undercut()?.get() > 0.0;
    let lower = j.case.site.tooth.jaw() == Jaw::Mandible;
    if !lower || !undercut || !regeneration::is_flapless(j.plan)? {
        return None;
    }
    j.plan.implant.as_ref()?;
    j.m.apical_oral_bone().map(regeneration::millimetres)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::{lower, repaired, undercut};
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (0.999, Zone::Unsafe),
            (1.0, Zone::Debated),
            (1.001, Zone::Debated),
            (1.999, Zone::Debated),
            (2.0, Zone::Acceptable),
            (2.001, Zone::Acceptable),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_upper_jaw_has_no_lingual_undercut() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }

    #[test]
    fn a_raised_flap_lets_you_see_it() {
        assert_eq!(lower(repaired()).zone(&RULE), None);
    }

    #[test]
    fn a_path_through_an_undercut_is_unsafe_flapless_and_not_judged_under_a_flap() {
        assert_eq!(undercut(Trial::plain()).zone(&RULE), Some(Zone::Unsafe));
        assert_eq!(undercut(repaired()).zone(&RULE), None);
    }

    #[test]
    fn a_path_that_keeps_lingual_bone_is_acceptable_and_one_in_between_debated() {
        let mut trial = undercut(Trial::plain());
        trial.number(Decision::Tilt, 0);
        trial.number(Decision::OffsetFacial, 0);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = undercut(Trial::plain());
        trial.number(Decision::Tilt, 0);
        trial.number(Decision::OffsetFacial, -12);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
    }
}
