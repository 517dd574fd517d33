//! Early placement means four to eight weeks.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "returned-outside-the-early-window",
    ledger: "timing-class-definitions",
    family: Family::Timing,
    step: Step::ReEntry,
    skill: Skill::FollowingUp,
    statement: long!("Plan early placement for four to eight weeks after the extraction."),
    why: long!(
        "Before four weeks the gum is not closed over the socket. After eight weeks bone shrinks and the name no longer fits."
    ),
    mend: long!("Plan the implant for four to eight weeks after the extraction."),
    scale: Scale::Bands(Bands {
        quantity: "time from extraction to placement",
        unit: "weeks",
        lowest: Zone::Suboptimal,
        cuts: &[Cut::from(4.0, Zone::Ideal), Cut::past(8.0, Zone::Acceptable)],
    }),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[
        Decision::Course,
        Decision::AfterExtraction,
        Decision::AfterFlap,
        Decision::SeatingAct,
        Decision::PlaceAfter,
        Decision::HealedAct,
        Decision::WaitFor,
        Decision::AgainAct,
        Decision::WaitForLast,
    ],
    rests_on: &[Fact::History],
    causes: &[],
    evidence: &[
        says(
            Source::Consensus,
            Status::Confirmed,
            "Hammerle, Chen & Wilson 2004, timing of implant placement, IJOMI",
            "type 2 is placement at 4 to 8 weeks, with the soft tissue healed",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "Gallucci 2018, placement and loading protocols, COIR",
            "keeps the same window",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if judging.plan.course()? != c::Course::ReturnEarly {
        return None;
    }
    number(f64::from(judging.plan.later.decided()?.after))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn the_window_runs_from_four_to_eight_weeks() {
        for (weeks, zone) in [
            (3.0, Zone::Suboptimal),
            (4.0, Zone::Ideal),
            (6.0, Zone::Ideal),
            (8.0, Zone::Ideal),
            (9.0, Zone::Acceptable),
        ] {
            assert_eq!(zone_at(&RULE, weeks), zone, "{weeks}");
        }
    }

    #[test]
    fn only_the_early_course_is_measured() {
        let mut trial = Trial::plain();
        assert_eq!(trial.reading(&RULE), None);
        trial.course("return-early");
        assert_eq!(trial.reading(&RULE), Some(Reading::Number(6.0)));
    }
}
