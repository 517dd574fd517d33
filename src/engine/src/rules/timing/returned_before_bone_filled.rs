//! Letting a socket heal means at least twelve weeks.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "returned-before-bone-filled",
    ledger: "timing-class-definitions",
    family: Family::Timing,
    step: Step::ReEntry,
    skill: Skill::FollowingUp,
    statement: long!(
        "Let a socket heal for at least twelve weeks before you call the site healed."
    ),
    why: long!(
        "Bone fills the socket from its base over months. Earlier than that the soft tissue has closed and the bone has not."
    ),
    mend: long!(
        "Plan the implant for twelve weeks or more after the extraction, or call it early placement."
    ),
    scale: Scale::Bands(Bands {
        quantity: "time from extraction to placement",
        unit: "weeks",
        lowest: Zone::Suboptimal,
        cuts: &[
            Cut::from(12.0, Zone::Acceptable),
            Cut::past(16.0, Zone::Debated).published(16.0, 26.0),
            Cut::past(26.0, Zone::Ideal).published(16.0, 26.0),
        ],
    }),
    agreement: Agreement::Agreed,
    positions: Some(Positions {
        one: long!("type 4 begins after 16 weeks (2004 wording)."),
        other: long!("type 4 begins after six months (2009 and 2018 wording)."),
    }),
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
            "type 3 is 12 to 16 weeks with partial bone fill, type 4 more than 16 weeks",
        ),
        says(
            Source::Consensus,
            Status::Confirmed,
            "Gallucci 2018, placement and loading protocols, COIR",
            "type 4 is more than six months",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if judging.plan.course()? != c::Course::LetHeal {
        return None;
    }
    number(f64::from(judging.plan.later.decided()?.after))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn twelve_weeks_is_the_least_and_the_name_of_five_months_is_debated() {
        for (weeks, zone) in [
            (11.0, Zone::Suboptimal),
            (12.0, Zone::Acceptable),
            (14.0, Zone::Acceptable),
            (16.0, Zone::Acceptable),
            (17.0, Zone::Debated),
            (26.0, Zone::Debated),
            (27.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, weeks), zone, "{weeks}");
        }
    }

    #[test]
    fn only_letting_heal_is_measured() {
        let mut trial = Trial::plain();
        assert_eq!(trial.reading(&RULE), None);
        trial.course("let-heal");
        assert_eq!(trial.reading(&RULE), Some(Reading::Number(14.0)));
    }
}
