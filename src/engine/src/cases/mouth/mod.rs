//! Teaching draws of the whole mouth (generator 3): 28 sites, molars and two-rooted upper first
//! premolars among them; third molars are left out.
//!
//! Archetypes are spread as those of generator 1 are, with a group of their own for several roots. A
//! site of one root is drawn as there; one of several has its roots from [`super::parted`] and its
//! bone from [`bone`].

mod bone;
mod roots;
mod vital;

#[cfg(test)]
mod tests;

use super::archetype::{Archetype, Brief, Group};
use super::draw::{Draws, Field};
use super::parted::PartedRow;
use super::socket::Rooted;
use super::{Constraints, Drawing, FIRST, NoCase, WHOLE_MOUTH};
use super::{around, assembled, defects, draw_bound, holds_together, patient, soft};
use crate::anatomy::{Jaw, LipLine, Neighbours, Site, Socket, Tooth};
use crate::chart::{Case, Patient};
use roots::Septum;

/// The case of an address.
pub(super) fn draw(draws: &Draws) -> Result<Case, &'static str> {
    let archetype = archetype_of(draws);
    let tooth = tooth_of(draws, archetype);
    let brief = archetype.brief();
    match row_of(draws, archetype, tooth) {
        None => draw_bound(draws, tooth, &brief),
        Some(row) => {
            let (site, patient) = site_and_patient(draws, tooth, &row, &brief, septum(archetype))?;
            Ok(assembled(draws, site, patient))
        }
    }
}

/// The first case of a seed that meets constraints.
pub(super) fn search(seed: u64, constraints: &Constraints) -> Result<Case, NoCase> {
    let drawn = Drawing { generator: WHOLE_MOUTH, archetype_of, tooth_of, draw };
    drawn.search(seed, constraints)
}

pub(super) fn archetype_of(draws: &Draws) -> Archetype {
    Archetype::draw(&mut draws.block_stream(Field::Archetype), &Group::ALL)
}

fn tooth_of(draws: &Draws, archetype: Archetype) -> Tooth {
    draws.stream(Field::Tooth).pick(&archetype.teeth_of_mouth(), FIRST)
}

/// The row of a tooth that has several roots in this draw. Upper first premolars have two in 60.6 %
/// (Dababneh and Rodan 2013, n = 165, confirmed; 26.7 to 72 % elsewhere), and always where that is
/// what the case is about; one where it is about that.
fn row_of(draws: &Draws, archetype: Archetype, tooth: Tooth) -> Option<PartedRow> {
    let row = PartedRow::of(tooth)?;
    let two = archetype == Archetype::TwoRoots || draws.stream(Field::RootCount).chance(0.606);
    (tooth.position() > 4 || two && !archetype.is_about_one_root()).then_some(row)
}

const fn septum(archetype: Archetype) -> Septum {
    match archetype {
        Archetype::WideSeptum => Septum::Wide,
        Archetype::ThinSeptum => Septum::Thin,
        _ => Septum::Free,
    }
}

fn site_and_patient(
    draws: &Draws,
    tooth: Tooth,
    row: &PartedRow,
    brief: &Brief,
    septum: Septum,
) -> Result<(Site, Patient), &'static str> {
    let person = patient::person(draws, brief);
    let socket = roots::socket(draws, tooth, person, septum).ok_or("a tooth has one root here")?;
    let rooted = roots::as_one(draws, tooth, row, person.sex, &socket);
    let neighbours = neighbours(draws, &rooted, brief);
    let ridge = bone::draw(draws, &rooted, &socket, &neighbours, brief);
    let mut soft = soft::draw(draws, &rooted, &ridge, brief);
    let vital = if tooth.position() == 4 {
        around::vital(draws, &rooted, &ridge, &neighbours, person.sex, brief)
    } else {
        soft.lip = lip(draws, tooth.jaw());
        vital::draw(draws, &rooted, &socket, &ridge, person.sex, brief)
    };
    let site = Site {
        tooth,
        defects: defects::draw(draws, &rooted, &ridge, brief),
        vital,
        density: around::density(draws, &rooted),
        lesion: around::lesion(draws, brief),
        crown: soft::crown(draws, &rooted, &soft),
        socket: Socket::Parted(socket),
        neighbours,
        ridge,
        soft,
    };
    holds_together(&site)?;
    let patient = patient::draw(draws, person, &site, brief);
    Ok((site, patient))
}

/// As beside other teeth; behind a second molar there is mostly none (60 %, ours).
fn neighbours(draws: &Draws, rooted: &Rooted, brief: &Brief) -> Neighbours {
    let mut beside = around::neighbours(draws, rooted, brief);
    let gone = draws.stream(Field::ThirdMolar).chance(0.6);
    if rooted.tooth.position() == 7 && gone && !brief.neighbour_implant {
        beside.distal = crate::anatomy::Neighbour::Absent;
    }
    beside
}

/// What shows of a molar at full smile: ours, next to nothing below.
fn lip(draws: &Draws, jaw: Jaw) -> LipLine {
    let [high, middle, low] = match jaw {
        Jaw::Maxilla => [0.03, 0.12, 0.85],
        Jaw::Mandible => [0.0, 0.03, 0.97],
    };
    draws.stream(Field::Lip).weighted(
        &[(LipLine::High, high), (LipLine::Middle, middle), (LipLine::Low, low)],
        LipLine::Low,
    )
}
