//! Round tubes with round ends (capsules) and balls.

use super::quadratic::at_most_nothing;
use super::{P3, Ray, V3};

/// All points within `radius` of the segment between two points; a ball where they coincide.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Capsule {
    /// The ends of the segment.
    pub ends: [P3; 2],
    /// Radius, mm.
    pub radius: f64,
}

impl Capsule {
    /// A ball.
    #[must_use]
    pub const fn ball(centre: P3, radius: f64) -> Self {
        Self { ends: [centre, centre], radius }
    }

    /// Where the line of the ray lies in it; it is convex, so one interval or none.
    #[must_use]
    pub fn ray(&self, ray: &Ray) -> Option<(f64, f64)> {
        let [from, to] = self.ends;
        let mut met = join(self.ball_met(ray, from), self.ball_met(ray, to));
        if let Some(axis) = (to - from).unit() {
            met = join(met, self.barrel_met(ray, axis, (to - from).length()));
        }
        met
    }

    fn ball_met(&self, ray: &Ray, centre: P3) -> Option<(f64, f64)> {
        const FAR: f64 = 1e6;
        let o = ray.origin - centre;
        let (a, b) = (ray.direction.dot(ray.direction), o.dot(ray.direction));
        at_most_nothing(a, b, o.dot(o) - self.radius * self.radius, -FAR, FAR)
    }

    fn barrel_met(&self, ray: &Ray, axis: V3, length: f64) -> Option<(f64, f64)> {
        const FAR: f64 = 1e6;
        let o = ray.origin - self.ends[0];
        let (start, rate) = (o.dot(axis), ray.direction.dot(axis));
        let (mut enters, mut leaves) = (-FAR, FAR);
        if rate.abs() < 1e-12 {
            if start < 0.0 || start > length {
                return None;
            }
        } else {
            let (p, q) = (-start / rate, (length - start) / rate);
            (enters, leaves) = (p.min(q), p.max(q));
        }
        let (side, step) = (o - axis * start, ray.direction - axis * rate);
        let a = step.dot(step);
        let c = side.dot(side) - self.radius * self.radius;
        if a < 1e-24 {
            return (c <= 0.0 && enters < leaves).then_some((enters, leaves));
        }
        at_most_nothing(a, side.dot(step), c, enters, leaves)
    }

    /// Whether the point lies in it.
    #[must_use]
    pub fn contains(&self, point: P3) -> bool {
        point_to_segment(point, self.ends) <= self.radius
    }
}

fn join(a: Option<(f64, f64)>, b: Option<(f64, f64)>) -> Option<(f64, f64)> {
    match (a, b) {
        (Some(a), Some(b)) => Some((a.0.min(b.0), a.1.max(b.1))),
        (one, None) | (None, one) => one,
    }
}

/// Distance from a point to a segment, mm.
#[must_use]
pub fn point_to_segment(point: P3, [from, to]: [P3; 2]) -> f64 {
    let (edge, way) = (to - from, point - from);
    let whole = edge.dot(edge);
    let t = if whole > 0.0 { (way.dot(edge) / whole).clamp(0.0, 1.0) } else { 0.0 };
    (way - edge * t).length()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::convex::distance;

    const TUBE: Capsule =
        Capsule { ends: [P3::new(-3.0, 1.0, 12.0), P3::new(4.0, 0.0, 13.0)], radius: 1.5 };

    #[test]
    fn a_ray_through_a_ball_meets_its_diameter() {
        let ball = Capsule::ball(P3::new(0.0, 0.0, 5.0), 2.0);
        let ray = Ray { origin: P3::new(0.0, 0.0, 0.0), direction: V3::APICAL };
        assert_eq!(ball.ray(&ray), Some((3.0, 7.0)));
    }

    #[test]
    fn the_ends_of_a_ray_lie_on_the_tube() {
        let mut met = 0;
        for i in 0..500 {
            let turn = f64::from(i);
            let origin = P3::new(4.0 * libm::sin(turn), 2.0 * libm::cos(turn), 10.0);
            let direction = V3::new(libm::sin(3.0 * turn), libm::cos(2.0 * turn), 1.0);
            let Some(direction) = direction.unit() else { continue };
            let ray = Ray { origin, direction };
            if let Some((from, to)) = TUBE.ray(&ray) {
                met += 1;
                for t in [from, to] {
                    assert!((point_to_segment(ray.at(t), TUBE.ends) - 1.5).abs() < 1e-9);
                }
            }
        }
        assert!(met > 100, "{met}");
    }

    #[test]
    fn distance_to_a_segment_agrees_with_the_general_method() {
        for i in 0..100 {
            let turn = f64::from(i);
            let point = P3::new(6.0 * libm::sin(turn), 5.0 * libm::cos(1.3 * turn), turn * 0.2);
            let general = distance(&point, &TUBE.ends);
            assert!((point_to_segment(point, TUBE.ends) - general).abs() < 1e-6);
        }
    }
}
