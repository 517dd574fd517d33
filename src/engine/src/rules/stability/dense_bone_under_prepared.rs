//! A bed left narrow in dense bone.

use crate::anatomy::DensityClass;
use crate::plan::choices::Preparation;
use crate::rules::prelude::*;

/// Prepare the bed to full width in dense bone, and tap it where it is compact.
pub(super) static RULE: Rule = Rule {
    id: "dense-bone-under-prepared",
    ledger: "density-adapted-prep",
    family: Family::Stability,
    step: Step::Implant,
    skill: Skill::Stability,
    statement: long!(
        "Prepare the bed to full width in dense bone, and tap it where it is compact."
    ),
    why: long!(
        "Dense bone does not give: an implant forced into a narrow bed squeezes it, and squeezed bone dies back."
    ),
    mend: long!("Drill to full width, and tap compact bone."),
    scale: Scale::Situations(&[
        when("full", "the bed is drilled to full width in dense bone", Zone::Ideal),
        when("tapped", "the bed is drilled to full width and tapped in dense bone", Zone::Ideal),
        when(
            "under-prepared",
            "the bed is left narrower than the implant in dense bone",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Preparation],
    rests_on: &[Fact::Density],
    causes: &[],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "density-adapted preparation",
            "Dense bone is fully prepared or tapped.",
        ),
        says(
            Source::Laboratory,
            Status::Confirmed,
            "combining undersized drilling and bone density",
            "Torque in dense foam was already 48.9 Ncm.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let done = j.plan.implant.as_ref()?;
    if !matches!(j.case.site.density.class, DensityClass::D1 | DensityClass::D2) {
        return None;
    }
    Some(Reading::Situation(match done.preparation {
        Preparation::Full => "full",
        Preparation::Tapped => "tapped",
        Preparation::UnderByHalf => "under-prepared",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_narrow_bed_is_a_fault_in_dense_bone_only() {
        let mut trial = Trial::plain();
        trial.keys(&[("preparation", "under-prepared")]);
        assert_eq!(trial.zone(&RULE), None, "the plain site is soft");
        for class in [DensityClass::D1, DensityClass::D2] {
            trial.case.site.density.class = class;
            assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        }
        trial.keys(&[("preparation", "tapped")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
