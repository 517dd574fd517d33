//! Graft: wet the graft before you carry it in.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "graft-dry",
    ledger: "graft-hydration-compaction",
    family: Family::Graft,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!("Wet the graft before you carry it in."),
    why: long!(
        "Dry grains scatter, trap air and draw the blood away from where you want the clot."
    ),
    mend: long!("Wet it with sterile saline or the patient's blood until it holds together."),
    scale: Scale::Situations(&[
        when("wetted", "the graft was wetted to a paste", Zone::Ideal),
        when("dry", "the graft was carried in dry", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::GraftMaterial, Decision::Wetting],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "graft wetted before transfer",
            "Sterile saline or sterile water to a paste-like handling; dry is outside.",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "teaching on hydration",
            "About 5 to 15 minutes in saline or blood.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let dry = j.plan.graft_laid()?.wetting == c::Wetting::Dry;
    situation(if dry { "dry" } else { "wetted" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn saline_and_blood_serve_alike_and_dry_grains_do_not() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("wetting", "blood")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("wetting", "dry")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn without_a_graft_nothing_is_wetted() {
        let mut trial = Trial::plain();
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), None);
    }
}
