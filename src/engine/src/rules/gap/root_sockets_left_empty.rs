//! The room that roots have left beside an implant in a septum.

use crate::measure::SeptumClass;
use crate::rules::prelude::*;
use crate::rules::septum;

pub(super) static RULE: Rule = Rule {
    id: "root-sockets-left-empty",
    ledger: "class-molar-septum",
    family: Family::Gap,
    step: Step::Graft,
    skill: Skill::Grafting,
    statement: long!(
        "Graft the sockets of the roots beside a molar implant that its septum holds only in part."
    ),
    why: long!(
        "Where the septum ends the implant faces the room of a root, wider than any gap that fills by itself."
    ),
    mend: long!("Fill the sockets round the implant with graft."),
    scale: Scale::Situations(&[
        when("filled", "the sockets beside the implant are filled with graft", Zone::Ideal),
        when("empty", "the sockets beside the implant are left empty", Zone::Suboptimal),
    ]),
    agreement: Agreement::NumberVaries,
    positions: Some(Positions {
        one: long!("A septum that holds the implant in part asks for graft beside it."),
        other: long!("Where the margin stays hidden, graft in a gap with whole walls is optional."),
    }),
    reads: &[Decision::GraftMaterial],
    rests_on: &[Fact::RootForm],
    causes: &[Cause::Underfilled],
    evidence: &[
        septum::BY_NAMES,
        septum::THREE_KINDS,
        says(
            Source::Consensus,
            Status::Confirmed,
            "7th consensus conference, group 5, 2023",
            "A gap of more than 2 mm with graft is linked with better results.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let step = j.plan.graft.as_ref()?;
    if !ask::has_septum(j.case) || j.m.septum_class()? == SeptumClass::A {
        return None;
    }
    situation(if step.graft.is_some() { "filled" } else { "empty" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn what_the_septum_does_not_hold_is_filled() {
        let mut trial = Trial::molar();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.keys(&[("graft-material", "no-graft")]);
        assert_eq!(trial.zone(&RULE), Some(Zone::Suboptimal));
    }

    #[test]
    fn one_root_and_a_septum_that_contains_the_implant_leave_nothing_to_fill() {
        assert_eq!(Trial::plain().zone(&RULE), None);
        let mut trial = Trial::molar();
        trial.roots_moved_by(1.3).number(Decision::Diameter, 30);
        trial.number(Decision::Depth, 15).number(Decision::Length, 80);
        assert_eq!(trial.zone(&RULE), None);
    }
}
