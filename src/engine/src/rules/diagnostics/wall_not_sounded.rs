//! Bone is sounded before an implant or graft is planned.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "wall-not-sounded",
    ledger: "dx-bone-sounding",
    family: Family::Diagnostics,
    step: Step::Intention,
    skill: Skill::ReadingWalls,
    statement: long!(
        "Sound the bone under anaesthesia before you plan an implant or graft in a fresh socket."
    ),
    why: long!("Sounding finds the lost wall before the plan depends on it."),
    mend: long!("Add bone sounding to the examinations."),
    scale: Scale::Situations(&[
        when("sounded", "the bone was sounded before planning", Zone::Ideal),
        when("sections-only", "the bone was seen on sections and not sounded", Zone::Suboptimal),
        when(
            "neither",
            "an implant or graft is planned, and the wall was neither sounded nor seen on sections",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("sound before and after the extraction."),
        other: long!(
            "what counts is the socket after extraction, so sounding before it is a bonus."
        ),
    }),
    reads: &[Decision::Examinations, Decision::Course],
    rests_on: &[Fact::FacialWall],
    causes: &[Cause::DefectNotLookedFor],
    evidence: &[
        says(
            Source::Cohort,
            Status::Confirmed,
            "Kan 2003, J Periodontol, \"Accuracy of Bone Sounding\"",
            "sounded 3.19 +/- 0.71 against direct 3.47 +/- 1.29 mm",
        ),
        says(
            Source::Opinion,
            Status::FromMemory,
            "Kois",
            "sound before treatment of anterior teeth",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if !ask::is_elective(judging.plan)? {
        return None;
    }
    let examined = judging.plan.examined.as_ref()?;
    situation(if examined.examinations.has(c::Examination::BoneSounding) {
        "sounded"
    } else if examined.sections.is_some() {
        "sections-only"
    } else {
        "neither"
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn sounding_comes_before_planning_and_sections_are_half_of_it() {
        let mut trial = Trial::plain();
        for (examinations, zone) in [
            ("look film bone-sounding", Zone::Ideal),
            ("look film sections", Zone::Suboptimal),
            ("look film probing", Zone::Compromising),
        ] {
            trial.keys(&[("examinations", examinations)]);
            assert_eq!(trial.zone(&RULE), Some(zone), "{examinations}");
        }
        trial.course("let-heal");
        assert_eq!(trial.zone(&RULE), None);
    }
}
