//! What a wall defect takes away from the solid site.

use super::Wall;
use crate::geometry::{Interval, Intervals, P2, P3, Ray, polygon};

/// What a defect takes away: everything over its shadow in (x, z), from the plane through the root's
/// axis (of several, see [`Socket::plane`](super::Socket::plane)), parallel to x, outward on its
/// wall's side.
#[derive(Debug, Clone, PartialEq)]
pub struct Cut {
    /// Which wall.
    pub wall: Wall,
    /// The shadow along y, as (x, z).
    pub shadow: Vec<P2>,
    /// The outline on the map.
    pub outline: Vec<P2>,
    pub(super) box_: [Interval; 2],
    /// y of the plane at z = 0, and its slope over z.
    pub(super) plane: (f64, f64),
}

impl Cut {
    /// x and z between which it lies.
    pub(super) const fn extent(&self) -> [Interval; 2] {
        self.box_
    }

    /// Whether a point lies by more than `by` on the side of its plane from which it takes nothing.
    pub(super) fn is_behind(&self, point: P3, by: f64) -> bool {
        let plane = self.plane.0 + self.plane.1 * point.z;
        if self.wall == Wall::Facial { point.y < plane - by } else { point.y > plane + by }
    }

    /// Whether a point lies in what is taken away.
    pub(super) fn contains(&self, point: P3) -> bool {
        let plane = self.plane.0 + self.plane.1 * point.z;
        let outward = if self.wall == Wall::Facial { point.y >= plane } else { point.y <= plane };
        outward && polygon::contains(&self.shadow, P2::new(point.x, point.z))
    }

    /// Where the ray's line, between `from` and `to`, lies in what is taken away.
    pub(super) fn ray(&self, ray: &Ray, from: f64, to: f64) -> Intervals {
        let (a, b) = (ray.at(from), ray.at(to));
        let misses = |box_: Interval, a: f64, b: f64| a.max(b) < box_.from || a.min(b) > box_.to;
        if misses(self.box_[0], a.x, b.x) || misses(self.box_[1], a.z, b.z) {
            return Intervals::empty();
        }
        let side = if self.wall == Wall::Facial { 1.0 } else { -1.0 };
        let (level, slope) = self.plane;
        let start = side * (level + slope * ray.origin.z - ray.origin.y);
        let rate = side * (slope * ray.direction.z - ray.direction.y);
        let Some((from, to)) = at_most_nothing(start, rate, from, to) else {
            return Intervals::empty();
        };
        let origin = P2::new(ray.origin.x, ray.origin.z);
        let step = P2::new(ray.direction.x, ray.direction.z);
        polygon::line_within(&self.shadow, origin, step).intersection(&Intervals::one(from, to))
    }
}

/// Where `start + rate t <= 0` between two ends.
pub(super) fn at_most_nothing(start: f64, rate: f64, from: f64, to: f64) -> Option<(f64, f64)> {
    let (from, to) = if rate > 0.0 {
        (from, to.min(-start / rate))
    } else if rate < 0.0 {
        (from.max(-start / rate), to)
    } else if start <= 0.0 {
        (from, to)
    } else {
        return None;
    };
    (from < to).then_some((from, to))
}
