//! What is missing from the facial wall: before any disease as skulls show it, and what a cause adds.
//!
//! Shares by tooth are ours, so that one-rooted teeth together keep what 3,315 teeth of 146 skulls
//! leave for them (Rupprecht et al. 2001, confirmed: dehiscence 4.1, fenestration 9.0 % of all teeth;
//! most dehiscences at the lower canine, 12.9 %). Thin walls are missing more often (same, direction).

use super::cause::WallLoss;
use crate::anatomy::{Defect, DefectKind, Jaw, Map, Ridge, Tooth, Wall};
use crate::cases::defects::{on_map, u_form, v_form, window};
use crate::cases::draw::{Draws, Field, Stream};
use crate::cases::shape::{apex, root_at};
use crate::cases::socket::Rooted;

/// Dehiscence and fenestration of a tooth, shares.
const fn missing(tooth: Tooth) -> [f64; 2] {
    match (tooth.jaw(), tooth.position()) {
        (Jaw::Maxilla, 1) => [0.015, 0.080],
        (Jaw::Maxilla, 2) => [0.020, 0.095],
        (Jaw::Maxilla, 3) => [0.035, 0.100],
        (Jaw::Maxilla, 4) => [0.030, 0.090],
        (Jaw::Maxilla, _) => [0.015, 0.060],
        (Jaw::Mandible, 1) => [0.030, 0.065],
        (Jaw::Mandible, 2) => [0.035, 0.075],
        (Jaw::Mandible, 3) => [0.100, 0.095],
        (Jaw::Mandible, 4) => [0.060, 0.085],
        (Jaw::Mandible, _) => [0.020, 0.055],
    }
}

/// How much likelier a wall is missing for each standard deviation that it is thinner, as a logarithm
/// (ours).
const THIN: f64 = 0.5;

/// The facial wall's defect, if it has one; what a cause took stands for what was missing before.
pub(super) fn draw(
    draws: &Draws,
    rooted: &Rooted,
    ridge: &Ridge,
    cover: f64,
    taken: Option<WallLoss>,
) -> Option<Defect> {
    let mut stream = draws.stream(Field::FacialDefect);
    // The mean of the factor over all covers is 1.
    let factor = libm::exp(-THIN * cover - THIN * THIN / 2.0);
    let [open, window] = missing(rooted.tooth).map(|share| share * factor);
    let place = stream.unit();
    let before = match place {
        p if p < open => Some(WallLoss::Dehiscence),
        p if p < open + window => Some(WallLoss::Fenestration),
        _ => None,
    };
    let mut form = draws.stream(Field::WallForm);
    match taken.or(before)? {
        WallLoss::Dehiscence => dehiscence(&mut form, rooted, ridge),
        WallLoss::Fenestration => fenestration(&mut form, rooted, ridge),
        WallLoss::Lost => lost(&mut form, rooted, ridge),
    }
}

/// 4.5 +- 1.8 deep, 2 at least; V-shaped 3.0 +- 1.0 wide, or in a quarter parallel-sided 4.5 +- 1.2
/// (ours, clinical ranges from memory), never past the root's sides.
fn dehiscence(stream: &mut Stream, rooted: &Rooted, ridge: &Ridge) -> Option<Defect> {
    let half = rooted.root.half_md.get();
    let parallel = stream.chance(0.25);
    let depth = stream.normal_within(4.5, 1.8, 2.0, 0.65 * length(rooted, ridge));
    let aside = stream.between(-0.2, 0.2);
    let (kind, outline) = if parallel {
        let width = stream.normal_within(4.5, 1.2, 2.0, 1.9 * half);
        (DefectKind::DehiscenceU, u_form(aside, width / 2.0, depth))
    } else {
        let width = stream.normal_within(3.0, 1.0, 1.4, 1.6 * half);
        (DefectKind::DehiscenceV, v_form(aside, width / 2.0, depth))
    };
    facial(kind, &outline)
}

/// 3.0 +- 1.2 high, 2.4 +- 0.8 wide (ours, from memory); in the apical third in 86 % (Dalili Kajan et
/// al. 2020, confirmed), else in the middle one.
fn fenestration(stream: &mut Stream, rooted: &Rooted, ridge: &Ridge) -> Option<Defect> {
    let length = length(rooted, ridge);
    let half = rooted.root.half_md.get();
    let high = stream.normal_within(3.0, 1.2, 1.2, 0.4 * length);
    let wide = stream.normal_within(2.4, 0.8, 1.2, 1.4 * half);
    let apical = stream.chance(0.86);
    let place = stream.unit();
    let middle = if apical { 0.68 + 0.10 * place } else { 0.42 + 0.22 * place } * length;
    let root = root_at(&rooted.root, middle);
    facial(DefectKind::Fenestration, &window(root.x, middle, wide / 2.0, high / 2.0))
}

fn lost(stream: &mut Stream, rooted: &Rooted, ridge: &Ridge) -> Option<Defect> {
    let depth = stream.between(0.6, 0.9) * length(rooted, ridge);
    let half = rooted.root.half_md.get() + stream.between(0.5, 0.9);
    facial(DefectKind::LostWall, &u_form(0.0, half, depth))
}

/// From the crest to the apex on the map.
fn length(rooted: &Rooted, ridge: &Ridge) -> f64 {
    Map::of(ridge).t(Wall::Facial, apex(&rooted.root).z)
}

fn facial(kind: DefectKind, outline: &[(f64, f64)]) -> Option<Defect> {
    Some(Defect { wall: Wall::Facial, kind, outline: on_map(outline, |t| t)? })
}
