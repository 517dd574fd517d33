//! A grafted socket waits four months for its implant.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "returned-too-soon-after-graft",
    ledger: "arp-indication",
    family: Family::Timing,
    step: Step::ReEntry,
    skill: Skill::FollowingUp,
    statement: long!(
        "Wait at least four months after grafting a socket before you place the implant."
    ),
    why: long!("The graft has to be built through with bone before threads can hold in it."),
    mend: long!("Plan the implant for seventeen weeks or more after the extraction."),
    scale: Scale::Bands(Bands {
        quantity: "time from graft to placement",
        unit: "weeks",
        lowest: Zone::Suboptimal,
        cuts: &[
            Cut::from(13.0, Zone::Debated).published(13.0, 26.0),
            Cut::from(17.0, Zone::Ideal).published(13.0, 26.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("four months is the least."),
        other: long!("three months will do; others wait six."),
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
    causes: &[Cause::EnteredTooSoon],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Kim & Ku 2020, \"Extraction socket preservation\", JKAOMS",
            "re-entry at four months or more",
        ),
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "load-healing habit of several authors",
            "preserved sockets 4 to 6 months; the range 3 to 6 is quoted",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    if judging.plan.course()? != c::Course::GraftAndReturn {
        return None;
    }
    judging.plan.graft_laid()?;
    number(f64::from(judging.plan.later.decided()?.after))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn three_months_open_the_debate_and_four_close_it() {
        for (weeks, zone) in [
            (8.0, Zone::Suboptimal),
            (12.0, Zone::Suboptimal),
            (13.0, Zone::Debated),
            (16.0, Zone::Debated),
            (17.0, Zone::Ideal),
            (40.0, Zone::Ideal),
        ] {
            assert_eq!(zone_at(&RULE, weeks), zone, "{weeks}");
        }
    }

    #[test]
    fn without_a_graft_there_is_nothing_to_wait_for() {
        let mut trial = Trial::plain();
        trial.course("graft-and-return");
        assert_eq!(trial.reading(&RULE), Some(Reading::Number(18.0)));
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.reading(&RULE), None);
    }
}
