//! No film once the implant is seated.

use crate::rules::prelude::*;

/// Take a film once the implant is seated.
pub(super) static RULE: Rule = Rule {
    id: "seat-not-checked-on-film",
    ledger: "common-practice",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Take a film once the implant is seated."),
    why: long!(
        "It is the record from which you read every later change of bone, and the last look before you close."
    ),
    mend: long!("Take a film after seating."),
    scale: Scale::Situations(&[
        when("taken", "a film is taken once the implant is seated", Zone::Ideal),
        when("not-taken", "no film is taken once the implant is seated", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::SeatingFilm],
    rests_on: &[],
    causes: &[],
    evidence: &[says(
        Source::CommonPractice,
        Status::NoSource,
        "film after seating",
        "A film is taken after the early steps and after seating.",
    )],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let taken = j.plan.implant.as_ref()?.seating_film;
    Some(Reading::Situation(if taken { "taken" } else { "not-taken" }))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn a_missing_film_is_outside() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("seating-film", "no")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }
}
