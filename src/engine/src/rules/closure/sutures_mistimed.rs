//! Closure and follow-up: take sutures out after 7 to 14 days, best after 7 to 10.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "sutures-mistimed",
    ledger: "suture-choice-removal",
    family: Family::Closure,
    step: Step::Review,
    skill: Skill::FollowingUp,
    statement: long!("Take sutures out after 7 to 14 days, best after 7 to 10."),
    why: long!("Before a week the edges part; after two the thread feeds what it once held."),
    mend: long!("Book suture removal between day 7 and day 10."),
    scale: Scale::Bands(Bands {
        quantity: "time to suture removal",
        unit: "days",
        lowest: Zone::Suboptimal,
        cuts: &[
            Cut::from(7.0, Zone::Ideal).published(7.0, 10.0),
            Cut::past(10.0, Zone::Acceptable).published(7.0, 14.0),
            Cut::past(14.0, Zone::Suboptimal).published(10.0, 14.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Membrane, Decision::ContourLayer, Decision::SuturesOut],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Trial,
            Status::Confirmed,
            "native bilayer membrane in ridge preservation, trial protocol",
            "Sutures out at 7 to 10 days.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "sutures removed after about a week",
            "About 7 days.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if regeneration::is_guided(j.case, j.plan) {
        return None;
    }
    number(f64::from(j.plan.returns.as_ref()?.sutures_out?))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::repaired;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (6.999, Zone::Suboptimal),
            (7.0, Zone::Ideal),
            (7.001, Zone::Ideal),
            (9.999, Zone::Ideal),
            (10.0, Zone::Ideal),
            (10.001, Zone::Acceptable),
            (13.999, Zone::Acceptable),
            (14.0, Zone::Acceptable),
            (14.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_days_are_read_from_the_plan() {
        let mut trial = Trial::plain();
        trial.number(Decision::SuturesOut, 6);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = Trial::plain();
        trial.number(Decision::SuturesOut, 7);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.number(Decision::SuturesOut, 10);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.number(Decision::SuturesOut, 11);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = Trial::plain();
        trial.number(Decision::SuturesOut, 14);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = Trial::plain();
        trial.number(Decision::SuturesOut, 15);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn regeneration_has_a_band_of_its_own() {
        assert_eq!(repaired().zone(&RULE), None);
    }
}
