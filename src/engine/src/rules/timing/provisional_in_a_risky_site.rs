//! An immediate provisional belongs to low-risk sites.

use crate::anatomy::{Lesion, LipLine};
use crate::plan::Component;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "provisional-in-a-risky-site",
    ledger: "iip-risk-tiers",
    family: Family::Timing,
    step: Step::Graft,
    skill: Skill::Course,
    statement: long!(
        "Give a same-day provisional at a visible site only where the risk is low, or medium with added regeneration."
    ),
    why: long!(
        "Consensus finds immediate placement with immediate restoration reasonable at low risk. It was studied in selected patients."
    ),
    mend: long!("Use a healing abutment or cover screw, or stage the implant."),
    scale: Scale::Situations(&[
        when("low-risk", "the site is of low risk", Zone::Ideal),
        when(
            "medium-risk-with-regeneration",
            "the site is of medium risk and was regenerated",
            Zone::Acceptable,
        ),
        when(
            "medium-risk-alone",
            "the site is of medium risk and nothing was regenerated",
            Zone::Suboptimal,
        ),
        when(
            "high-risk",
            "a same-day provisional stands in a site of high risk",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[
        Decision::Component,
        Decision::GraftMaterial,
        Decision::Membrane,
        Decision::TissueGraft,
    ],
    rests_on: &[
        Fact::FacialWall,
        Fact::GumThickness,
        Fact::SmileLine,
        Fact::ApicalLesion,
        Fact::History,
    ],
    causes: &[Cause::SiteNotReady],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "7th consensus conference, group 5, 2023-24, \"Implant placement and loading protocols\"",
            "immediate placement and restoration: reasonable at low risk, at medium risk only with added regeneration, not routine at high risk",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "none or one of five factors is low, two is medium, three or a wall open to the crest is high",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, .. } = *judging;
    let site = &case.site;
    if !site.is_aesthetic() || !matches!(plan.component()?, Component::Provisional(_)) {
        return None;
    }
    plan.graft.as_ref()?;
    let open = ask::dehiscence(case).is_some();
    let factors = [
        !site.defects.is_empty(),
        site.soft.thickness.get() <= 1.0,
        site.lesion != Lesion::None,
        case.patient.cigarettes > 10,
        site.soft.lip == LipLine::High,
    ];
    let regenerated =
        plan.graft_laid().is_some() || plan.membrane().is_some() || ask::has_tissue_graft(plan);
    situation(match factors.iter().filter(|factor| **factor).count() {
        _ if open || ask::is_acute(&site.lesion) => "high-risk",
        0 | 1 => "low-risk",
        2 if regenerated => "medium-risk-with-regeneration",
        2 => "medium-risk-alone",
        _ => "high-risk",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn crowned() -> Trial {
        let mut trial = Trial::plain();
        trial.keys(&[("component", "provisional"), ("provisional-contacts", "none")]);
        trial
    }

    #[test]
    fn one_factor_is_low_two_are_medium_three_are_high() {
        let mut trial = crowned();
        trial.case.site.soft.lip = LipLine::High;
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.case.site.soft.thickness = Mm::new(0.9);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.case.patient.cigarettes = 11;
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn without_a_provisional_the_tier_is_not_asked() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
