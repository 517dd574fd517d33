//! Closure and follow-up: check the seat of the impression part on a film.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "impression-seat-unchecked",
    ledger: "common-practice",
    family: Family::Closure,
    step: Step::Restoration,
    skill: Skill::FollowingUp,
    statement: long!("Check the seat of the impression part on a film."),
    why: long!(
        "A part that stands off by a hair makes a crown that does not fit, and your finger cannot feel it under the gum."
    ),
    mend: long!("Take a film before the impression."),
    scale: Scale::Situations(&[
        when("film", "the seat was checked on a film", Zone::Ideal),
        when("feel", "the seat was checked by feel only", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::SeatCheck],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::CommonPractice,
        Status::NoSource,
        "seat of an impression part",
        "Checked on a film.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    situation(match j.plan.later.restoration.as_ref()?.seat_check {
        c::SeatCheck::Film => "film",
        c::SeatCheck::Feel => "feel",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::regeneration::preserved;
    use crate::rules::trial::Trial;

    #[test]
    fn feel_alone_costs_a_little() {
        assert_eq!(Trial::plain().zone(&RULE), Some(Zone::Ideal));
        let mut trial = Trial::plain();
        trial.keys(&[("seat-check", "feel")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn without_an_implant_there_is_no_seat() {
        assert_eq!(preserved().zone(&RULE), None);
    }
}
