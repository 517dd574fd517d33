//! Graft: release the periosteum before you close thin gum over a contour layer.

use crate::rules::prelude::*;
use crate::rules::regeneration;
use crate::units::comparable;

pub(super) static RULE: Rule = Rule {
    id: "contour-under-thin-unreleased-flap",
    ledger: "graft-contour-overbuild",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Release the periosteum before you close thin gum over a contour layer."),
    why: long!(
        "Thin gum stretched over a bulge loses its blood supply and opens exactly over the graft."
    ),
    mend: long!("Release the periosteum, thicken the gum, or lay less."),
    scale: Scale::Situations(&[
        when("released", "the flap over the layer was released", Zone::Ideal),
        when("thick-unreleased", "thick gum lies unreleased over the layer", Zone::Acceptable),
        when("thin-unreleased", "thin gum lies unreleased over a contour layer", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::GraftMaterial, Decision::ContourLayer, Decision::PeriostealRelease],
    rests_on: &[Fact::GumThickness],
    causes: &[],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "teaching on over-contouring",
            "Not under a thin unreleased flap.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Gingival biotype assessment in the esthetic zone",
            "Gum of at most 1.0 mm is called thin; the mean was 1.06 mm, and a probe tells it while the eye does not.",
        ),
    ],
    measure,
};

/// Gum of at most this thickness is thin.
const THIN: f64 = 1.0;

fn measure(j: &Judging<'_>) -> Option<Reading> {
    regeneration::contour(j.plan)?;
    let released = j.plan.raised()?.periosteum_released;
    let thin = comparable(j.case.site.soft.thickness.get()) <= THIN;
    situation(match (released, thin) {
        (true, _) => "released",
        (false, false) => "thick-unreleased",
        (false, true) => "thin-unreleased",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::units::Mm;

    #[test]
    fn thin_gum_needs_the_release_and_thick_gum_may_do_without() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.keys(&[("periosteal-release", "no")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.case.site.soft.thickness = Mm::new(1.001);
        trial.keys(&[("periosteal-release", "no")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.case.site.soft.thickness = Mm::new(1.0);
        trial.keys(&[("periosteal-release", "no")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.case.site.soft.thickness = Mm::new(0.8);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn without_a_layer_there_is_nothing_to_stretch_over() {
        let mut trial = repaired();
        trial.number(Decision::ContourLayer, 0);
        trial.keys(&[("periosteal-release", "no")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
