//! Placing today at a visible site needs all criteria together.

use crate::anatomy::Kind;
use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "placed-against-the-criteria",
    ledger: "iip-criteria-conjunction",
    family: Family::Timing,
    step: Step::Implant,
    skill: Skill::Course,
    statement: long!(
        "Place today at a visible site only where wall, gum, infection and hold are all favourable together."
    ),
    why: long!(
        "Each unfavourable factor adds to the others. One missing criterion already moves the default to staging."
    ),
    mend: long!("Change the course: graft and return, or return early."),
    scale: Scale::Situations(&[
        when(
            "all-favourable",
            "wall thicker than 1 mm, thick gum, no acute infection and bone to hold it are all there",
            Zone::Ideal,
        ),
        when(
            "staged",
            "no implant was placed and the site was not favourable in every respect",
            Zone::Ideal,
        ),
        when("thin-but-intact", "the wall is whole, but wall or gum is thin", Zone::Debated),
        when(
            "no-bone-to-hold",
            "there is too little bone beyond the apex to hold an implant",
            Zone::Compromising,
        ),
        when("acute-infection", "the site is acutely infected", Zone::Compromising),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("a wall of 1 mm or less, or thin gum, rules immediate placement out."),
        other: long!(
            "thin but intact walls are accepted with an oral position, a grafted gap and soft tissue where needed: about 90 % of anterior sites would be barred otherwise."
        ),
    }),
    reads: &[Decision::Course, Decision::AfterExtraction, Decision::AfterFlap, Decision::Diameter],
    rests_on: &[
        Fact::FacialWall,
        Fact::FacialThickness,
        Fact::GumThickness,
        Fact::AcuteInfection,
        Fact::ApicalBone,
    ],
    causes: &[Cause::SiteNotReady],
    evidence: &[
        says(
            Source::Opinion,
            Status::Partly,
            "Buser, Chappuis, Belser & Chen 2017, when immediate, early or late, Periodontol 2000",
            "wall intact and above 1 mm, thick gum, no acute infection, enough apical and palatal bone (wording from memory)",
        ),
        says(
            Source::SystematicReview,
            Status::Partly,
            "Hamilton 2023, selection criteria for immediate placement, COIR",
            "lists the same factors",
        ),
    ],
    measure,
};

/// Thin gum: 1 mm or less.
const THIN_GUM: f64 = 1.0;
/// Thin plate: 1 mm or less.
const THIN_PLATE: f64 = 1.0;
/// Less bone than this beyond the apex holds by no account: the least figure quoted.
const LEAST_BONE: f64 = 2.0;

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, m, .. } = *judging;
    // The criteria are those of front teeth and premolars; anatomy and hold decide at molars.
    let molar = case.site.tooth.kind() == Kind::Molar;
    if molar || !case.site.is_aesthetic() || ask::dehiscence(case).is_some() {
        return None;
    }
    let thin = case.site.soft.thickness.get() <= THIN_GUM
        || m.facial_plate().is_some_and(|plate| plate.get() <= THIN_PLATE);
    let loose = m.bone_beyond_apex().is_some_and(|bone| bone.get() < LEAST_BONE);
    let acute = ask::is_acute(&case.site.lesion);
    if !ask::placed(plan)? {
        return if thin || loose || acute { situation("staged") } else { None };
    }
    situation(if acute {
        "acute-infection"
    } else if loose {
        "no-bone-to-hold"
    } else if thin {
        "thin-but-intact"
    } else {
        "all-favourable"
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Lesion;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    #[test]
    fn gum_of_one_millimetre_is_thin_and_just_over_is_not() {
        let mut trial = Trial::plain();
        trial.case.site.soft.thickness = Mm::new(1.0);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        trial.course("graft-and-return");
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn infection_outweighs_a_thin_wall() {
        let mut trial = Trial::plain();
        trial.case.site.soft.thickness = Mm::new(0.8);
        trial.case.site.lesion = Lesion::Abscess { diameter: Mm::new(3.0) };
        assert_eq!(trial.reading(&RULE), Some(Reading::Situation("acute-infection")));
    }

    #[test]
    fn a_molar_is_not_asked() {
        let mut trial = Trial::molar();
        trial.case.site.soft.lip = crate::anatomy::LipLine::High;
        assert_eq!(trial.zone(&RULE), None);
    }

    #[test]
    fn the_ordinary_case_meets_every_criterion() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
    }
}
