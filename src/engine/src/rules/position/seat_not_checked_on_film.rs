//! No film once the implant is seated.

use super::super::{
    Agreement, Evidence, Family, Judging, Reading, Rule, Scale, Situation, Skill, Source, Status,
    Zone,
};
use crate::plan::{Decision, Step};

/// Take a film once the implant is seated.
pub(super) static RULE: Rule = Rule {
    id: "seat-not-checked-on-film",
    ledger: "common-practice",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: "Take a film once the implant is seated.",
    why: "It is the record from which you read every later change of bone, and the last look before you close.",
    mend: "Take a film after seating.",
    scale: Scale::Situations(&[
        Situation {
            key: "taken",
            words: "a film is taken once the implant is seated",
            zone: Zone::Ideal,
        },
        Situation {
            key: "not-taken",
            words: "no film is taken once the implant is seated",
            zone: Zone::Suboptimal,
        },
    ]),
    agreement: Agreement::NumberVaries,
    positions: None,
    reads: &[Decision::SeatingFilm],
    rests_on: &[],
    causes: &[],
    evidence: &[Evidence {
        cite: "film after seating",
        source: Source::CommonPractice,
        status: Status::NoSource,
        says: "A film is taken after the early steps and after seating.",
    }],
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
