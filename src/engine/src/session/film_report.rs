//! What a reader writes of a film: what its aim leaves to be read, and of the rest, that it cannot be
//! read and what to do instead.

use super::Exposure;
use crate::chart::Case;
use crate::imaging::{Aim, Legible, legible};
use crate::plan::choices::FilmQuestion;
use crate::units::Mm;

/// How far a length may be drawn off its true measure and still be read (ours: a millimetre of a root of
/// twenty).
const TRUE: f64 = 0.05;
/// How far the tube may be off up and down before what lies beside the tooth, as floor and canal, is
/// drawn at another level, degrees (ours).
const LEVEL: u8 = 15;

/// The film that is read: how it was aimed and its number among those of its moment, from 1.
#[derive(Debug, Clone, Copy)]
pub(super) struct Newest {
    pub exposure: Exposure,
    pub number: usize,
}

/// The report of the newest film of the examination.
pub(super) fn report(case: &Case, film: Newest, asked: Option<FilmQuestion>) -> Vec<String> {
    let Newest { exposure, number } = film;
    let seen = legible(&case.site, &exposure.aim(Aim::usual(&case.site)));
    let level = exposure.vertical.unsigned_abs() <= LEVEL;
    let true_length = (seen.length - 1.0).abs() <= TRUE;
    let mut lines = Vec::new();
    if number > 1 {
        lines.push(format!("Read off film {number}."));
    }
    lines.extend(root_and_apex(case, seen));
    if let Some(floor) = case.readings.film_floor.filter(|_| seen.apex) {
        lines.push(if level && true_length {
            super::reports::to_floor("Apex to the floor above", floor)
        } else {
            "The floor above shows, and not at its level: its distance cannot be read.".to_owned()
        });
    }
    if !seen.between {
        lines.push(
            "The necks of the teeth lie close or over each other: the bone between them cannot be read."
                .to_owned(),
        );
    }
    lines.push(format!(
        "Facial and {} walls lie over each other: this film cannot show whether either is whole.",
        case.site.tooth.oral_word()
    ));
    let answered = match asked {
        Some(FilmQuestion::RootAndApex) => seen.apex && true_length && seen.between,
        Some(FilmQuestion::FloorOrCanal) => seen.apex && true_length && level,
        // No aim answers the one, and nothing was asked by the other.
        _ => true,
    };
    if let Some(asked) = asked.filter(|_| !answered) {
        lines.push(format!("Not answered: {}. {}", asked.label(), again(case, exposure)));
    }
    lines
}

fn root_and_apex(case: &Case, seen: Legible) -> Vec<String> {
    if !seen.apex {
        return vec!["The apex is not on this film: neither the root's length nor anything at its apex can be read.".to_owned()];
    }
    let readings = &case.readings;
    let off = seen.length - 1.0;
    let drawn = |way: &str| {
        format!("The root is drawn {way} by {:.0} %: no length can be read.", 100.0 * off.abs())
    };
    let across = |across: Mm| {
        if off.abs() > TRUE {
            "A radiolucency at the apex; how far across cannot be read.".to_owned()
        } else {
            format!("A radiolucency at the apex, {:.1} mm across.", across.get())
        }
    };
    vec![
        if off > TRUE {
            drawn("too long")
        } else if off < -TRUE {
            drawn("too short")
        } else {
            format!("Root from crest to apex: {:.1} mm.", readings.film_root_length.get())
        },
        readings.film_lesion.map_or_else(|| "No radiolucency at the apex.".to_owned(), across),
    ]
}

/// What to do instead.
fn again(case: &Case, exposure: Exposure) -> String {
    let mut ways = Vec::new();
    if exposure.vertical != 0 {
        ways.push("the tube at a right angle to the tooth");
    }
    if exposure.horizontal != 0 {
        ways.push("the tube at a right angle to the arch");
    }
    if exposure.lean != 0 {
        ways.push("the receptor parallel to the tooth");
    }
    let straight = Exposure { size: exposure.size, ..Exposure::PARALLEL };
    if !legible(&case.site, &straight.aim(Aim::usual(&case.site))).apex {
        ways.push("the largest receptor");
    }
    if ways.is_empty() {
        // Straight on the largest receptor, and still: teeth that overlap by themselves.
        return "No other aim would show it better.".to_owned();
    }
    format!("Take it again with {}.", ways.join(", "))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn told(exposure: Exposure, asked: FilmQuestion) -> String {
        let mut case = Trial::plain().case;
        case.readings.film_lesion = Some(Mm::new(4.0));
        case.readings.film_floor = Some(Mm::new(3.0));
        report(&case, Newest { exposure, number: 1 }, Some(asked)).join(" ")
    }

    #[test]
    fn a_film_that_is_aimed_well_is_read_whole() {
        for exposure in
            [Exposure::PARALLEL, Exposure { vertical: -9, horizontal: 9, ..Exposure::PARALLEL }]
        {
            let told = told(exposure, FilmQuestion::RootAndApex);
            assert!(told.contains("Root from crest to apex"), "{told}");
            assert!(told.contains("4.0 mm across") && told.contains("floor above: 3.0"), "{told}");
            assert!(!told.contains("Not answered"), "{told}");
        }
    }

    #[test]
    fn a_leaning_receptor_gives_no_length_and_the_report_says_what_to_do_instead() {
        let steep = Exposure { vertical: 40, lean: 35, ..Exposure::PARALLEL };
        let told = told(steep, FilmQuestion::RootAndApex);
        assert!(told.contains("too short by") && !told.contains("crest to apex"), "{told}");
        assert!(!told.contains("4.0 mm across"), "{told}");
        assert!(told.contains("Not answered: root, apex and neighbours."), "{told}");
        assert!(told.contains("receptor parallel to the tooth"), "{told}");
        assert!(!told.contains("right angle to the arch"), "{told}");
    }

    #[test]
    fn a_tube_off_its_level_shows_a_floor_whose_distance_cannot_be_read() {
        let high = Exposure { vertical: 16, ..Exposure::PARALLEL };
        let told = told(high, FilmQuestion::FloorOrCanal);
        assert!(told.contains("its distance cannot be read"), "{told}");
        assert!(told.contains("Take it again with the tube at a right angle to the tooth."));
    }

    #[test]
    fn no_aim_shows_whether_the_facial_wall_is_whole() {
        let told = told(Exposure::PARALLEL, FilmQuestion::FacialWall);
        assert!(told.contains("cannot show whether either is whole"), "{told}");
    }
}
