//! An interim plate that rests on a fresh implant.

use crate::plan::{Component, choices::Interim};
use crate::rules::prelude::*;

/// Let nothing press on a fresh implant while it heals.
pub(super) static RULE: Rule = Rule {
    id: "pressed-on-while-healing",
    ledger: "micromotion-limit",
    family: Family::Stability,
    step: Step::Seating,
    skill: Skill::Stability,
    statement: long!("Let nothing press on a fresh implant while it heals."),
    why: long!(
        "A plate that rests on the site pushes the implant with every bite, and you will not see it happen."
    ),
    mend: long!("Give the patient a bonded tooth, or relieve the plate over the site."),
    scale: Scale::Situations(&[
        when("free", "nothing presses on the implant while it heals", Zone::Ideal),
        when(
            "on-closed-gum",
            "a removable plate rests on the gum over the implant",
            Zone::Suboptimal,
        ),
        when(
            "on-the-part",
            "a removable plate rests on the part that stands on the implant",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Interim, Decision::Component],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Greenstein and Cavallaro 2017, Compendium",
            "Movement at the interface past 100 to 150 micrometres is harmful in the first 6 to 8 weeks.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "no denture pressure on a healing abutment",
            "A healing abutment is for sites without a provisional and without pressure from a denture.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let component = j.plan.component()?;
    let worn = j.plan.intention.as_ref()?.interim?;
    Some(Reading::Situation(match (worn, component) {
        (Interim::PressingPlate, Component::CoverScrew) => "on-closed-gum",
        (Interim::PressingPlate, _) => "on-the-part",
        _ => "free",
    }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_resting_plate_is_worst_on_a_part_through_the_gum() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("interim", "plate-on-site")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("component", "cover-screw")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        trial.keys(&[("interim", "relieved-plate")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
