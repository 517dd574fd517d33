//! Bounds of the distance from a body that is tried at many places to one that stays.
//!
//! Each time that the distance is worked out in full, two things are kept: the direction in which the
//! bodies part, and a point of the body that stays. Any such direction bounds every later distance from
//! below, because a slab across it parts the bodies; any such point bounds it from above.

use super::convex::{Convex, separation};
use super::{Cone, Drilled, P3, V3};

/// A body whose distance from a point is known in closed form, or a bound above it.
pub trait ToPoint: Convex {
    /// At least the distance from a point, mm; 0 inside.
    fn to_point(&self, point: P3) -> f64;
}

impl ToPoint for Cone {
    fn to_point(&self, point: P3) -> f64 {
        let local = self.frame.local(point);
        let out = libm::sqrt(local.x * local.x + local.y * local.y);
        let level = local.z.clamp(0.0, self.length);
        if level == local.z && out <= self.radius(level) {
            return 0.0;
        }
        // In the half plane through the axis: both ends, and the side between them.
        let end =
            |radius: f64, level: f64| square((out - radius).max(0.0)) + square(local.z - level);
        let (rise, run) = (self.far - self.near, self.length);
        let along = ((out - self.near) * rise + local.z * run) / (rise * rise + run * run);
        let along = along.clamp(0.0, 1.0);
        let side = square(out - self.near - rise * along) + square(local.z - run * along);
        libm::sqrt(end(self.near, 0.0).min(end(self.far, self.length)).min(side))
    }
}

impl ToPoint for Drilled {
    fn to_point(&self, point: P3) -> f64 {
        self.body.to_point(point).min((self.tip - point).length())
    }
}

const fn square(value: f64) -> f64 {
    value * value
}

/// How many directions and how many points are kept.
const KEPT: usize = 4;
/// How far the direction is turned towards an end of the body that stays to find the edge that the
/// other is nearest to, as shares of it.
const TURNS: [f64; 2] = [0.05, 0.3];
/// How often the way along such an edge is narrowed.
const ROUNDS: u32 = 12;

/// What is kept about one body that stays. Millimetres.
#[derive(Debug, Clone, Default)]
pub struct Witness {
    /// Unit vectors away from the body, each with how far the body reaches along it.
    ways: Vec<(V3, f64)>,
    points: Vec<P3>,
    next: usize,
}

impl Witness {
    /// A distance that the bodies have at least, no greater one being looked for once it is `enough`;
    /// minus infinity before anything is kept, and never above 0 where they overlap.
    pub fn at_least(&mut self, moves: &impl ToPoint, enough: f64) -> f64 {
        let mut least = f64::NEG_INFINITY;
        for k in 0..self.ways.len() {
            let (way, reach) = self.ways[k];
            least = least.max(from_origin(moves.support(-way)).dot(way) - reach);
            if least >= enough {
                // What parts the bodies here mostly parts them at the next place.
                self.ways.swap(0, k);
                break;
            }
        }
        least
    }

    /// A distance that the bodies have at most; infinity before anything is kept.
    #[must_use]
    pub fn at_most(&self, moves: &impl ToPoint) -> f64 {
        self.points.iter().map(|point| moves.to_point(*point)).fold(f64::INFINITY, f64::min)
    }

    /// The distance itself, from which something is kept; 0 where they touch or overlap.
    pub fn learn(&mut self, moves: &impl ToPoint, stays: &impl Convex) -> f64 {
        let apart = separation(moves, stays);
        let Some(way) = apart.unit() else {
            return 0.0;
        };
        let reach = from_origin(stays.support(way)).dot(way);
        let ends = |turn: f64| [turn, -turn].map(|turn| stays.support(way + V3::APICAL * turn));
        let near = TURNS.map(|turn| nearest_between(moves, ends(turn)));
        let [a, b] = near.map(|point| moves.to_point(point));
        let point = if a <= b { near[0] } else { near[1] };
        if self.ways.len() < KEPT {
            self.ways.push((way, reach));
            self.points.push(point);
        } else {
            self.ways[self.next] = (way, reach);
            self.points[self.next] = point;
            self.next = (self.next + 1) % KEPT;
        }
        apart.length()
    }
}

fn from_origin(point: P3) -> V3 {
    point - P3::new(0.0, 0.0, 0.0)
}

/// About the nearest point to a body of those between two points.
fn nearest_between(body: &impl ToPoint, [a, b]: [P3; 2]) -> P3 {
    let at = |share: f64| a + (b - a) * share;
    let (mut from, mut to) = (0.0, 1.0);
    for _ in 0..ROUNDS {
        let third = (to - from) / 3.0;
        let (left, right) = (from + third, to - third);
        if body.to_point(at(left)) <= body.to_point(at(right)) {
            to = right;
        } else {
            from = left;
        }
    }
    at(f64::midpoint(from, to))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Frame;
    use crate::geometry::convex::distance;
    use crate::units::Deg;

    fn cone(turn: f64) -> Cone {
        let at = P3::new(2.0 * libm::sin(turn), libm::cos(1.7 * turn), libm::sin(0.3 * turn));
        let lean = |by: f64| Deg::new(12.0 * libm::sin(by * turn));
        let frame = Frame::leaning(at, lean(0.7), lean(1.3));
        Cone { frame, near: 2.0, far: 1.4, length: 11.0 }
    }

    #[test]
    fn the_distance_of_a_point_is_the_one_that_the_walk_finds() {
        for i in 0..500 {
            let turn = f64::from(i);
            let point = P3::new(
                5.0 * libm::sin(2.3 * turn),
                5.0 * libm::cos(turn),
                6.0 + 9.0 * libm::sin(0.9 * turn),
            );
            let (ours, walked) = (cone(turn).to_point(point), distance(&cone(turn), &point));
            assert!((ours - walked).abs() < 1e-5, "{i} {ours} {walked}");
        }
    }

    #[test]
    fn what_is_kept_of_some_places_bounds_the_distance_at_all_others_and_mostly_closely() {
        let other = Cone {
            frame: Frame::leaning(P3::new(6.5, 0.5, -1.0), Deg::new(4.0), Deg::new(-7.0)),
            near: 2.2,
            far: 1.0,
            length: 13.0,
        };
        let mut witness = Witness::default();
        assert!(witness.at_least(&cone(0.0), 9.0) < 0.0 && witness.at_most(&cone(0.0)) > 1e9);
        let mut close = 0;
        for i in 0..400 {
            let body = cone(f64::from(i));
            let (least, most) = (witness.at_least(&body, f64::INFINITY), witness.at_most(&body));
            let whole = distance(&body, &other);
            assert!(least <= whole + 1e-6 && whole <= most + 1e-6, "{i} {least} {whole} {most}");
            assert!(witness.at_least(&body, 1.0) >= least.min(1.0));
            close += u32::from(most - least < 0.5);
            if i % 10 == 0 {
                assert!((witness.learn(&body, &other) - whole).abs() < 1e-9);
            }
        }
        assert!(close > 200, "{close}");
    }
}
