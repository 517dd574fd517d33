//! A facial wall defect at a visible site moves the default to staging.

use crate::anatomy::DefectKind;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "implant-in-a-lost-facial-wall",
    ledger: "iip-facial-wall-defect",
    family: Family::Timing,
    step: Step::Graft,
    skill: Skill::Course,
    statement: long!(
        "Where the facial wall is open to the crest and the margin shows, stage the implant, or repair wall and gum in the same operation and know that this is debated."
    ),
    why: long!(
        "The wider the defect, the more often the margin recedes. In an older series it did in 1 of 12 narrow, 3 of 7 broad and 4 of 4 defects that reached the neighbours."
    ),
    mend: long!(
        "Revise the course to graft and return or to early return; or lay a contour layer and a connective tissue graft."
    ),
    scale: Scale::Situations(&[
        when("staged", "the facial wall is open and no implant stays today", Zone::Ideal),
        when(
            "repaired-with-contour-and-tissue",
            "a V- or U-shaped defect was repaired with a contour layer and a connective tissue graft",
            Zone::Debated,
        ),
        when(
            "narrow-defect-repaired",
            "a narrow V-shaped defect was repaired without a tissue graft",
            Zone::Debated,
        ),
        when(
            "narrow-defect-left",
            "an implant stays behind a V-shaped defect that was not repaired",
            Zone::Compromising,
        ),
        when(
            "broad-defect-without-tissue",
            "an implant stays behind a U-shaped defect without contour layer and tissue graft together",
            Zone::Compromising,
        ),
        when("wide-defect", "an implant stays behind a loss to the neighbours", Zone::Compromising),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!(
            "a facial defect in a visible site moves the implant to a later day (recession above 1.5 mm at one year: V 8.3 %, U 42.8 %, to the neighbours 100 %)."
        ),
        other: long!(
            "with a contour graft and a tissue graft in one stage 16 of 16 V and U defects were stable at a mean of 6 years, and large defects regained about 1 mm of facial bone in a year."
        ),
    }),
    reads: &[
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::SeatingAct,
        Decision::TissueGraft,
        Decision::ContourLayer,
        Decision::Membrane,
    ],
    rests_on: &[Fact::FacialWall, Fact::SmileLine],
    causes: &[Cause::DefectNotLookedFor, Cause::SiteNotReady, Cause::DefectLeftOpen],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Kan 2007, \"Effects of the facial osseous defect morphology on gingival dynamics\", J Oral Maxillofac Surg",
            "recession above 1.5 mm at one year: V 1 of 12, U 3 of 7, to the neighbours 4 of 4",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Kan 2023, Compendium",
            "16 of 16 V and U defects stable at a mean of 6 years with contour graft and tissue graft",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Meijer 2019, CIDRR",
            "about 1 mm of facial bone regained at one year in large defects",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    if !case.site.is_aesthetic() {
        return None;
    }
    let defect = ask::dehiscence(case)?;
    if !ask::placed(plan)? || plan.implant_in_place().is_none() {
        return situation("staged");
    }
    plan.graft.as_ref()?;
    let contour = ask::has_contour_layer(plan);
    let repaired = contour || (plan.graft_laid().is_some() && plan.membrane().is_some());
    situation(match defect {
        // The series that speaks for one stage holds V- and U-shaped defects only.
        DefectKind::LostWall => "wide-defect",
        _ if contour && ask::has_tissue_graft(plan) => "repaired-with-contour-and-tissue",
        DefectKind::DehiscenceU => "broad-defect-without-tissue",
        _ if repaired => "narrow-defect-repaired",
        _ => "narrow-defect-left",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, LipLine, Wall};
    use crate::geometry::Outline;
    use crate::rules::trial::Trial;

    fn open_wall(kind: DefectKind) -> Trial {
        let mut trial = Trial::plain();
        let outline = Outline::new(vec![[-20, 0], [20, 0], [15, 50], [-15, 50]]).unwrap();
        trial.case.site.defects = vec![Defect { wall: Wall::Facial, kind, outline }];
        trial
    }

    #[test]
    fn contour_and_tissue_together_open_the_debate_unless_the_loss_reaches_the_neighbours() {
        let (broad, wide) = (DefectKind::DehiscenceU, DefectKind::LostWall);
        for (kind, zone) in [(broad, Zone::Debated), (wide, Zone::Compromising)] {
            let mut trial = open_wall(kind);
            trial.keys(&[("tissue-graft", "now"), ("flap-design", "envelope")]);
            trial.keys(&[("papillae", "left"), ("periosteal-release", "no")]);
            trial.outline(Decision::FlapOutline, &[[-40, -10], [40, -10], [40, 90], [-40, 90]]);
            trial.number(Decision::ContourLayer, 20);
            assert_eq!(trial.zone(&RULE), Some(zone), "{kind:?}");
            trial.number(Decision::ContourLayer, 0);
            assert_eq!(trial.zone(&RULE), Some(Zone::Compromising), "{kind:?}");
        }
    }

    #[test]
    fn staging_is_ideal_and_a_hidden_site_is_not_judged() {
        let mut trial = open_wall(DefectKind::DehiscenceV);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.course("graft-and-return");
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.case.site.soft.lip = LipLine::Low;
        assert_eq!(trial.zone(&RULE), None);
    }
}
