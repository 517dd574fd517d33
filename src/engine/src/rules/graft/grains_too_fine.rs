//! Graft: use grains of 0.25 to 1.0 mm rather than dust.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "grains-too-fine",
    ledger: "graft-particle-size",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Use grains of 0.25 to 1.0 mm rather than dust."),
    why: long!("Dust forms less bone than grains do, so the space that you filled does not hold."),
    mend: long!("Choose grains of 0.25 to 1.0 mm."),
    scale: Scale::Situations(&[
        when("dust", "the grains are under 0.1 mm", Zone::Suboptimal),
        when("grains", "the grains are large enough to hold their space", Zone::Ideal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::GraftMaterial, Decision::GrainSize],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Particulate bone allograft incorporation in regeneration of osseous defects, animal",
            "0.09 to 0.3 mm healed fastest, under 0.1 mm poorer, under 0.075 mm failed.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "teaching on grain size",
            "0.25 to 1.0 mm is the usual range.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let graft = j.plan.graft_laid()?;
    let fine = graft.grains == c::GrainSize::Dust;
    situation(if fine { "dust" } else { "grains" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn only_dust_is_too_fine() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("grain-size", "under-0.1")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = Trial::plain();
        trial.keys(&[("grain-size", "1.0-2.0")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn without_a_graft_there_are_no_grains() {
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
