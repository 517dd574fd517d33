//! The diameter of a molar implant against its septum.

use crate::rules::prelude::*;
use crate::rules::septum;

pub(super) static RULE: Rule = Rule {
    id: "implant-wider-than-the-septum",
    ledger: "class-molar-septum",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Know by how much a molar implant is wider than the septum that is to hold it."
    ),
    why: long!(
        "A narrower implant stands in bone all round; a wider one carries the crown better and stands in part in the roots' sockets."
    ),
    mend: long!("Weigh the next narrower diameter against what the crown asks for."),
    scale: Scale::Bands(Bands {
        quantity: "width of the implant beyond the room in the septum",
        unit: "mm",
        lowest: Zone::Ideal,
        cuts: &[Cut::past(0.0, Zone::Debated)],
    }),
    agreement: Agreement::Contested,
    positions: Some(Positions {
        one: long!("The septum is to contain the implant, so its width sets the diameter."),
        other: long!(
            "Molars take 4.5 to 6 mm; what the septum does not hold is grafted or stands on the walls."
        ),
    }),
    reads: &[Decision::Diameter],
    rests_on: &[Fact::RootForm],
    causes: &[],
    evidence: &[
        septum::BY_NAMES,
        septum::THREE_KINDS,
        says(
            Source::Textbook,
            Status::FromMemory,
            "usual sizes by tooth",
            "4.5 to 6 mm at molar sites.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let implant = j.plan.implant_in_place()?;
    if !ask::has_septum(j.case) {
        return None;
    }
    let room = j.m.septum_room(ask::BELOW_FURCATION)?;
    Some(Reading::Number((implant.diameter - room).get().max(0.0)))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn any_width_beyond_the_room_is_debated_and_never_marked() {
        for (beyond, zone) in [(0.0, Zone::Ideal), (0.001, Zone::Debated), (3.0, Zone::Debated)] {
            assert_eq!(zone_at(&RULE, beyond), zone, "{beyond}");
        }
        assert_eq!(crate::rules::weight_of(RULE.cost()), 0);
    }

    #[test]
    fn a_wide_implant_in_an_ordinary_septum_is_debated() {
        let mut trial = Trial::molar();
        assert_eq!(trial.zone(&RULE), Some(Zone::Debated));
        trial.roots_moved_by(1.3).number(Decision::Diameter, 30);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        assert_eq!(Trial::plain().zone(&RULE), None);
    }
}
