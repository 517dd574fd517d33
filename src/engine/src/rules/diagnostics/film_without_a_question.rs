//! A film is taken for a question that it can answer.

use crate::rules::prelude::*;

pub(super) static RULE: Rule = Rule {
    id: "film-without-a-question",
    ledger: "dx-2d-limits",
    family: Family::Diagnostics,
    step: Step::Examination,
    skill: Skill::Patient,
    statement: long!(
        "Take a periapical film for a question that it can answer, before a tooth comes out."
    ),
    why: long!(
        "Each exposure needs a reason. A film shows root, apex, neighbours and floor, never the facial wall."
    ),
    mend: long!("Take one film for root and apex, or for the distance to floor or canal."),
    scale: Scale::Situations(&[
        when("answerable", "the film was taken for a question that it can answer", Zone::Ideal),
        when(
            "sections-instead",
            "no film was taken, and sections show root and apex",
            Zone::Acceptable,
        ),
        when(
            "facial-wall-asked",
            "the film was asked about the facial wall, which it cannot show",
            Zone::Suboptimal,
        ),
        when("no-question", "the film was taken without a question", Zone::Suboptimal),
        when("none-taken", "neither film nor sections were taken", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::Examinations, Decision::FilmQuestion],
    rests_on: &[Fact::RootForm, Fact::ApicalLesion],
    causes: &[],
    evidence: &[
        says(
            Source::Laboratory,
            Status::Confirmed,
            "Bender & Seltzer 1961, J Am Dent Assoc",
            "what lies in front of or behind the root does not show unless the cortex is eroded",
        ),
        says(
            Source::Ours,
            Status::Ours,
            "practice of this project",
            "each exposure asks for its question",
        ),
    ],
    measure,
};

fn measure(judging: &Judging<'_>) -> Option<Reading> {
    let examined = judging.plan.examined.as_ref()?;
    situation(match examined.film {
        Some(c::FilmQuestion::RootAndApex | c::FilmQuestion::FloorOrCanal) => "answerable",
        Some(c::FilmQuestion::FacialWall) => "facial-wall-asked",
        Some(c::FilmQuestion::NoQuestion) => "no-question",
        None if examined.sections.is_some() => "sections-instead",
        None => "none-taken",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn asked(question: &str) -> Option<Zone> {
        let mut trial = Trial::plain();
        trial.keys(&[("film-question", question)]);
        trial.zone(&RULE)
    }

    #[test]
    fn a_film_answers_two_questions_and_not_the_third() {
        assert_eq!(asked("root-and-apex"), Some(Zone::Ideal));
        assert_eq!(asked("floor-or-canal"), Some(Zone::Ideal));
        assert_eq!(asked("facial-wall"), Some(Zone::Suboptimal));
        assert_eq!(asked("no-question"), Some(Zone::Suboptimal));
    }

    #[test]
    fn without_any_image_the_root_is_unknown() {
        let mut trial = Trial::plain();
        trial.keys(&[("examinations", "look sections")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        trial.keys(&[("examinations", "look probing")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
