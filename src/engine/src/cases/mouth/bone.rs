//! The bone around several roots: faces that follow trunk and roots, and do not draw in below the
//! furcation as these do.

use super::super::archetype::{Anchorage, Brief, Plate};
use super::super::draw::{Draws, Field};
use super::super::ridge::{self, Levels};
use super::super::shape::parted_at;
use super::super::socket::Rooted;
use super::super::tooth_table::oral_plate;
use crate::anatomy::{Jaw, Neighbours, Parted, Ridge, Wall};
use crate::geometry::P2;

/// How much further in than at the crest a face may lie, mm (ours).
const IN: f64 = 0.5;

pub(super) fn draw(
    draws: &Draws,
    rooted: &Rooted,
    parted: &Parted,
    beside: &Neighbours,
    brief: &Brief,
) -> Ridge {
    let facial = knots(rooted, parted, facial_levels(draws, rooted, brief), Wall::Facial);
    let oral = knots(rooted, parted, oral_levels(draws, rooted, brief), Wall::Oral);
    let reach = |z: f64| -outward(parted, Wall::Oral, z);
    Ridge {
        facial: ridge::facial_profile(draws, rooted, facial, brief),
        oral: ridge::oral_profile(draws, rooted, oral, &reach, brief),
        crest: ridge::crest(draws, rooted, beside, brief),
    }
}

/// How far out trunk or roots reach towards a wall at a level, from the plane y = 0.
fn outward(parted: &Parted, wall: Wall, z: f64) -> f64 {
    let sign = if wall == Wall::Facial { 1.0 } else { -1.0 };
    let out = parted_at(parted, z).into_iter().map(|at| sign * at.y + at.half_fo);
    out.fold(f64::NEG_INFINITY, f64::max)
}

/// A face from the crest to the deepest apex: what reaches furthest out, and the plate over it.
fn knots(rooted: &Rooted, parted: &Parted, plate: Levels, wall: Wall) -> Vec<P2> {
    let end = rooted.root.length.get();
    let furcation = parted.trunk.furcation.get();
    let [crest, mid, apex] = plate;
    let at_crest = outward(parted, wall, 0.0) + crest;
    let cover = |z: f64| {
        let share = (z / end).clamp(0.0, 1.0);
        if share <= 0.5 {
            crest + (mid - crest) * share / 0.5
        } else {
            mid + (apex - mid).max(0.0) * (share - 0.5) / 0.5
        }
    };
    let mut levels = vec![0.0, furcation];
    let below = [0.5, 0.75, 0.9].map(|share| share * end);
    levels.extend(below.into_iter().filter(|z| *z > furcation + 0.5));
    let mut knots: Vec<P2> = levels
        .iter()
        .map(|z| P2::new(*z, (outward(parted, wall, *z) + cover(*z)).max(at_crest - IN)))
        .collect();
    // The tip of the deepest root: the face goes on as it came, no further in.
    let last = knots.last().map_or(at_crest, |knot| knot.y);
    knots.push(P2::new(end, last.max(at_crest - IN)));
    let sign = if wall == Wall::Facial { 1.0 } else { -1.0 };
    knots.into_iter().map(|knot| P2::new(knot.x, sign * knot.y)).collect()
}

/// Upper molars 1.42 +- 0.74, 1.56 +- 1.05, 2.78 +- 2.04 at crest, middle and apex (Heimes et al. 2021,
/// confirmed); lower ones 1.20 +- 0.96 at the crest (the same, confirmed), thicker below it (ours).
/// Upper premolars as those of one root.
fn facial_levels(draws: &Draws, rooted: &Rooted, brief: &Brief) -> Levels {
    let published = match (rooted.tooth.jaw(), rooted.tooth.position()) {
        (Jaw::Maxilla, 4) => super::super::tooth_table::facial_plate(rooted.tooth).levels,
        (Jaw::Maxilla, _) => [(1.42, 0.74), (1.56, 1.05), (2.78, 2.04)],
        (Jaw::Mandible, _) => [(1.20, 0.96), (2.2, 1.1), (3.5, 1.5)],
    };
    let limits = match brief.plate {
        Plate::Free => [(0.15, 4.0), (0.15, 5.0), (0.3, 8.0)],
        Plate::Ordinary => [(0.6, 2.2), (0.6, 3.0), (1.4, 5.0)],
        Plate::Thick => [(1.1, 2.5), (1.1, 3.0), (1.6, 5.0)],
        Plate::Thin => [(0.4, 0.9), (0.4, 0.9), (1.2, 3.0)],
    };
    ridge::levels(&mut draws.stream(Field::FacialPlate), published, limits, [1.0; 3])
}

/// As over other roots of the jaw behind the canine (ours inside pooled bounds).
fn oral_levels(draws: &Draws, rooted: &Rooted, brief: &Brief) -> Levels {
    let published = oral_plate(rooted.tooth).levels;
    let limits = match brief.anchorage {
        Anchorage::Free => [(0.3, 4.0), (0.4, 8.0), (0.5, 14.0)],
        Anchorage::Good => [(1.0, 2.6), (1.2, 5.5), (1.6, 9.0)],
        Anchorage::Poor | Anchorage::Engaged => [(0.6, 1.2), (0.6, 1.2), (0.8, 1.6)],
    };
    ridge::levels(&mut draws.stream(Field::OralPlate), published, limits, [1.0; 3])
}
