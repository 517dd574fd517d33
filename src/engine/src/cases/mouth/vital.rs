//! What runs under molars: the floor of the sinus above the upper ones, the canal under the lower.

use super::super::archetype::{Anchorage, Brief, Reach};
use super::super::draw::{Draws, Field, hundredths};
use super::super::shape::{face, parted_apices};
use super::super::socket::Rooted;
use crate::anatomy::{Floor, FloorKind, Jaw, Parted, Ridge, Tube, Vital};
use crate::chart::Sex;
use crate::geometry::P3;
use crate::units::Mm;

pub(super) fn draw(
    draws: &Draws,
    rooted: &Rooted,
    parted: &Parted,
    ridge: &Ridge,
    sex: Sex,
    brief: &Brief,
) -> Vital {
    match rooted.tooth.jaw() {
        Jaw::Maxilla => {
            Vital { floor: Some(floor(draws, rooted, parted, brief)), ..Vital::default() }
        }
        Jaw::Mandible => mandibular(draws, rooted, parted, ridge, sex, brief),
    }
}

/// Furcation to floor 9.69 (2.0 to 24.7) mm over 16, 8.84 (1.5 to 25.1) over 17 (Deporter et al. 2021,
/// 427 sites, confirmed; the spread, 4.3, from a series of 41, confirmed). Roots may stand in it: 28.85 %
/// of palatal ones do (the same).
fn floor(draws: &Draws, rooted: &Rooted, parted: &Parted, brief: &Brief) -> Floor {
    let mut stream = draws.stream(Field::Floor);
    let mean = if rooted.tooth.position() == 6 { 9.69 } else { 8.84 };
    let (low, high) = match (brief.anchorage, brief.floor) {
        (Anchorage::Poor, _) => (2.0, 4.5),
        (_, Reach::Free) => (1.5, 25.0),
        (_, Reach::Clear) => (9.5, 17.0),
        (_, Reach::Near) => (4.5, 7.5),
    };
    let above = stream.normal_within(mean, 4.3, low, high);
    // Nearly level over the molars.
    let rise = stream.between(-0.1, 0.1);
    let z = parted.trunk.furcation.get() + above;
    Floor { kind: FloorKind::Sinus, z: Mm::new(hundredths(z)), rise: hundredths(rise) }
}

/// The canal runs under the apices. Nearest apex to it: 46 4.30 +- 1.97 mm (91 scans, confirmed), 47
/// nearer (direction confirmed; 2.91 in women, one series), men 0.5 more, women less. The foramen lies
/// under the premolars (Pele et al. 2021, confirmed): of a first molar it is told, of a second it lies
/// two teeth away.
fn mandibular(
    draws: &Draws,
    rooted: &Rooted,
    parted: &Parted,
    ridge: &Ridge,
    sex: Sex,
    brief: &Brief,
) -> Vital {
    let deepest = parted_apices(parted).into_iter().map(|tip| tip.z).fold(0.0, f64::max);
    let mut stream = draws.stream(Field::Canal);
    let sexed = if sex == Sex::Male { 0.5 } else { -0.5 };
    let first = rooted.tooth.position() == 6;
    let mean = if first { 4.3 } else { 3.4 };
    let (low, high) = match (brief.anchorage, brief.canal) {
        (Anchorage::Poor, _) => (0.8, 2.0),
        (_, Reach::Free) => (0.0, 12.0),
        (_, Reach::Clear) => (4.0, 9.0),
        (_, Reach::Near) => (0.5, 1.8),
    };
    let below = stream.normal_within(mean + sexed, 1.97, low, high);
    let radius = stream.between(1.25, 1.75);
    // Between the roots' middle and their oral side (ours).
    let inward = stream.between(0.0, 1.2);
    let level = deepest + below + radius;
    let mut foramina = draws.stream(Field::Foramen);
    let step = if foramina.chance(0.5) { -9.0 } else { -12.5 };
    let place = step + foramina.normal_within(0.0, 0.8, -1.6, 1.6);
    let rise = foramina.normal_within(3.0, 1.0, 1.0, 5.0);
    let z = (level - rise).max(deepest - 2.0);
    let foramen = first
        .then(|| P3::new(hundredths(place), hundredths(face(&ridge.facial, z)), hundredths(z)));
    // It begins where it leaves the foramen; of a second molar it goes on past it.
    let begins = foramen.map_or(-16.0, |at| at.x);
    let canal = Tube {
        from: P3::new(begins, hundredths(-inward), hundredths(level)),
        to: P3::new(16.0, hundredths(-inward - 0.8), hundredths(level + 0.5)),
        radius: Mm::new(hundredths(radius)),
    };
    Vital { canal: Some(canal), foramen, ..Vital::default() }
}
