//! A bed drilled to full width in soft bone.

use crate::anatomy::DensityClass;
use crate::plan::choices::Preparation;
use crate::rules::prelude::*;

/// Under-prepare the bed in soft bone.
pub(super) static RULE: Rule = Rule {
    id: "soft-bone-fully-prepared",
    ledger: "density-adapted-prep",
    family: Family::Stability,
    step: Step::Implant,
    skill: Skill::Stability,
    statement: long!("Under-prepare the bed in soft bone."),
    why: long!(
        "In loose bone the drill takes away the little that would grip; leave some, and the implant compresses it into a hold."
    ),
    mend: long!("Stop at a final drill about half a millimetre under the diameter."),
    scale: Scale::Situations(&[
        when("under-prepared", "the bed is under-prepared in soft bone", Zone::Ideal),
        when("full", "the bed is drilled to full width in soft bone", Zone::Suboptimal),
        when(
            "tapped",
            "the bed is drilled to full width and tapped in soft bone",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Preparation],
    rests_on: &[Fact::Density],
    causes: &[Cause::NoHold],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "randomised trial of 108 implants, under-prepared against conventional",
            "Resonance was 74.3 under-prepared and 69.3 conventional; 76.7, 73.6 and 67.3 in bone of types II, III and IV.",
        ),
        says(
            Source::Laboratory,
            Status::Confirmed,
            "combining undersized drilling and bone density",
            "Torque in soft foam was 11.7 Ncm conventional and 22.6 under-prepared, against 48.9 in dense foam.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "amount of under-preparation",
            "The final drill is 0.3 to 0.8 mm under the diameter in classes 3 and 4.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let done = j.plan.implant.as_ref()?;
    if !matches!(j.case.site.density.class, DensityClass::D3 | DensityClass::D4) {
        return None;
    }
    Some(Reading::Situation(match done.preparation {
        Preparation::UnderByHalf => "under-prepared",
        Preparation::Full => "full",
        Preparation::Tapped => "tapped",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn classes_three_and_four_are_soft() {
        let mut trial = Trial::plain();
        trial.keys(&[("preparation", "full")]);
        let mut zone = |class| {
            trial.case.site.density.class = class;
            trial.zone(&RULE)
        };
        assert_eq!(zone(DensityClass::D4), Some(Zone::Suboptimal));
        assert_eq!(zone(DensityClass::D3), Some(Zone::Suboptimal));
        assert_eq!(zone(DensityClass::D2), None);
    }

    #[test]
    fn a_final_drill_under_the_diameter_mends_it() {
        let mut trial = Trial::plain();
        trial.keys(&[("preparation", "under-prepared")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("preparation", "tapped")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
