//! Distances on the map from the edge of what is covered to the edge of what covers it, side by side.
//!
//! An edge of an outline belongs to the side towards which its outward normal leans most: mesial (-s),
//! distal (+s), apical (+t) or coronal (-t; over the crest that is oral). The margin on one side is the
//! least distance from what is covered to the cover's edges of that side, so that a cover which ends
//! close apically is not charged for it mesially; where what is covered sticks out on a side, the
//! margin there is minus how far. The least of all sides is the least distance of all.

use crate::geometry::polygon::{self, Edge};
use crate::geometry::{Outline, P2};

/// A side of an outline on the map.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Towards {
    Mesial,
    Distal,
    Apical,
    Coronal,
}

impl Towards {
    /// The side towards which a vector leans most.
    fn of(s: f64, t: f64) -> Self {
        if s.abs() >= t.abs() {
            if s < 0.0 { Self::Mesial } else { Self::Distal }
        } else if t > 0.0 {
            Self::Apical
        } else {
            Self::Coronal
        }
    }

    /// Whether a vector leans to this side at least as much as to any other.
    fn is_leant_to(self, s: f64, t: f64) -> bool {
        let way = self.vector();
        let (along, whole) = (s * way.x + t * way.y, s.abs() + t.abs());
        // Halfway between two sides it belongs to both.
        along >= whole - along - 1e-6
    }

    const fn vector(self) -> P2 {
        match self {
            Self::Mesial => P2::new(-1.0, 0.0),
            Self::Distal => P2::new(1.0, 0.0),
            Self::Apical => P2::new(0.0, 1.0),
            Self::Coronal => P2::new(0.0, -1.0),
        }
    }
}

/// The corners of an outline in millimetres, without asking for memory.
pub(super) struct Corners {
    count: usize,
    at: [P2; Outline::MOST_VERTICES],
}

impl Corners {
    pub(super) fn of(outline: &Outline) -> Self {
        let mut corners = Self { count: 0, at: [P2::new(0.0, 0.0); Outline::MOST_VERTICES] };
        for [s, t] in outline.tenths() {
            corners.at[corners.count] = P2::new(f64::from(*s) / 10.0, f64::from(*t) / 10.0);
            corners.count += 1;
        }
        corners
    }

    pub(super) fn as_slice(&self) -> &[P2] {
        &self.at[..self.count]
    }
}

/// The edges of an anticlockwise outline that belong to one side.
pub(super) fn side_edges(outline: &[P2], side: Towards) -> impl Iterator<Item = Edge> + '_ {
    polygon::edges(outline)
        .filter(move |(a, b)| a != b && Towards::of(b.y - a.y, a.x - b.x) == side)
}

/// The margin by which `cover` (anticlockwise) reaches past `covered` on one side, mm. `None` when
/// either is empty.
pub(super) fn margin(covered: &[P2], cover: &[P2], side: Towards) -> Option<f64> {
    if covered.is_empty() || cover.len() < 3 {
        return None;
    }
    let mut least: Option<f64> = None;
    let mut take = |value: f64| least = Some(least.map_or(value, |kept| kept.min(value)));
    let mut without_edges = true;
    for against in side_edges(cover, side) {
        without_edges = false;
        for edge in polygon::edges(covered) {
            take(polygon::edge_to_edge(edge, against));
        }
    }
    for point in covered {
        if without_edges && polygon::contains(cover, *point) {
            // No edge faces this side (a cover that runs out in a corner): straight on instead.
            let way = polygon::line_within(cover, *point, side.vector());
            take(way.first_beyond(0.0).map_or(0.0, |part| part.to));
        }
    }
    if let Some(out) = farthest_out(covered, cover, side) {
        take(-out);
    }
    least
}

/// How far what is covered sticks out of the cover on one side, mm; `None` where it does not.
///
/// Along an edge of what is covered, the distance from a convex cover is greatest at one of its ends or
/// where the way out passes from one side of the cover to another. That is where it crosses a line
/// from a corner of the cover, square to an edge there or halfway between two sides.
fn farthest_out(covered: &[P2], cover: &[P2], side: Towards) -> Option<f64> {
    let out = |at: P2| {
        let nearest = nearest_on(cover, at).filter(|_| !polygon::contains(cover, at))?;
        let (s, t) = (at.x - nearest.x, at.y - nearest.y);
        Some((libm::hypot(s, t), side.is_leant_to(s, t))).filter(|(out, _)| *out > 1e-9)
    };
    let mut most: Option<f64> = None;
    let mut take = |found: Option<(f64, bool)>| {
        if let Some((out, true)) = found {
            most = Some(most.map_or(out, |kept| kept.max(out)));
        }
    };
    for (a, b) in polygon::edges(covered) {
        let ends = [out(a), out(b)];
        take(ends[0]);
        if ends.iter().all(Option::is_none) {
            continue;
        }
        for (from, to) in polygon::edges(cover) {
            let edge = (to.x - from.x, to.y - from.y);
            // Lines through a corner, each by a vector that stands square to it.
            for (corner, square) in
                [(from, edge), (to, edge), (from, (1.0, 1.0)), (from, (1.0, -1.0))]
            {
                let over = |p: P2| (p.x - corner.x) * square.0 + (p.y - corner.y) * square.1;
                let (at_a, at_b) = (over(a), over(b));
                if (at_a < 0.0) != (at_b < 0.0) {
                    let way = at_a / (at_a - at_b);
                    take(out(P2::new(a.x + (b.x - a.x) * way, a.y + (b.y - a.y) * way)));
                }
            }
        }
    }
    most
}

