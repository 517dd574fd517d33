//! A body of revolution whose outline is straight from level to level: an implant with its threads
//! and what is screwed onto it.

use crate::anatomy::THREAD_DEPTH;
use crate::geometry::{Cone, Frame, P2, P3, Ray};

/// From thread to thread, mm (ours).
pub const PITCH: f64 = 0.8;

/// Smooth collar below the platform, mm (ours).
const COLLAR: f64 = 0.6;

/// The body: (level, radius) with rising levels along the frame's axis. Not convex as a whole; each
/// piece is a frustum.
#[derive(Debug, Clone, PartialEq)]
pub struct Turned {
    /// Its own frame.
    pub frame: Frame,
    outline: Vec<P2>,
    /// A cone round all of it.
    hull: Cone,
}

impl Turned {
    /// From an outline of at least two points with rising levels and radii above nothing.
    #[must_use]
    pub fn new(frame: Frame, outline: Vec<P2>) -> Self {
        let widest = outline.iter().map(|at| at.y).fold(0.0, f64::max);
        let (first, last) = (outline.first(), outline.last());
        let (from, to) = (first.map_or(0.0, |p| p.x), last.map_or(0.0, |p| p.x));
        let own = Frame { origin: frame.origin + frame.along * from, ..frame };
        Self {
            frame,
            outline,
            hull: Cone { frame: own, near: widest, far: widest, length: to - from },
        }
    }

    /// An implant: within its outer cone, threads cut in by the depth of the thread below a collar;
    /// the last 0.7 mm taper off. What is screwed onto it comes coronal of the platform, as (height,
    /// radius) from the platform up.
    #[must_use]
    pub fn implant(cone: &Cone, above: &[P2]) -> Self {
        let mut outline: Vec<P2> = above.iter().rev().map(|at| P2::new(-at.x, at.y)).collect();
        outline.push(P2::new(0.0, cone.radius(0.0)));
        outline.push(P2::new(COLLAR, cone.radius(COLLAR)));
        let end = cone.length - 0.7;
        let mut level = COLLAR;
        while level + PITCH <= end {
            outline.push(P2::new(level + 0.25 * PITCH, cone.radius(level) - THREAD_DEPTH.get()));
            outline.push(P2::new(level + 0.5 * PITCH, cone.radius(level) - THREAD_DEPTH.get()));
            level += PITCH;
            outline.push(P2::new(level - 0.1 * PITCH, cone.radius(level)));
            outline.push(P2::new(level, cone.radius(level)));
        }
        outline.push(P2::new(cone.length, 0.8 * cone.radius(cone.length)));
        outline.dedup_by(|next, kept| next.x <= kept.x + 1e-9);
        Self::new(cone.frame, outline)
    }

    /// The outline as (level, radius).
    #[must_use]
    pub fn outline(&self) -> &[P2] {
        &self.outline
    }

    /// The cylinder that holds it.
    #[must_use]
    pub const fn hull(&self) -> &Cone {
        &self.hull
    }

    /// Whether the point lies in the body.
    #[must_use]
    pub fn contains(&self, point: P3) -> bool {
        let local = self.frame.local(point);
        let piece = self.outline.windows(2).find(|p| p[0].x <= local.z && local.z <= p[1].x);
        piece.is_some_and(|pair| {
            let way = (local.z - pair[0].x) / (pair[1].x - pair[0].x);
            let radius = pair[0].y + (pair[1].y - pair[0].y) * way;
            local.x * local.x + local.y * local.y <= radius * radius
        })
    }

    /// Calls `put(from, to)` with every stretch of the ray's line that lies in the body, one for each
    /// piece of its outline.
    pub fn each(&self, ray: &Ray, put: &mut impl FnMut(f64, f64)) {
        let hull = self.hull.ray(ray);
        let Some(part) = hull.last() else { return };
        let level = |t: f64| (ray.at(t) - self.frame.origin).dot(self.frame.along);
        let (a, b) = (level(part.from), level(part.to));
        let (low, high) = (a.min(b) - 1e-9, a.max(b) + 1e-9);
        for pair in self.outline.windows(2) {
            // Most threads are not passed at all.
            if pair[1].x < low || pair[0].x > high {
                continue;
            }
            let origin = self.frame.origin + self.frame.along * pair[0].x;
            let frame = Frame { origin, ..self.frame };
            let length = pair[1].x - pair[0].x;
            let frustum = Cone { frame, near: pair[0].y, far: pair[1].y, length };
            for one in frustum.ray(ray).as_slice() {
                put(one.from, one.to);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::shape::gathered;
    use super::*;
    use crate::anatomy::implant_cone;
    use crate::geometry::V3;
    use crate::units::{Deg, Mm};

    fn cone() -> Cone {
        let platform = P3::new(0.0, -1.0, 1.0);
        implant_cone(platform, Mm::new(4.0), Mm::new(12.0), Deg::new(-8.0), Deg::new(3.0))
    }

    #[test]
    fn threads_lie_within_the_outer_cone_and_as_deep_as_they_are_said_to_be() {
        let cone = cone();
        let body = Turned::implant(&cone, &[]);
        let off = |at: &P2| cone.radius(at.x) - at.y;
        let (least, most) =
            body.outline().iter().fold((1.0, 0.0), |(least, most): (f64, f64), at| {
                (least.min(off(at)), most.max(off(at)))
            });
        assert!(least > -1e-9, "{least}");
        assert!((most - THREAD_DEPTH.get()).abs() < 0.03, "{most}");
        assert!(body.outline().len() > 40);
    }

    #[test]
    fn a_ray_lies_in_the_body_exactly_where_its_points_do() {
        let body = Turned::implant(&cone(), &[P2::new(0.5, 1.9), P2::new(3.0, 2.4)]);
        let (mut inside, mut wrong) = (0, 0);
        for i in 0..300 {
            let turn = f64::from(i);
            let origin = P3::new(libm::sin(turn), -6.0, -3.0 + 0.055 * turn);
            let direction = V3::new(0.2 * libm::sin(turn), 1.0, 0.5 * libm::sin(1.9 * turn));
            let Some(direction) = direction.unit() else { continue };
            let ray = Ray { origin, direction };
            let met = gathered(|mut put| body.each(&ray, &mut put));
            for j in 0..200 {
                let t = 0.06 * f64::from(j);
                let edge = met
                    .as_slice()
                    .iter()
                    .any(|p| (p.from - t).abs() < 1e-6 || (p.to - t).abs() < 1e-6);
                inside += u32::from(met.contains(t));
                wrong += u32::from(!edge && met.contains(t) != body.contains(ray.at(t)));
            }
        }
        assert!(inside > 5000, "{inside}");
        assert_eq!(wrong, 0);
    }
}
