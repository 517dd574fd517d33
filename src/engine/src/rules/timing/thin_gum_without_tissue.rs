//! Thin gum at a visible site gets tissue or waits.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "thin-gum-without-tissue",
    ledger: "iip-soft-tissue-phenotype",
    family: Family::Timing,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!(
        "Add a connective tissue graft where thin gum shows at full smile, or stage the implant."
    ),
    why: long!(
        "Thin gum recedes more readily after placing. Tissue from the palate makes it thicker than the probe can shine through."
    ),
    mend: long!("Add a connective tissue graft now, or stage the implant."),
    scale: Scale::Situations(&[
        when("tissue-now", "thin gum was thickened with the implant", Zone::Ideal),
        when("staged", "no implant stays in this thin gum today", Zone::Ideal),
        when("tissue-later", "tissue is planned for later", Zone::Acceptable),
        when(
            "thin-by-some",
            "the gum is 1 to 2 mm thick, thin by some definitions, and nothing was added",
            Zone::Debated,
        ),
        when(
            "thin-and-nothing-added",
            "the gum is 1 mm thick or less and nothing was added",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("thin means 1 mm or less: the probe shows through."),
        other: long!("thin begins below 1.5 to 2 mm."),
    }),
    reads: &[
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::SeatingAct,
        Decision::TissueGraft,
    ],
    rests_on: &[Fact::GumThickness, Fact::SmileLine],
    causes: &[Cause::SiteNotReady],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Kan 2010, \"Gingival biotype assessment in the esthetic zone: visual versus direct measurement\", IJPRD",
            "thin is 1.0 mm or less (mean 1.06 +/- 0.27); the probe is reliable, the eye alone is not",
        ),
        says(
            Source::Cohort,
            Status::FromMemory,
            "Evans & Chen 2008, COIR",
            "thin tissue recedes more",
        ),
        says(
            Source::SystematicReview,
            Status::FromMemory,
            "Seyssens 2021, J Clin Periodontol",
            "a tissue graft lowers recession by about 0.41 mm (title read)",
        ),
    ],
    measure,
};

/// Thin by every definition up to here.
const THIN: f64 = 1.0;
/// Thin by some definitions up to here.
const THIN_BY_SOME: f64 = 2.0;

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    let thickness = crate::units::comparable(case.site.soft.thickness.get());
    if !case.site.is_aesthetic() || thickness > THIN_BY_SOME {
        return None;
    }
    if !ask::placed(plan)? || plan.implant_in_place().is_none() {
        return if thickness <= THIN { situation("staged") } else { None };
    }
    situation(match plan.graft.as_ref()?.tissue {
        c::TissueGraft::Now => "tissue-now",
        c::TissueGraft::Later => "tissue-later",
        c::TissueGraft::NoTissue if thickness <= THIN => "thin-and-nothing-added",
        c::TissueGraft::NoTissue => "thin-by-some",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn gum(thickness: f64, tissue: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.case.site.soft.thickness = Mm::new(thickness);
        trial.keys(&[("tissue-graft", tissue)]);
        trial.zone(&RULE)
    }

    #[test]
    fn thin_ends_at_one_millimetre_and_thin_by_some_at_two() {
        assert_eq!(gum(1.0, "none"), Some(Zone::Compromising));
        assert_eq!(gum(1.001, "none"), Some(Zone::Debated));
        assert_eq!(gum(2.0, "none"), Some(Zone::Debated));
        assert_eq!(gum(2.001, "none"), None);
    }

    #[test]
    fn tissue_now_or_staging_answers_thin_gum() {
        assert_eq!(gum(0.8, "now"), Some(Zone::Ideal));
        assert_eq!(gum(0.8, "later"), Some(Zone::Acceptable));
        let mut staged = Trial::plain();
        staged.case.site.soft.thickness = Mm::new(0.8);
        staged.course("graft-and-return");
        assert_eq!(staged.zone(&RULE), Some(Zone::Ideal));
    }
}
