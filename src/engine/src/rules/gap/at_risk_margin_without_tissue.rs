//! No connective tissue graft where a facial defect or a high smile line puts the margin at risk.

use crate::anatomy::{LipLine, Wall};
use crate::plan::choices::TissueGraft;
use crate::rules::prelude::*;
use crate::units::comparable;

/// Add a connective tissue graft beside an immediate implant whose margin is at risk although the gum is thick.
pub(super) static RULE: Rule = Rule {
    id: "at-risk-margin-without-tissue",
    ledger: "ctg-adjunct",
    family: Family::Gap,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!(
        "Add a connective tissue graft beside an immediate implant whose margin is at risk although the gum is thick."
    ),
    why: long!(
        "You save some recession with it, and beside a repaired facial wall or under a high lip that is where it counts."
    ),
    mend: long!("Lay a connective tissue graft now, or plan it for uncovering."),
    scale: Scale::Situations(&[
        when("now", "a connective tissue graft is laid now", Zone::Ideal),
        when("later", "a connective tissue graft is planned for later", Zone::Acceptable),
        when("none-high-lip", "no connective tissue graft is laid under a high lip", Zone::Debated),
        when(
            "none-defect",
            "no connective tissue graft is laid over a facial defect that shows",
            Zone::Suboptimal,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("Lay it wherever the margin is at risk."),
        other: long!("In thick gum it is optional, and the gain is a fraction of a millimetre."),
    }),
    reads: &[Decision::TissueGraft, Decision::Course],
    rests_on: &[Fact::FacialWall, Fact::SmileLine, Fact::GumThickness],
    causes: &[Cause::SiteNotReady],
    evidence: &[
        says(
            Source::SystematicReview,
            Status::FromMemory,
            "Seyssens 2021, connective tissue graft at immediate implants, J Clin Periodontol",
            "About 0.41 mm less recession.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Kan 2023, Compendium",
            "All 16 facial defects of V or U shape stayed stable for a mean of 6 years with contour graft and connective tissue graft.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let step = j.plan.graft.as_ref()?;
    let site = &j.case.site;
    let defect = site.defects_of(Wall::Facial).next().is_some();
    // Gum that is thin by any definition is a risk of its own and has a rule of its own.
    if !site.is_aesthetic() || comparable(site.soft.thickness.get()) <= 2.0 {
        return None;
    }
    if !defect && site.soft.lip != LipLine::High {
        return None;
    }
    Some(Reading::Situation(match (step.tissue, defect) {
        (TissueGraft::Now, _) => "now",
        (TissueGraft::Later, _) => "later",
        (TissueGraft::NoTissue, true) => "none-defect",
        (TissueGraft::NoTissue, false) => "none-high-lip",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind};
    use crate::geometry::Outline;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn with_defect() -> Trial {
        let mut trial = Trial::plain();
        trial.case.site.soft.thickness = Mm::new(2.5);
        let outline = Outline::new(vec![[-15, 0], [15, 0], [0, 50]]).unwrap();
        let kind = DefectKind::DehiscenceV;
        trial.case.site.defects.push(Defect { wall: Wall::Facial, kind, outline });
        trial
    }

    #[test]
    fn a_facial_defect_asks_for_tissue_now_or_later() {
        let mut trial = with_defect();
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.keys(&[("tissue-graft", "later")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        trial.keys(&[("tissue-graft", "now")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn a_high_lip_over_thick_gum_is_a_matter_of_opinion() {
        let mut trial = Trial::plain();
        trial.case.site.soft.thickness = Mm::new(2.5);
        assert_eq!(trial.zone(&RULE), None);
        trial.case.site.soft.lip = LipLine::High;
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
    }

    #[test]
    fn thin_gum_is_left_to_its_own_rule() {
        let mut trial = with_defect();
        let mut zone = |thickness| {
            trial.case.site.soft.thickness = Mm::new(thickness);
            trial.zone(&RULE)
        };
        assert_eq!(zone(1.999), None);
        assert_eq!(zone(2.0), None);
        assert_eq!(zone(2.001), Some(Zone::Suboptimal));
    }
}
