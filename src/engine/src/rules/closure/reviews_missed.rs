//! Closure and follow-up: book the reviews: two weeks, six weeks, four months, restoration, then every year.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "reviews-missed",
    ledger: "review-schedule",
    family: Family::Closure,
    step: Step::Review,
    skill: Skill::FollowingUp,
    statement: long!(
        "Book the reviews: two weeks, six weeks, four months, restoration, then every year."
    ),
    why: long!("What you do not look at you find out about when it hurts."),
    mend: long!("Book the reviews that are missing."),
    scale: Scale::Bands(Bands {
        quantity: "left out",
        unit: "reviews",
        lowest: Zone::Ideal,
        cuts: &[Cut::from(1.0, Zone::Acceptable), Cut::from(2.0, Zone::Suboptimal)],
    }),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::Reviews],
    rests_on: &[],
    causes: &[],
    evidence: &[
        says(
            Source::CommonPractice,
            Status::FromMemory,
            "review schedule",
            "7 to 14 days, 4 to 6 weeks, 3 to 4 months, at restoration, then every 6 to 12 months.",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "how many may be missing",
            "One missing review is acceptable, two are not.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    use c::Review as Of;
    let booked = j.plan.returns.as_ref()?.reviews;
    let implant = j.plan.implant_in_place().is_some();
    let healing = implant || j.plan.graft_laid().is_some();
    j.plan.extraction.as_ref()?;
    let asked = [
        (Of::TwoWeeks, true),
        (Of::SixWeeks, healing),
        (Of::FourMonths, healing),
        (Of::Restoration, implant),
        (Of::Yearly, implant),
    ];
    let missing = asked.iter().filter(|(review, asked)| *asked && !booked.has(*review)).count();
    u32::try_from(missing).ok().map(|missing| Reading::Number(f64::from(missing)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::preserved;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn at_just_under_and_just_over_each_cut() {
        for (value, zone) in [
            (0.999, Zone::Ideal),
            (1.0, Zone::Acceptable),
            (1.001, Zone::Acceptable),
            (1.999, Zone::Acceptable),
            (2.0, Zone::Suboptimal),
            (2.001, Zone::Suboptimal),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }

    #[test]
    fn one_review_may_be_missing_and_two_may_not() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("reviews", "two-weeks six-weeks four-months restoration")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        let mut trial = Trial::plain();
        trial.keys(&[("reviews", "two-weeks six-weeks four-months")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn a_preserved_socket_has_no_restoration_to_review() {
        let mut trial = preserved();
        trial.keys(&[("reviews", "two-weeks six-weeks four-months")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn after_an_extraction_alone_the_first_review_is_enough() {
        let mut trial = Trial::plain();
        trial.number(Decision::PlaceAfter, 20);
        trial.keys(&[("course", "let-heal"), ("reviews", "two-weeks")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }
}
