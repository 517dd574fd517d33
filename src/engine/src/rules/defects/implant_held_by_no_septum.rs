//! What the septum of a molar is to the implant that was placed.

use crate::measure::SeptumClass;
use crate::rules::prelude::*;
use crate::rules::septum;

pub(super) static RULE: Rule = Rule {
    id: "implant-held-by-no-septum",
    ledger: "class-molar-septum",
    family: Family::Defects,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Set a molar implant where the septum holds it wholly or in part; where it holds nothing, stage."
    ),
    why: long!(
        "An implant in the room that a root has left is as wide of the crown as it is of the bone."
    ),
    mend: long!("Move the implant into the septum, or take it out and graft."),
    scale: Scale::Situations(&[
        when("contained", "the septum and what lies beyond it contain the implant", Zone::Ideal),
        when("in-part", "the septum holds the implant in part", Zone::Acceptable),
        when(
            "wide-on-walls",
            "the septum holds nothing of it, and a wide implant stands on the walls of the socket",
            Zone::Debated,
        ),
        when("beside", "the septum holds next to nothing of the implant", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: Some(Positions {
        one: long!(
            "Where the septum holds nothing, a wide implant may stand on the socket's walls."
        ),
        other: long!("Where the septum holds nothing, graft and return."),
    }),
    reads: &[
        Decision::Diameter,
        Decision::Length,
        Decision::OffsetFacial,
        Decision::OffsetDistal,
        Decision::Depth,
        Decision::Tilt,
        Decision::Tip,
    ],
    rests_on: &[Fact::RootForm],
    causes: &[Cause::NoHold],
    evidence: &[
        septum::BY_NAMES,
        septum::THREE_KINDS,
        says(
            Source::Ours,
            Status::Ours,
            "this project",
            "contained is 99 % of the side below the furcation in bone, nothing is less than 10 % of it in the septum, a wide implant is one of 6 mm with half of that side in bone",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let implant = j.plan.implant_in_place()?;
    if !ask::has_septum(j.case) {
        return None;
    }
    situation(match j.m.septum_class()? {
        SeptumClass::A => "contained",
        SeptumClass::B => "in-part",
        SeptumClass::C if ask::stands_on_walls(j.m, implant) => "wide-on-walls",
        SeptumClass::C => "beside",
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn an_implant_in_the_socket_of_one_root_has_no_septum() {
        let mut trial = Trial::molar();
        assert_eq!(trial.zone(&RULE), Some(Zone::Acceptable));
        trial.number(Decision::Diameter, 30).number(Decision::Depth, 25);
        trial.number(Decision::Length, 80).number(Decision::OffsetDistal, 31);
        trial.number(Decision::Tip, 8);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }

    #[test]
    fn a_septum_wide_enough_contains_it() {
        let mut trial = Trial::molar();
        trial.roots_moved_by(1.3).number(Decision::Diameter, 30);
        trial.number(Decision::Depth, 15).number(Decision::Length, 80);
        assert_eq!(trial.reading(&RULE), Some(Reading::Situation("contained")));
    }

    #[test]
    fn one_root_has_no_septum_to_ask_about() {
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
