//! A right-handed frame of its own for each body that stands on an axis.

use super::{P3, V3, direction};
use crate::units::Deg;

/// Origin and three unit vectors at right angles. `along` is the body's axis, apically positive;
/// `across` is the site's x made perpendicular to it, so distal; `facial` = `along` x `across`.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Frame {
    /// Local (0, 0, 0).
    pub origin: P3,
    /// Local x: distal.
    pub across: V3,
    /// Local y: facial.
    pub facial: V3,
    /// Local z: along the axis, apical.
    pub along: V3,
}

impl Frame {
    /// The frame of an axis that leans by `tilt` and `tip` (see [`direction`]).
    #[must_use]
    pub fn leaning(origin: P3, tilt: Deg, tip: Deg) -> Self {
        Self::on_axis(origin, direction(tilt, tip))
    }

    /// The frame of a unit vector.
    #[must_use]
    pub fn on_axis(origin: P3, along: V3) -> Self {
        let flat = V3::DISTAL - along * along.x;
        // An axis along x itself has no distal side; apical stands in.
        let across = flat.unit().unwrap_or(V3::APICAL);
        Self { origin, across, facial: along.cross(across), along }
    }

    /// The frame whose axis runs from one point to another; an axis of no length points apically.
    #[must_use]
    pub fn between(from: P3, to: P3) -> Self {
        Self::on_axis(from, (to - from).unit().unwrap_or(V3::APICAL))
    }

    /// A site's point in local coordinates.
    #[inline]
    #[must_use]
    pub fn local(&self, point: P3) -> V3 {
        self.turned(point - self.origin)
    }

    /// A site's vector in local coordinates.
    #[inline]
    #[must_use]
    pub fn turned(&self, vector: V3) -> V3 {
        V3::new(vector.dot(self.across), vector.dot(self.facial), vector.dot(self.along))
    }

    /// A local vector in the site's coordinates.
    #[must_use]
    pub fn out(&self, local: V3) -> V3 {
        self.across * local.x + self.facial * local.y + self.along * local.z
    }

    /// A local point in the site's coordinates.
    #[must_use]
    pub fn point(&self, local: V3) -> P3 {
        self.origin + self.out(local)
    }

    /// The unit vector across the axis at an angle from facial (0) over distal (90 degrees).
    #[must_use]
    pub fn radial(&self, from_facial: Deg) -> V3 {
        let (sin, cos) = libm::sincos(from_facial.radians());
        self.facial * cos + self.across * sin
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn going_in_and_out_again_gives_the_point_back() {
        let frame = Frame::leaning(P3::new(1.0, -2.0, 0.5), Deg::new(20.0), Deg::new(-7.0));
        let point = P3::new(3.0, 4.0, 5.0);
        assert!(frame.point(frame.local(point)).distance(point).get() < 1e-12);
    }

    #[test]
    fn distal_stays_distal_and_facial_facial_when_the_axis_leans() {
        let frame = Frame::leaning(P3::new(0.0, 0.0, 0.0), Deg::new(30.0), Deg::new(20.0));
        assert!(frame.across.x > 0.9 && frame.facial.y > 0.8);
        assert!((frame.across.cross(frame.facial) - frame.along).length() < 1e-12);
        assert!((frame.radial(Deg::new(90.0)) - frame.across).length() < 1e-12);
    }

    #[test]
    fn an_axis_along_x_still_has_a_frame() {
        let frame = Frame::on_axis(P3::new(0.0, 0.0, 0.0), V3::DISTAL);
        assert!((frame.across.length() - 1.0).abs() < 1e-12);
        assert!(frame.across.dot(frame.along).abs() < 1e-12);
    }
}
