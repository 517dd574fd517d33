//! Lines: walking along polylines, clipping, smoothing what is soft.

use super::Window;
use crate::geometry::{P2, polygon};

/// A smooth line through `points`: the Catmull-Rom spline, `steps` chords for each span; its ends
/// stay where they are.
pub(super) fn smooth_line(points: &[P2], steps: u32) -> Vec<P2> {
    let Some(last) = points.last().copied() else {
        return Vec::new();
    };
    let at = |i: usize| points[i.min(points.len() - 1)];
    let mut line: Vec<P2> = (0..points.len() - 1)
        .flat_map(|i| {
            let ends = [at(i.saturating_sub(1)), at(i), at(i + 1), at(i + 2)];
            (0..steps).map(move |k| spline(ends, f64::from(k) / f64::from(steps)))
        })
        .collect();
    line.push(last);
    line
}

fn spline([a, b, c, d]: [P2; 4], u: f64) -> P2 {
    let one = |a: f64, b: f64, c: f64, d: f64| {
        let (linear, square, cube) =
            (c - a, 2.0 * a - 5.0 * b + 4.0 * c - d, 3.0 * (b - c) + d - a);
        b + 0.5 * u * (linear + u * (square + u * cube))
    };
    P2::new(one(a.x, b.x, c.x, d.x), one(a.y, b.y, c.y, d.y))
}

/// An ellipse as a ring, its first point in the direction of `x`.
pub(super) fn ellipse(middle: P2, half_x: f64, half_y: f64) -> Vec<P2> {
    const CHORDS: u32 = 72;
    (0..CHORDS)
        .map(|k| {
            let angle = core::f64::consts::TAU * f64::from(k) / f64::from(CHORDS);
            P2::new(middle.x + half_x * libm::cos(angle), middle.y + half_y * libm::sin(angle))
        })
        .collect()
}

/// An area of rings (even-odd) that answers quickly whether a point lies in it: its edges are sorted
/// into bands of y.
#[derive(Debug)]
pub(super) struct Region {
    /// Corners that enclose it.
    pub least: P2,
    /// The same.
    pub most: P2,
    bands: Vec<Vec<[P2; 2]>>,
}

impl Region {
    const BAND: f64 = 0.25;
    const MOST_BANDS: f64 = 4000.0;

    /// Of rings; `None` without any point.
    pub(super) fn of(rings: &[Vec<P2>]) -> Option<Self> {
        let mut points = rings.iter().flatten();
        let first = *points.next()?;
        let (least, most) = points.fold((first, first), |(least, most), at| {
            (
                P2::new(least.x.min(at.x), least.y.min(at.y)),
                P2::new(most.x.max(at.x), most.y.max(at.y)),
            )
        });
        let count = ((most.y - least.y) / Self::BAND).clamp(0.0, Self::MOST_BANDS) as usize + 1;
        let mut region = Self { least, most, bands: vec![Vec::new(); count] };
        for ring in rings {
            for (a, b) in polygon::edges(ring) {
                let (from, to) = (region.band(a.y.min(b.y)), region.band(a.y.max(b.y)));
                for band in &mut region.bands[from..=to] {
                    band.push([a, b]);
                }
            }
        }
        Some(region)
    }

    /// The band of a y, the nearest one for a y beyond the ends.
    fn band(&self, y: f64) -> usize {
        // A cast of a negative number gives 0.
        (((y - self.least.y) / Self::BAND) as usize).min(self.bands.len() - 1)
    }

    /// Whether a point lies inside.
    pub(super) fn holds(&self, at: P2) -> bool {
        let outside =
            at.x < self.least.x || at.x > self.most.x || at.y < self.least.y || at.y > self.most.y;
        if outside {
            return false;
        }
        let mut inside = false;
        for [a, b] in &self.bands[self.band(at.y)] {
            if (a.y > at.y) != (b.y > at.y) {
                inside ^= at.x < a.x + (at.y - a.y) / (b.y - a.y) * (b.x - a.x);
            }
        }
        inside
    }
}

/// What of a ring lies in the window (Sutherland and Hodgman, Commun. ACM 17:32, 1974).
pub(super) fn clip_ring(ring: &[P2], window: Window) -> Vec<P2> {
    let mut ring = ring.to_vec();
    for side in sides(window) {
        let mut kept = Vec::with_capacity(ring.len() + 4);
        let Some(mut before) = ring.last().copied() else { break };
        for now in ring {
            let (inner_before, inner_now) = (side(before), side(now));
            if (inner_before >= 0.0) != (inner_now >= 0.0) {
                kept.push(between(before, now, inner_before / (inner_before - inner_now)));
            }
            if inner_now >= 0.0 {
                kept.push(now);
            }
            before = now;
        }
        ring = kept;
    }
    ring
}

