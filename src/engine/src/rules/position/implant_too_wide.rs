//! A diameter chosen to fill the socket.

use crate::rules::prelude::*;
use crate::units::Mm;

/// Choose a diameter that leaves 2 mm of gap in the socket and 1.5 mm of bone on either side.
pub(super) static RULE: Rule = Rule {
    id: "implant-too-wide",
    ledger: "dim-diameter",
    family: Family::Position,
    step: Step::Implant,
    skill: Skill::Placing,
    statement: long!(
        "Choose a diameter that leaves 2 mm of gap in the socket and 1.5 mm of bone on either side."
    ),
    why: long!(
        "You buy hold with length and with the palatal wall; width only spends the gap and the bone beside the neighbours."
    ),
    mend: long!("Choose the next narrower diameter."),
    scale: Scale::Bands(Bands {
        quantity: "width of the implant beyond the room for it",
        unit: "mm",
        lowest: Zone::Ideal,
        cuts: &[
            Cut::past(0.0, Zone::Acceptable),
            Cut::past(0.5, Zone::Compromising).published(0.0, 0.5),
        ],
    }),
    agreement: Agreement::Agreed,
    positions: Some(Positions {
        one: long!("Choose the diameter from the gap and the bone that are to stay."),
        other: long!("Older teaching filled the socket with the widest implant."),
    }),
    reads: &[Decision::Diameter],
    rests_on: &[Fact::RootForm, Fact::NeighbourRoots, Fact::SmileLine],
    causes: &[Cause::ImplantTooWide],
    evidence: &[
        says(
            Source::Opinion,
            Status::Confirmed,
            "Maximizing esthetics and function with immediate implants, 2016",
            "The diameter follows bone and gap; filling the socket with the widest implant is discouraged.",
        ),
        says(
            Source::Opinion,
            Status::Confirmed,
            "Levine 2017, ten keys for immediate placement, Compendium",
            "A smaller implant set to the palate leaves a facial gap of 2 mm, or 1.5 mm at the least.",
        ),
        says(
            Source::Textbook,
            Status::FromMemory,
            "usual sizes by tooth",
            "3.3 to 3.8 mm at upper lateral, 3.8 to 4.5 at central, canine and premolar, 4.5 to 6 at molar sites.",
        ),
    ],
    measure,
};

fn measure(j: &Judging<'_>) -> Option<Reading> {
    let diameter = j.plan.implant_in_place()?.diameter;
    let between = j.m.mesiodistal_room()?;
    // Nothing narrower can be chosen than the narrowest, so a small socket is not held against it.
    let asked = j.case.site.is_aesthetic() && diameter > NARROWEST;
    let socket = if asked { j.m.socket_width() } else { None };
    Some(Reading::Number(beyond(diameter, between, socket).get()))
}

/// Narrowest of the stock.
const NARROWEST: Mm = Mm::new(3.0);

/// By how much the diameter is wider than the room between the neighbours less 1.5 mm on either side,
/// or than the faciooral width of the socket less a gap of 2 mm, where that is asked; the greater of
/// the two, and nothing where there is room for it.
fn beyond(diameter: Mm, between: Mm, socket: Option<Mm>) -> Mm {
    let beside = between - Mm::new(3.0);
    let room = socket.map_or(beside, |width| beside.min(width - Mm::new(2.0)));
    (diameter - room).max(Mm::ZERO)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::Kind;
    use crate::rules::trial::{Trial, zone_at};

    #[test]
    fn half_a_millimetre_too_much_still_leaves_an_acceptable_gap() {
        for (value, zone) in [
            (0.0, Zone::Ideal),
            (0.001, Zone::Acceptable),
            (0.499, Zone::Acceptable),
            (0.5, Zone::Acceptable),
            (0.501, Zone::Compromising),
            (1.0, Zone::Compromising),
        ] {
            assert_eq!(zone_at(&RULE, value), zone, "{value}");
        }
    }
    #[test]
    fn the_narrower_of_socket_and_neighbours_decides() {
        let mm = Mm::new;
        let over = |socket| beyond(mm(4.0), mm(8.0), socket).get();
        assert!((over(None) - 0.0).abs() < 1e-9);
        assert!((over(Some(mm(6.0))) - 0.0).abs() < 1e-9);
        assert!((over(Some(mm(5.0))) - 1.0).abs() < 1e-9);
        assert!((beyond(mm(4.0), mm(6.0), Some(mm(8.0))).get() - 1.0).abs() < 1e-9);
    }

    #[test]
    fn the_narrowest_is_the_narrowest_of_the_stock() {
        let Kind::Number(stock) = Decision::Diameter.entry().kind else { panic!("a number") };
        assert_eq!(Mm::from_tenths(stock.least), NARROWEST);
    }

    #[test]
    fn a_socket_too_small_for_any_is_not_held_against_the_narrowest() {
        let mut trial = Trial::plain();
        trial.case.site.socket.only_mut().unwrap().half_fo = Mm::new(2.2);
        trial.number(Decision::Diameter, 35);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
        trial.number(Decision::Diameter, 30);
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
    }

    #[test]
    fn the_widest_implant_does_not_fit_an_incisor() {
        let mut trial = Trial::plain();
        assert_eq!(trial.zone(&RULE), Some(Zone::Ideal));
        trial.number(Decision::Diameter, 60);
        assert_eq!(trial.zone(&RULE), Some(Zone::Compromising));
    }
}
