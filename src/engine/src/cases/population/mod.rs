//! Population draws (generator 2): cases as teeth occur, from published distributions.
//!
//! A teaching case binds what decides something; here nothing is bound. The site is drawn twice over
//! the same streams: as it was *before* anything brought the tooth to extraction, which is what
//! surveys of unselected teeth and skulls describe, and as it is *referred*, with what the cause of
//! extraction has done to it. The case is the second; `survey` measures both.
//!
//! Teeth are equally likely: no survey by tooth was read (ours). `tests/data/population.csv` lists
//! every published figure with what these draws make of it.

mod cause;
mod compare;
mod gum;
mod history;
mod plates;
mod quantities;
mod survey;
mod walls;

#[cfg(test)]
mod tests;

pub use compare::{
    BadRow, COLUMNS, Group, Kind, LEVEL, Outcome, Row, Statistic, cells, rows, table,
};
pub use quantities::{QUANTITIES, Quantity};
pub use survey::Surveyed;

use super::archetype::Brief;
use super::draw::{Draws, Field};
use super::patient::Person;
use super::ridge::Levels;
use super::socket::Rooted;
use super::tooth_table::ToothRow;
use super::{FIRST, around, holds_together, patient, ridge, socket, soft};
use crate::anatomy::{Neighbours, Site, Socket, Tooth};
use crate::chart::{Case, Complaint, Patient};
use cause::Disease;

/// A site before, or after, what brought its tooth to extraction.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Layer {
    Before,
    Referred,
}

/// What both layers of a site share.
struct Anatomy {
    person: Person,
    cause: Complaint,
    rooted: Rooted,
    neighbours: Neighbours,
    plates: [Levels; 2],
    /// How thin the facial plate is drawn, in standard deviations above the mean of its tooth.
    cover: f64,
}

/// The tooth of an address; a block of attempts shares it, so that a site that cannot stand does not
/// thin out its tooth.
pub(super) fn tooth_of(draws: &Draws) -> Tooth {
    let teeth: Vec<Tooth> = (1..=4)
        .flat_map(|quadrant| (1..=5).map(move |position| quadrant * 10 + position))
        .filter_map(|iso| Tooth::new(iso).ok())
        .collect();
    draws.block_stream(Field::Tooth).pick(&teeth, FIRST)
}

/// The case of an address.
pub(super) fn draw(draws: &Draws) -> Result<Case, &'static str> {
    let tooth = tooth_of(draws);
    let anatomy = anatomy(draws, tooth)?;
    let site = site(draws, &anatomy, Layer::Referred)?;
    let patient = patient_of(draws, &anatomy, &site);
    Ok(super::assembled(draws, site, patient))
}

fn anatomy(draws: &Draws, tooth: Tooth) -> Result<Anatomy, &'static str> {
    let row = ToothRow::of(tooth).ok_or("a molar has more than one root")?;
    let free = Brief::free();
    let person = patient::person(draws, &free);
    let cause = cause::draw(draws, tooth);
    let neck = plates::neck(draws, row, person.age);
    let rooted = socket::draw(draws, tooth, row, person.sex, neck, &free);
    let neighbours = around::neighbours(draws, &rooted, &free);
    let [facial, oral] = plates::draw(draws, &rooted);
    let cover = facial.cover;
    let plates = [facial.levels, oral.levels];
    Ok(Anatomy { person, cause, rooted, neighbours, plates, cover })
}

fn site(draws: &Draws, anatomy: &Anatomy, layer: Layer) -> Result<Site, &'static str> {
    let Anatomy { person, cause, rooted, neighbours, plates, cover } = anatomy;
    let disease = match layer {
        Layer::Before => Disease::NONE,
        Layer::Referred => cause::disease(draws, *cause),
    };
    let brief = disease.brief();
    let ridge = ridge::around(draws, rooted, neighbours, &brief, *plates);
    let soft = gum::draw(draws, rooted, &ridge, &brief);
    let crown = soft::crown(draws, rooted, &soft);
    let site = Site {
        tooth: rooted.tooth,
        defects: walls::draw(draws, rooted, &ridge, *cover, disease.wall).into_iter().collect(),
        vital: around::vital(draws, rooted, &ridge, neighbours, person.sex, &brief),
        density: around::density(draws, rooted),
        lesion: around::lesion(draws, &brief),
        socket: Socket::one(rooted.root.clone()),
        neighbours: neighbours.clone(),
        ridge,
        soft,
        crown,
    };
    holds_together(&site)?;
    Ok(site)
}

fn patient_of(draws: &Draws, anatomy: &Anatomy, site: &Site) -> Patient {
    let mut patient = patient::draw(draws, anatomy.person, site, &Brief::free());
    patient.complaint = anatomy.cause;
    history::draw(draws, &mut patient);
    patient.asa = patient::asa(&patient);
    patient
}
