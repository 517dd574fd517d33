//! An implant that touches the facial plate.

use crate::rules::prelude::*;
use crate::units::comparable;

/// Do not let the implant touch an intact facial plate.
pub(super) static RULE: Rule = Rule {
    id: "facial-plate-touched",
    ledger: "pos-facial-clearance",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!("Do not let the implant touch an intact facial plate."),
    why: long!(
        "Pressed bone resorbs, and this plate has little to give; you lose it where everybody looks."
    ),
    mend: long!("Move the implant to the oral side, or choose a narrower one."),
    scale: Scale::Situations(&[
        when("clear", "the implant stands clear of the facial plate", Zone::Ideal),
        when("touched", "the implant touches the facial plate", Zone::Compromising),
    ]),
    agreement: Agreement::Agreed,
    positions: None,
    reads: &[Decision::OffsetFacial, Decision::Diameter, Decision::Depth, Decision::Tilt],
    rests_on: &[],
    causes: &[Cause::ImplantTooFacial, Cause::ImplantTooWide],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Levine 2017, ten keys for immediate placement, Compendium",
            "The implant goes against the palatal wall and leaves a gap in front.",
        ),
        says(
            Source::Opinion,
            Status::FromMemory,
            "Buser 2004, Int J Oral Maxillofac Implants",
            "The platform never touches the facial plate.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    j.plan.implant_in_place()?;
    let gap = j.m.facial_gap()?;
    if !gap.wall_present {
        return None;
    }
    situation(if comparable(gap.width.get()) > 0.0 { "clear" } else { "touched" })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    #[test]
    fn the_geometry_tells_contact_from_a_gap() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::OffsetFacial, 14);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
