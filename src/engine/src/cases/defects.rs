//! What is missing from the walls: outlines on the map.
//!
//! No survey gives true sizes of socket-wall defects in millimetres; depths, widths and forms here
//! are ours, inside clinical ranges from memory (dehiscence 4.5 +- 1.8 deep, 3.0 +- 1.0 wide;
//! fenestration 3.0 +- 1.2 by 2.4 +- 0.8 in the apical third, as 86 % of them are, confirmed).

use super::archetype::{Brief, Facial};
use super::draw::{Draws, Field, Stream};
use super::shape::{apex, root_at};
use super::socket::Rooted;
use crate::anatomy::{Defect, DefectKind, Map, Ridge, Wall};
use crate::geometry::Outline;

/// How far an open defect reaches above the crest, so that it is open beyond doubt.
const ABOVE: f64 = 0.5;

pub(super) fn draw(draws: &Draws, rooted: &Rooted, ridge: &Ridge, brief: &Brief) -> Vec<Defect> {
    let mut defects = Vec::new();
    if let Some(defect) = facial(&mut draws.stream(Field::FacialDefect), rooted, ridge, brief) {
        defects.push(defect);
    }
    if brief.oral_defect
        && let Some(defect) = oral(&mut draws.stream(Field::OralDefect), rooted, ridge)
    {
        defects.push(defect);
    }
    defects
}

pub(super) fn facial(
    stream: &mut Stream,
    rooted: &Rooted,
    ridge: &Ridge,
    brief: &Brief,
) -> Option<Defect> {
    let half = rooted.root.half_md.get();
    let length = Map::of(ridge).t(Wall::Facial, apex(&rooted.root).z);
    let aside = stream.between(-0.3, 0.3);
    let (kind, outline) = match brief.facial {
        Facial::Whole => return None,
        Facial::V => {
            let depth = stream.normal_within(4.8, 1.6, 3.0, 0.65 * length);
            let width = stream.normal_within(3.0, 0.8, 2.0, 1.5 * half);
            (DefectKind::DehiscenceV, v_form(aside, width / 2.0, depth))
        }
        Facial::U => {
            let depth = stream.normal_within(5.5, 1.6, 3.5, 0.7 * length);
            let width = stream.between(1.6, 1.95) * half;
            (DefectKind::DehiscenceU, u_form(0.3 * aside, width / 2.0, depth))
        }
        Facial::Lost => {
            let depth = stream.between(0.6, 0.9) * length;
            let width = 2.0 * (half + stream.between(0.5, 0.9));
            (DefectKind::LostWall, u_form(0.3 * aside, width / 2.0, depth))
        }
        Facial::Window => {
            let high = stream.normal_within(3.0, 1.0, 2.0, 0.4 * length);
            let wide = stream.normal_within(2.4, 0.7, 1.6, 1.4 * half);
            let middle = stream.between(0.70, 0.78) * length;
            let root = root_at(&rooted.root, middle);
            (DefectKind::Fenestration, window(root.x, middle, wide / 2.0, high / 2.0))
        }
    };
    Some(Defect { wall: Wall::Facial, kind, outline: on_map(&outline, |t| t)? })
}

fn oral(stream: &mut Stream, rooted: &Rooted, ridge: &Ridge) -> Option<Defect> {
    let half = rooted.root.half_md.get();
    let map = Map::of(ridge);
    let crest = map.across();
    let length = -map.t(Wall::Oral, apex(&rooted.root).z) - crest;
    let depth = stream.normal_within(4.5, 1.5, 3.0, 0.6 * length);
    let width = stream.between(1.1, 1.7) * half;
    let kind = DefectKind::DehiscenceV;
    let outline = on_map(&v_form(0.0, width / 2.0, depth), |depth| -crest - depth)?;
    Some(Defect { wall: Wall::Oral, kind, outline })
}

/// Open above, narrowing apically: (s, depth).
pub(super) fn v_form(aside: f64, half: f64, depth: f64) -> Vec<(f64, f64)> {
    let right = [(1.0, -ABOVE), (0.85, 0.3 * depth), (0.5, 0.7 * depth), (0.2, 0.95 * depth)];
    mirrored(aside, half, &right, Some(depth))
}

/// Open above, parallel-sided with a round end.
pub(crate) fn u_form(aside: f64, half: f64, depth: f64) -> Vec<(f64, f64)> {
    let right = [(1.0, -ABOVE), (1.0, 0.7 * depth), (0.8, 0.92 * depth), (0.35, depth)];
    mirrored(aside, half, &right, None)
}

/// A window, bone all round it.
pub(super) fn window(middle_s: f64, middle_t: f64, wide: f64, high: f64) -> Vec<(f64, f64)> {
    let right = [
        (0.4, middle_t - high),
        (1.0, middle_t - 0.4 * high),
        (1.0, middle_t + 0.4 * high),
        (0.4, middle_t + high),
    ];
    mirrored(middle_s, wide, &right, None)
}

/// The right half, a point at the end if there is one, then the left half back up.
fn mirrored(aside: f64, half: f64, right: &[(f64, f64)], end: Option<f64>) -> Vec<(f64, f64)> {
    let down = right.iter().map(|&(share, t)| (aside + share * half, t));
    let up = right.iter().rev().map(|&(share, t)| (aside - share * half, t));
    down.chain(end.map(|t| (aside, t))).chain(up).collect()
}

/// On the map's grid; `None` should the outline have shrunk to nothing there.
pub(crate) fn on_map(outline: &[(f64, f64)], t_of: impl Fn(f64) -> f64) -> Option<Outline> {
    // Values lie within the map, far inside i32.
    let grid = |value: f64| libm::round(value * 10.0) as i32;
    Outline::new(outline.iter().map(|&(s, depth)| [grid(s), grid(t_of(depth))]).collect()).ok()
}
