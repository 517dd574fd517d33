//! Closure and follow-up: over guided regeneration, take sutures out after 7 to 14 days, best after 10 to 14.

use crate::rules::prelude::*;
use crate::rules::regeneration;

pub(super) static RULE: Rule = Rule {
    id: "sutures-mistimed-over-regeneration",
    ledger: "suture-choice-removal",
    family: Family::Closure,
    step: Step::Review,
    skill: Skill::FollowingUp,
    statement: long!(
        "Over guided regeneration, take sutures out after 7 to 14 days, best after 10 to 14."
    ),
    why: long!(
        "The edges carry more here and need longer, but past two weeks the thread itself opens the way."
    ),
    mend: long!("Book suture removal between day 10 and day 14."),
    scale: Scale::Bands(Bands {
        quantity: "time to suture removal over regeneration",
        unit: "days",
        lowest: Zone::Suboptimal,
        cuts: &[
            Cut::from(7.0, Zone::Acceptable).published(7.0, 10.0),
            Cut::from(10.0, Zone::Ideal).published(10.0, 14.0),
            Cut::past(14.0, Zone::Suboptimal).published(14.0, 14.0),
        ],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Membrane, Decision::ContourLayer, Decision::SuturesOut],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::Textbook,
            Status::FromMemory,
            "teaching on sutures over regeneration",
            "10 to 14 days.",
        ),
        says(
            Source::CommonPractice,
            Status::NoSource,
            "sutures removed after about a week",
            "About 7 days; accepted here and shown beside the longer habit.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    if !regeneration::is_guided(j.case, j.plan) {
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
            (7.0, Zone::Acceptable),
            (7.001, Zone::Acceptable),
            (9.999, Zone::Acceptable),
            (10.0, Zone::Ideal),
            (10.001, Zone::Ideal),
            (13.999, Zone::Ideal),
            (14.0, Zone::Ideal),
            (14.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn the_days_are_read_from_the_plan() {
        let mut trial = repaired();
        trial.number(Decision::SuturesOut, 6);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
        let mut trial = repaired();
        trial.number(Decision::SuturesOut, 7);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.number(Decision::SuturesOut, 9);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = repaired();
        trial.number(Decision::SuturesOut, 10);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::SuturesOut, 14);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        let mut trial = repaired();
        trial.number(Decision::SuturesOut, 15);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn a_flapless_site_has_a_band_of_its_own() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
