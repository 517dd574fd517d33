//! Flap: raise a flap over a wall that is not whole.

use crate::anatomy::Wall;
use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "flapless-with-wall-defect",
    ledger: "flap-required",
    family: Family::Flap,
    step: Step::Graft,
    skill: Skill::FlapDesign,
    statement: long!("Raise a flap over a wall that is not whole."),
    why: long!(
        "You cannot clean, fill and cover what you cannot see, and a membrane pushed in blind seldom reaches intact bone."
    ),
    mend: long!(
        "Raise a flap that lays the whole defect bare; for an oral defect, raise the oral margin."
    ),
    scale: Scale::Situations(&[
        when("laid-bare", "the flap lays the missing wall bare", Zone::Ideal),
        when(
            "internal-membrane",
            "a contained facial defect is treated without a flap, behind an internal membrane",
            Zone::Debated,
        ),
        when(
            "not-laid-bare",
            "the wall has a defect and nothing was reflected over it",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: Some(Positions {
        one: long!("Raise a flap over every defect that is to be regenerated."),
        other: long!(
            "A contained facial defect can be repaired from inside the socket behind a membrane, without a flap."
        ),
    }),
    reads: &[Decision::FlapDesign, Decision::OralElevation, Decision::Membrane],
    rests_on: &[Fact::FacialWall],
    causes: &[Cause::DefectNotLookedFor, Cause::FlapTooSmall],
    evidence: &[
        says(
            Source::Opinion,
            Status::Partly,
            "Flap designs for implant-related surgical procedures, 2016, review",
            "A dehiscence or fenestration that needs regeneration is an indication for a flap.",
        ),
        says(
            Source::Opinion,
            Status::Partly,
            "Elian 2007, simplified socket classification, PPAD",
            "Sockets whose soft tissue is whole and whose plate is partly missing can be repaired from inside, without a flap.",
        ),
        says(
            Source::Cohort,
            Status::Confirmed,
            "Kan 2023, V- and U-shaped facial defects, Compendium",
            "16 of 16 V or U defects stayed stable for a mean of 6 years after contour graft and connective tissue graft.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let (flap, graft) = (j.plan.flap.as_ref()?, j.plan.graft.as_ref()?);
    let harmed = |wall| j.case.site.defects_of(wall).next().is_some();
    let (facial, oral) = (harmed(Wall::Facial), harmed(Wall::Oral));
    if !facial && !oral {
        return None;
    }
    let seen_facially = !facial || flap.raised.is_some();
    let seen_orally = !oral || flap.oral.get() > 0.0;
    let internal = regeneration::is_contained(j.case) && seen_orally && graft.membrane.is_some();
    Some(Reading::Situation(if seen_facially && seen_orally {
        "laid-bare"
    } else if internal {
        "internal-membrane"
    } else {
        "not-laid-bare"
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DefectKind;
    use crate::rules::regeneration::{defect, repaired};
    use crate::rules::trial::Trial;

    #[test]
    fn a_defect_under_a_flap_is_laid_bare() {
        assert_eq!(repaired().zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn a_fenestration_left_under_the_gum_is_likely_to_compromise() {
        let mut trial = Trial::plain();
        trial.case.site.defects.push(defect(Wall::Facial, DefectKind::Fenestration));
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn behind_an_internal_membrane_only_a_contained_defect_is_debated() {
        let mut trial = repaired();
        trial.number(Decision::OralElevation, 0);
        trial.keys(&[("flap-design", "no-flap")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        let mut trial = repaired();
        trial.number(Decision::OralElevation, 0);
        trial.case.site.defects[0].kind = DefectKind::LostWall;
        trial.keys(&[("flap-design", "no-flap")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn an_oral_defect_asks_for_the_oral_margin() {
        let mut trial = repaired();
        trial.number(Decision::OralElevation, 0);
        trial.case.site.defects = vec![defect(Wall::Oral, DefectKind::DehiscenceV)];
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn whole_walls_ask_for_nothing() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