/// What of an open line lies in the window, in pieces.
pub(super) fn clip_line(line: &[P2], window: Window) -> Vec<Vec<P2>> {
    let mut pieces: Vec<Vec<P2>> = Vec::new();
    for pair in line.windows(2) {
        let Some((from, to)) = clip_edge(pair[0], pair[1], window) else { continue };
        match pieces.last_mut() {
            Some(piece) if piece.last() == Some(&from) => piece.push(to),
            _ => pieces.push(vec![from, to]),
        }
    }
    pieces
}

fn clip_edge(a: P2, b: P2, window: Window) -> Option<(P2, P2)> {
    let (mut from, mut to) = (0.0_f64, 1.0_f64);
    for side in sides(window) {
        let (at_a, at_b) = (side(a), side(b));
        if at_a < 0.0 && at_b < 0.0 {
            return None;
        }
        if at_a < 0.0 {
            from = from.max(at_a / (at_a - at_b));
        } else if at_b < 0.0 {
            to = to.min(at_a / (at_a - at_b));
        }
    }
    let whole = |u: f64| {
        if u == 0.0 {
            a
        } else if u == 1.0 {
            b
        } else {
            between(a, b, u)
        }
    };
    (from < to).then(|| (whole(from), whole(to)))
}

fn between(a: P2, b: P2, part: f64) -> P2 {
    P2::new(a.x + part * (b.x - a.x), a.y + part * (b.y - a.y))
}

/// How far a point lies inside each side of the window.
fn sides(window: Window) -> [impl Fn(P2) -> f64; 4] {
    let Window { least, most } = window;
    [(0, least.x), (1, most.x), (2, least.y), (3, most.y)].map(|(which, limit)| {
        move |at: P2| match which {
            0 => at.x - limit,
            1 => limit - at.x,
            2 => at.y - limit,
            _ => limit - at.y,
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::polygon::signed_area;

    const UNIT: Window = Window { least: P2::new(0.0, 0.0), most: P2::new(1.0, 1.0) };

    #[test]
    fn a_square_over_a_corner_keeps_its_quarter() {
        let square = [(0.5, 0.5), (1.5, 0.5), (1.5, 1.5), (0.5, 1.5)].map(|(x, y)| P2::new(x, y));
        assert!((signed_area(&clip_ring(&square, UNIT)).abs() - 0.25).abs() < 1e-12);
    }

    #[test]
    fn a_line_that_leaves_and_comes_back_is_two_pieces() {
        let line = [(0.5, 0.5), (2.0, 0.5), (2.0, 0.8), (0.2, 0.8)].map(|(x, y)| P2::new(x, y));
        let pieces = clip_line(&line, UNIT);
        assert_eq!(pieces.len(), 2);
        assert_eq!(pieces[0], [P2::new(0.5, 0.5), P2::new(1.0, 0.5)]);
    }

    #[test]
    fn a_smooth_line_passes_through_its_points() {
        let points = [(0.0, 0.0), (1.0, 1.0), (2.0, 0.0), (3.0, 1.0)].map(|(x, y)| P2::new(x, y));
        let line = smooth_line(&points, 8);
        for point in points {
            assert!(
                line.iter()
                    .any(|at| (at.x - point.x).abs() < 1e-12 && (at.y - point.y).abs() < 1e-12)
            );
        }
    }

    #[test]
    fn a_region_holds_what_lies_between_its_rings() {
        let ring = |from: f64, to: f64| {
            [(from, from), (to, from), (to, to), (from, to)].map(|(x, y)| P2::new(x, y)).to_vec()
        };
        let region = Region::of(&[ring(0.0, 10.0), ring(4.0, 6.0)]).unwrap();
        for (x, y, inside) in [
            (1.0, 1.0, true),
            (5.0, 5.0, false),
            (5.0, 3.9, true),
            (9.99, 9.99, true),
            (10.01, 5.0, false),
            (5.0, -3.0, false),
        ] {
            assert_eq!(region.holds(P2::new(x, y)), inside, "{x} {y}");
        }
        assert!(Region::of(&[]).is_none());
    }

    #[test]
    fn an_ellipse_has_its_area() {
        let ring = ellipse(P2::new(3.0, 1.0), 2.0, 1.0);
        assert!((signed_area(&ring) - 2.0 * core::f64::consts::PI).abs() < 0.01);
    }
}
