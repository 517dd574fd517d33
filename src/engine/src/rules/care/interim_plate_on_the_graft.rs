//! Nothing presses on a grafted socket.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "interim-plate-on-the-graft",
    ledger: "care-interim",
    family: Family::Care,
    step: Step::Graft,
    skill: Skill::FollowingUp,
    statement: long!("Keep the interim tooth clear of a grafted socket."),
    why: long!("A plate that presses moves the grains and opens the edges of the wound."),
    mend: long!("Relieve the plate over the site, or bond a tooth to the neighbours."),
    scale: Scale::Situations(&[
        when("clear", "what is worn meanwhile stays clear of the graft", Zone::Ideal),
        when("presses", "a plate rests on the grafted socket", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::Interim,
        Decision::GraftMaterial,
    ],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::NoSource,
            "habit of the trade",
            "no pressure from the interim tooth",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "healing abutments",
            "no denture pressure",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let plan = judging.plan;
    if plan.implant_in_place().is_some() {
        return None;
    }
    plan.graft_laid()?;
    let worn = plan.intention.as_ref()?.interim?;
    situation(if worn == c::Interim::PressingPlate { "presses" } else { "clear" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_plate_on_the_graft_is_a_fault_and_a_relieved_one_is_not() {
        let mut trial = Trial::plain();
        trial.keys(&[("interim", "plate-on-site")]);
        assert_eq!(trial.zone(&RULE), None, "with an implant another rule judges");
        trial.course("graft-and-return");
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.keys(&[("interim", "relieved-plate")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
