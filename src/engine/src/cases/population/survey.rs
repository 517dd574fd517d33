//! What surveys would read of these draws: the truth, or the truth through a modelled section.
//!
//! Two sections are modelled, because the surveys used both.
//! - *Fine*: a slab of bone is seen where at least half of its contrast is left after the blur, so from
//!   1.349 sigma on: 0.20 to 0.29 mm for the 0.148 to 0.213 mm of five machines (Schulze and Doering
//!   2019, confirmed). Thickness is read within 0.13, height within 0.30 mm on average (Timock et al.
//!   2011, 65 teeth, confirmed).
//! - *Chair*: the section of the room's own examinations, which does not show a plate under 0.5 to
//!   0.6 mm; the same errors.

use super::{Anatomy, Layer, anatomy, patient_of, site, tooth_of};
use crate::anatomy::{DefectKind, Map, Site, Tooth, Wall};
use crate::cases::draw::{Draws, Field};
use crate::cases::readings::{covers, sounding};
use crate::cases::shape::{along, apex, face, root_at};
use crate::cases::socket::Sagittal;
use crate::cases::{FORMAT, POPULATION};
use crate::chart::{Address, Complaint, Patient};

/// One drawn site with all that surveys ask of it.
#[derive(Debug, Clone)]
pub struct Surveyed {
    /// Which tooth.
    pub tooth: Tooth,
    /// Why it comes out.
    pub cause: Complaint,
    /// Who it belongs to.
    pub patient: Patient,
    /// The site before anything brought the tooth to extraction.
    pub before: Site,
    /// The site as it is referred.
    pub referred: Site,
    pub(super) sagittal: Sagittal,
    /// Fine section, then the chair's.
    pub(super) sections: [Section; 2],
    /// Bone sounding in the middle of the facial side, before any disease, mm.
    pub(super) sounded: f64,
}

/// How a section reads the facial plate, mm.
#[derive(Debug, Clone, Copy)]
pub(super) struct Section {
    /// The thinnest plate that is seen.
    least: f64,
    /// Error of a thickness.
    across: f64,
    /// Error of a level.
    along: f64,
}

impl Surveyed {
    /// The first draw of a seed, before any proof; `None` where its parts do not fit together.
    #[must_use]
    pub fn of(seed: u64) -> Option<Self> {
        let draws = Draws::of(Address {
            format: FORMAT,
            generator: POPULATION,
            seed,
            attempt: 0,
            changed: None,
        });
        let tooth = tooth_of(&draws);
        let anatomy = anatomy(&draws, tooth).ok()?;
        let before = site(&draws, &anatomy, Layer::Before).ok()?;
        let referred = site(&draws, &anatomy, Layer::Referred).ok()?;
        let patient = patient_of(&draws, &anatomy, &referred);
        let sounded = sounding(&draws, &before)[1].depth.get();
        let Anatomy { cause, rooted, .. } = anatomy;
        let sagittal = rooted.sagittal;
        let sections = sections(&draws);
        Some(Self { tooth, cause, patient, before, referred, sagittal, sections, sounded })
    }
}

fn sections(draws: &Draws) -> [Section; 2] {
    let mut stream = draws.stream(Field::Survey);
    let blur = stream.between(0.148, 0.213);
    let chair = stream.between(0.5, 0.6);
    // Mean absolute errors of 0.13 and 0.30 mm; of a normal error, sqrt(2 / pi) of its spread.
    let across = stream.normal_within(0.0, 0.163, -0.5, 0.5);
    let along = stream.normal_within(0.0, 0.376, -1.2, 1.2);
    [1.349 * blur, chair].map(|least| Section { least, across, along })
}

/// Facial bone at a level of the root's axis, mm along y; `None` where none is there.
pub(super) fn wall(site: &Site, z: f64) -> Option<f64> {
    let root = root_at(&site.socket.as_one(), z);
    if z < along(&site.ridge.crest.knots, root.x) {
        return None;
    }
    // The map is only laid where a defect is drawn on it.
    if site.defects_of(Wall::Facial).next().is_some() {
        let map = Map::of(&site.ridge);
        if site.defects_of(Wall::Facial).any(|defect| covers(&map, defect, root.x, z)) {
            return None;
        }
    }
    Some(face(&site.ridge.facial, z) - root.y - root.half_fo)
}

/// Oral bone at a level, the same.
pub(super) fn oral_wall(site: &Site, z: f64) -> Option<f64> {
    let root = root_at(&site.socket.as_one(), z);
    let crest = along(&site.ridge.crest.knots, root.x) + site.ridge.crest.oral_offset.get();
    (z >= crest).then(|| root.y - root.half_fo - face(&site.ridge.oral, z))
}

/// Whether a kind of defect is open to the crest.
pub(super) const fn is_open(kind: DefectKind) -> bool {
    !matches!(kind, DefectKind::Fenestration)
}

impl Section {
    /// The plate as it is read at a level; `None` where none is seen.
    pub(super) fn plate(&self, site: &Site, z: f64) -> Option<f64> {
        let seen = wall(site, z).filter(|plate| *plate >= self.least)?;
        Some((seen + self.across).max(0.1))
    }

    /// Level of the crest as it is read: where bone is first seen going down.
    pub(super) fn crest(&self, site: &Site) -> f64 {
        let deepest = apex(&site.socket.as_one()).z;
        let seen = |z: &f64| wall(site, *z).is_some_and(|plate| plate >= self.least);
        levels(site).find(seen).unwrap_or(deepest) + self.along
    }

    /// The plate as it is read at a level, nothing above the crest as it is read.
    pub(super) fn plate_below_crest(&self, site: &Site, z: f64) -> Option<f64> {
        if z < self.crest(site) { None } else { self.plate(site, z) }
    }

    /// The longest stretch without bone below the crest, bone below it, mm.
    pub(super) fn window(&self, site: &Site) -> f64 {
        let mut begun = false;
        let (mut gap, mut longest): (f64, f64) = (0.0, 0.0);
        for z in levels(site) {
            if wall(site, z).is_some_and(|plate| plate >= self.least) {
                begun = true;
                longest = longest.max(gap);
                gap = 0.0;
            } else if begun {
                gap += STEP;
            }
        }
        longest
    }
}

/// Levels of a survey, mm apart.
const STEP: f64 = 0.1;

/// From the crest to the apex.
fn levels(site: &Site) -> impl Iterator<Item = f64> {
    let deepest = apex(&site.socket.as_one()).z;
    let crest = along(&site.ridge.crest.knots, 0.0);
    let count = libm::floor((deepest - crest) / STEP).max(0.0) as u32;
    (0..=count).map(move |step| crest + f64::from(step) * STEP)
}
