//! Graft: pick a material by what you need, volume that stays or turnover; none is best.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "one-graft-taken-for-best",
    ledger: "graft-material-choice",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!(
        "Pick a material by what you need, volume that stays or turnover; none is best."
    ),
    why: long!(
        "Eighty-eight trials rank no material first in everything, so your reason matters more than the name."
    ),
    mend: long!("Nothing needs mending: say what you chose it for."),
    scale: Scale::Situations(&[
        when(
            "predictable-shape",
            "bovine or human bone keeps the shape most predictably",
            Zone::Ideal,
        ),
        when("other", "another material serves as well where shape matters less", Zone::Acceptable),
    ]),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("Slow materials first: shape is what the implant needs."),
        other: long!("Fast turnover first: vital bone is what the implant needs."),
    }),
    reads: &[Decision::GraftMaterial],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::SystematicReview,
        Status::Confirmed,
        "Canullo 2021, network review of 88 trials with 3073 sockets, Clin Oral Investig",
        "Xenograft and allograft are most predictable for shape; platelet concentrates gave the most new bone.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if !regeneration::is_preservation(j.plan) {
        return None;
    }
    situation(match j.plan.graft_laid()?.material {
        c::GraftMaterial::Autograft | c::GraftMaterial::Synthetic => "other",
        _ => "predictable-shape",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::preserved;
    use crate::rules::trial::Trial;

    #[test]
    fn no_material_is_a_fault_in_a_preserved_socket() {
        assert_eq!(preserved().zone(&RULE), Some(Zone::Ideal));
        let mut trial = preserved();
        trial.keys(&[("graft-material", "xenograft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = preserved();
        trial.keys(&[("graft-material", "synthetic")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = preserved();
        trial.keys(&[("graft-material", "autograft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
    }

    #[test]
    fn beside_an_implant_other_rules_speak() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