fn nearest_on(polygon: &[P2], point: P2) -> Option<P2> {
    let mut best: Option<(f64, P2)> = None;
    for (a, b) in polygon::edges(polygon) {
        let (ex, ey) = (b.x - a.x, b.y - a.y);
        let whole = ex * ex + ey * ey;
        let way = (point.x - a.x) * ex + (point.y - a.y) * ey;
        let t = if whole > 0.0 { (way / whole).clamp(0.0, 1.0) } else { 0.0 };
        let at = P2::new(a.x + ex * t, a.y + ey * t);
        let (dx, dy) = (point.x - at.x, point.y - at.y);
        let distance = dx * dx + dy * dy;
        if best.is_none_or(|(kept, _)| distance < kept) {
            best = Some((distance, at));
        }
    }
    best.map(|(_, at)| at)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rectangle(s: (f64, f64), t: (f64, f64)) -> Vec<P2> {
        vec![P2::new(s.0, t.0), P2::new(s.1, t.0), P2::new(s.1, t.1), P2::new(s.0, t.1)]
    }

    #[test]
    fn a_rectangle_in_a_rectangle_has_four_plain_margins() {
        let (hole, cover) =
            (rectangle((-2.0, 2.0), (0.0, 6.0)), rectangle((-5.0, 4.5), (-1.0, 8.0)));
        for (side, expected) in [
            (Towards::Mesial, 3.0),
            (Towards::Distal, 2.5),
            (Towards::Apical, 2.0),
            (Towards::Coronal, 1.0),
        ] {
            assert_eq!(margin(&hole, &cover, side), Some(expected), "{side:?}");
        }
    }

    #[test]
    fn a_cover_that_ends_short_is_negative_on_that_side_only() {
        let (hole, cover) =
            (rectangle((-2.0, 2.0), (0.0, 6.0)), rectangle((-5.0, 4.5), (-1.0, 4.0)));
        assert_eq!(margin(&hole, &cover, Towards::Apical), Some(-2.0));
        assert_eq!(margin(&hole, &cover, Towards::Mesial), Some(3.0));
    }

    #[test]
    fn what_sticks_out_between_its_corners_counts_as_much_as_a_corner() {
        // Past the cover's corner the hole's own corner sticks out more apically than distally, but
        // its edge passes by distally.
        let hole = [(-2.0, 0.0), (2.0, 0.0), (6.0, 8.0), (6.0, 14.0), (-2.0, 14.0)];
        let hole = hole.map(|(s, t)| P2::new(s, t));
        let cover = rectangle((-4.0, 4.0), (-1.0, 10.0));
        let found = margin(&hole, &cover, Towards::Distal).unwrap();
        // At (6, 12) the way out is as much apical as distal: 2 mm of each.
        assert!((found + libm::sqrt(8.0)).abs() < 1e-9, "{found}");
        let found = margin(&hole, &cover, Towards::Apical).unwrap();
        assert!((found + libm::sqrt(20.0)).abs() < 1e-9, "{found}");
    }

    #[test]
    fn an_edge_in_common_is_a_margin_of_nothing() {
        let hole = rectangle((-2.0, 2.0), (0.0, 6.0));
        let cover = rectangle((-4.0, 4.0), (0.0, 6.0));
        assert_eq!(margin(&hole, &cover, Towards::Apical), Some(0.0));
        assert_eq!(margin(&hole, &cover, Towards::Mesial), Some(2.0));
    }

    #[test]
    fn a_cover_that_runs_out_in_a_corner_is_measured_straight_on() {
        let hole = rectangle((-0.5, 0.5), (0.0, 1.0));
        let wedge = vec![P2::new(-3.0, -1.0), P2::new(3.0, -1.0), P2::new(0.0, 9.0)];
        // On the sides at s = 0.5 the wedge ends at t = 9 - 10 * 0.5 / 3.
        let found = margin(&hole, &wedge, Towards::Apical).unwrap();
        assert!((found - (9.0 - 5.0 / 3.0 - 1.0)).abs() < 1e-9, "{found}");
    }

    #[test]
    fn the_least_of_all_sides_is_the_least_distance_of_all_over_a_sweep() {
        for i in 0..60 {
            let turn = f64::from(i);
            let hole: Vec<P2> = (0..6)
                .map(|k| {
                    let (sin, cos) = libm::sincos(f64::from(k) * 1.047);
                    P2::new(2.0 * cos + libm::sin(turn), 2.5 * sin + libm::cos(turn))
                })
                .collect();
            let cover = rectangle((-4.0, 4.2), (-4.5, 4.7));
            let sides = [Towards::Mesial, Towards::Distal, Towards::Apical, Towards::Coronal];
            let least = sides.iter().filter_map(|side| margin(&hole, &cover, *side));
            let least = least.reduce(f64::min).unwrap();
            let direct = hole
                .iter()
                .map(|point| polygon::signed_distance(&cover, *point))
                .reduce(f64::min)
                .unwrap();
            assert!((least - direct).abs() < 1e-9, "{i} {least} {direct}");
        }
    }
}
