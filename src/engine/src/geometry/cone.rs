//! A round body that tapers evenly between two flat ends: an implant, or the bed drilled for it.

use super::convex::Convex;
use super::quadratic::at_most_nothing;
use super::{Frame, Intervals, P3, Ray, V3};
use core::f64::consts::PI;

/// A round frustum; in its own frame the radius at level v along the axis is
/// `near + (far - near) * v / length`, for v from 0 (the frame's origin) to `length`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cone {
    /// Its own frame; the origin is the middle of the near end.
    pub frame: Frame,
    /// Radius at the near end, mm.
    pub near: f64,
    /// Radius at the far end, mm.
    pub far: f64,
    /// Length along the axis, mm.
    pub length: f64,
}

impl Cone {
    /// Change of radius for a millimetre of level.
    #[must_use]
    pub fn slope(&self) -> f64 {
        if self.length > 0.0 { (self.far - self.near) / self.length } else { 0.0 }
    }

    /// Radius at a level, mm.
    #[must_use]
    pub fn radius(&self, level: f64) -> f64 {
        self.near + self.slope() * level
    }

    /// The point of the axis at a level.
    #[must_use]
    pub fn axis_at(&self, level: f64) -> P3 {
        self.frame.origin + self.frame.along * level
    }

    /// The middle of the far end.
    #[must_use]
    pub fn end(&self) -> P3 {
        self.axis_at(self.length)
    }

    /// Whether the point lies in the body or on its surface.
    #[must_use]
    pub fn contains(&self, point: P3) -> bool {
        let local = self.frame.local(point);
        let radius = self.radius(local.z);
        0.0 <= local.z
            && local.z <= self.length
            && local.x * local.x + local.y * local.y <= radius * radius
    }

    /// Where the line of the ray lies in the body: one interval or none.
    #[must_use]
    pub fn ray(&self, ray: &Ray) -> Intervals {
        const FAR: f64 = 1e6;
        let from = self.frame.local(ray.origin);
        let step = self.frame.turned(ray.direction);
        let (mut enters, mut leaves) = (-FAR, FAR);
        if step.z.abs() < 1e-12 {
            if from.z < 0.0 || from.z > self.length {
                return Intervals::empty();
            }
        } else {
            let (a, b) = (-from.z / step.z, (self.length - from.z) / step.z);
            (enters, leaves) = (a.min(b), a.max(b));
        }
        let slope = self.slope();
        let (start, rise) = (self.near + slope * from.z, slope * step.z);
        let a = step.x * step.x + step.y * step.y - rise * rise;
        let b = from.x * step.x + from.y * step.y - start * rise;
        let c = from.x * from.x + from.y * from.y - start * start;
        at_most_nothing(a, b, c, enters, leaves)
            .map_or_else(Intervals::empty, |(t0, t1)| Intervals::one(t0, t1))
    }

    /// Volume, mm3.
    #[must_use]
    pub fn volume(&self) -> f64 {
        let (a, b) = (self.near, self.far);
        PI * self.length * (a * a + a * b + b * b) / 3.0
    }

    /// Area of the lateral surface, mm2.
    #[must_use]
    pub fn lateral_area(&self) -> f64 {
        self.lateral_area_within(0.0, self.length)
    }

    /// Area of the lateral surface between two levels, mm2.
    #[must_use]
    pub fn lateral_area_within(&self, from: f64, to: f64) -> f64 {
        let slope = self.slope();
        let stretch = libm::sqrt(1.0 + slope * slope);
        2.0 * PI * stretch * (to - from) * self.radius(f64::midpoint(from, to))
    }

    /// The generator on one side as a ray from the near end along the surface; its unit is the
    /// millimetre of *level*, not of length, so that its parameter is the level itself.
    #[must_use]
    pub fn generator(&self, side: V3) -> Ray {
        Ray {
            origin: self.frame.origin + side * self.near,
            direction: self.frame.along + side * self.slope(),
        }
    }

    /// The least of `normal . point` over the body.
    #[must_use]
    pub fn least_along(&self, normal: V3) -> f64 {
        let point = self.support(-normal);
        (point - P3::new(0.0, 0.0, 0.0)).dot(normal)
    }
}

impl Convex for Cone {
    fn support(&self, towards: V3) -> P3 {
        let d = self.frame.turned(towards);
        let reach = libm::sqrt(d.x * d.x + d.y * d.y);
        let at_far = d.z * self.length + self.far * reach > self.near * reach;
        let (level, radius) = if at_far { (self.length, self.far) } else { (0.0, self.near) };
        let side = if reach > 0.0 { radius / reach } else { 0.0 };
        self.frame.point(V3::new(d.x * side, d.y * side, level))
    }
}

/// The bed that is drilled for an implant: the implant's own body, then the drill's point.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Drilled {
    /// The implant's body.
    pub body: Cone,
    /// The tip of the drill.
    pub tip: P3,
}

impl Convex for Drilled {
    fn support(&self, towards: V3) -> P3 {
        let side = self.body.support(towards);
        if (self.tip - side).dot(towards) > 0.0 { self.tip } else { side }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::Deg;

    fn cone() -> Cone {
        let frame = Frame::leaning(P3::new(0.3, -1.2, 1.0), Deg::new(-8.0), Deg::new(5.0));
        Cone { frame, near: 2.0, far: 1.4, length: 12.0 }
    }

    #[test]
    fn volume_and_area_of_a_cylinder_are_the_familiar_ones() {
        let cylinder = Cone { far: 2.0, ..cone() };
        assert!((cylinder.volume() - 48.0 * PI).abs() < 1e-12);
        assert!((cylinder.lateral_area() - 48.0 * PI).abs() < 1e-12);
    }

    #[test]
    fn the_ends_of_a_ray_lie_on_the_surface() {
        let body = cone();
        let mut met = 0;
        for i in 0..1000 {
            let turn = f64::from(i);
            let origin = P3::new(3.0 * libm::sin(turn), 3.0 * libm::cos(1.7 * turn), turn * 0.014);
            let Some(direction) =
                V3::new(libm::cos(turn), libm::sin(2.3 * turn), 0.5 * libm::sin(turn)).unit()
            else {
                continue;
            };
            let ray = Ray { origin, direction };
            if let Some(part) = body.ray(&ray).last() {
                met += 1;
                assert!(body.contains(ray.at(f64::midpoint(part.from, part.to))));
                assert!(!body.contains(ray.at(part.from - 1e-6)));
                assert!(!body.contains(ray.at(part.to + 1e-6)));
            }
        }
        assert!(met > 200, "{met}");
    }

    #[test]
    fn volume_by_rays_agrees_with_the_closed_form() {
        let (body, step) = (cone(), 0.05);
        let mut sum = 0.0;
        for i in -60..100 {
            for j in -10..300 {
                let origin = P3::new(f64::from(i) * step, 0.0, f64::from(j) * step);
                sum += body.ray(&Ray { origin, direction: V3::FACIAL }).length();
            }
        }
        assert!((sum * step * step / body.volume() - 1.0).abs() < 3e-3);
    }

    #[test]
    fn a_generator_runs_along_the_surface_from_end_to_end() {
        let body = cone();
        let generator = body.generator(body.frame.radial(Deg::new(40.0)));
        for level in [0.0, 5.0, 12.0] {
            let local = body.frame.local(generator.at(level));
            let radius = libm::sqrt(local.x * local.x + local.y * local.y);
            assert!((local.z - level).abs() < 1e-12 && (radius - body.radius(level)).abs() < 1e-12);
        }
    }
}
