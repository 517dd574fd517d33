//! Graft: choose demineralised bone for more vital bone, not for a wider ridge.

use crate::anatomy::Kind;
use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "vital-bone-taken-for-ridge-shape",
    ledger: "graft-fdba-dfdba",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Choose demineralised bone for more vital bone, not for a wider ridge."),
    why: long!(
        "It leaves you more vital bone after four to five months and the same shape of ridge."
    ),
    mend: long!("Nothing needs mending: know what each of the two buys."),
    scale: Scale::Situations(&[
        when(
            "demineralised",
            "demineralised bone gives more vital bone and the same ridge",
            Zone::Acceptable,
        ),
        when(
            "mineralised",
            "mineralised bone gives the same ridge with more residual graft",
            Zone::Acceptable,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::GraftMaterial],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "Wood and Mealey 2012, J Periodontol",
            "Vital bone 38.42 % with demineralised against 24.63 % with mineralised bone; residual graft 8.88 against 25.42 %; ridge shape alike.",
        ),
        says(
            Source::Trial,
            Status::Confirmed,
            "Borg and Mealey 2015, J Periodontol",
            "A 70:30 blend gave 36.16 % vital bone against 24.69 % with mineralised bone alone, at 18 to 20 weeks.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    // The trials are of sockets that are no molars'.
    if !regeneration::is_preservation(j.plan) || j.case.site.tooth.kind() == Kind::Molar {
        return None;
    }
    situation(match j.plan.graft_laid()?.material {
        c::GraftMaterial::DemineralisedAllograft => "demineralised",
        c::GraftMaterial::MineralisedAllograft | c::GraftMaterial::AllograftBlend => "mineralised",
        _ => return None,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::preserved;
    use crate::rules::trial::Trial;

    #[test]
    fn either_is_acceptable_in_a_preserved_socket() {
        let mut trial = preserved();
        trial.keys(&[("graft-material", "demineralised-allograft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        assert_eq!(preserved().zone(&RULE), Some(Zone::Acceptable));
    }

    #[test]
    fn beside_an_implant_and_for_other_materials_it_says_nothing() {
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", "demineralised-allograft")]);
        assert_eq!(trial.zone(&RULE), None);
        let mut trial = preserved();
        trial.keys(&[("graft-material", "xenograft")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
