//! A socket that waits for months is grafted where it shows or its walls are thin.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "socket-left-ungrafted-before-late-return",
    ledger: "arp-indication",
    family: Family::Timing,
    step: Step::ReEntry,
    skill: Skill::Grafting,
    statement: long!(
        "Graft the socket when the implant waits longer than eight weeks and the site shows or its walls are thin or damaged."
    ),
    why: long!(
        "An untreated socket loses about 4 mm of width in six months, more behind a thin wall."
    ),
    mend: long!("Preserve the ridge with a graft, or return at four to eight weeks."),
    scale: Scale::Situations(&[
        when("grafted", "the socket was grafted before the long wait", Zone::Ideal),
        when("early-return", "the implant follows within eight weeks", Zone::Ideal),
        when(
            "ungrafted-hidden",
            "a socket with a thin or damaged wall waits ungrafted where it does not show",
            Zone::Suboptimal,
        ),
        when(
            "ungrafted-visible",
            "a visible socket waits ungrafted for more than eight weeks",
            Zone::Compromising,
        ),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::SeatingAct,
        Decision::GraftMaterial,
        Decision::PlaceAfter,
        Decision::HealedAct,
        Decision::WaitFor,
        Decision::AgainAct,
        Decision::WaitForLast,
    ],
    rests_on: &[Fact::FacialWall, Fact::FacialThickness, Fact::SmileLine],
    causes: &[Cause::Underfilled],
    evidence: &[
        says(
            Source::Consensus,
            Status::Partly,
            "Tonetti 2019, extraction socket and timing of implant placement, J Clin Periodontol",
            "graft the socket when the implant is delayed",
        ),
        says(
            Source::Opinion,
            Status::Partly,
            "Kim & Ku 2020, \"Extraction socket preservation\", JKAOMS",
            "thin or damaged walls and visible sites are indications",
        ),
        says(
            Source::SystematicReview,
            Status::Confirmed,
            "Tan 2012, COIR",
            "untreated: 3.79 +/- 0.23 mm of width and 1.24 +/- 0.11 mm of facial height lost in six months",
        ),
        says(
            Source::SystematicReview,
            Status::FromMemory,
            "Cochrane review 2021",
            "very low certainty, no clear benefit for aesthetics or failure",
        ),
    ],
    measure,
};

/// Weeks: the end of the early window.
const EARLY: i32 = 8;
/// Thin plate: less than 1 mm.
const THIN: f64 = 1.0;

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let Judging { case, plan, m, .. } = *judging;
    let weeks = plan.later.decided()?.after;
    if ask::is_acute(&case.site.lesion) {
        return None;
    }
    let thin =
        !case.site.defects.is_empty() || m.facial_plate().is_some_and(|plate| plate.get() < THIN);
    if !thin && !case.site.is_aesthetic() {
        return None;
    }
    situation(match (plan.graft_laid().is_some(), case.site.is_aesthetic()) {
        (true, _) => "grafted",
        (false, _) if weeks <= EARLY => "early-return",
        (false, true) => "ungrafted-visible",
        (false, false) => "ungrafted-hidden",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Lesion;
    use crate::rules::trial::Trial;
    use crate::units::Mm;

    fn waiting(course: &str, weeks: i32) -> Trial {
        let mut trial = Trial::plain();
        trial.course(course).number(Decision::PlaceAfter, weeks);
        trial
    }

    #[test]
    fn eight_weeks_need_no_graft_and_nine_do() {
        assert_eq!(waiting("return-early", 8).zone(&RULE), Some(Zone::Ideal));
        assert_eq!(waiting("return-early", 9).zone(&RULE), Some(Zone::Compromising));
        assert_eq!(waiting("graft-and-return", 18).zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn pus_is_no_place_for_a_graft_so_the_rule_is_silent() {
        let mut trial = waiting("let-heal", 14);
        trial.case.site.lesion = Lesion::Abscess { diameter: Mm::new(4.0) };
        assert_eq!(trial.zone(&RULE), None);
    }
}
