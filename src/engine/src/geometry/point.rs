//! Points, directions and rays in the site's frame.

use crate::units::{Deg, Mm};
use core::ops::{Add, Mul, Neg, Sub};
use serde::{Deserialize, Serialize};

/// A point of the site, millimetres: x distal, y facial, z apical.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct P3 {
    /// Distal of the origin.
    pub x: f64,
    /// Facial of the origin.
    pub y: f64,
    /// Apical of the reference crest.
    pub z: f64,
}

/// A difference of two points, millimetres; a unit vector where it says so.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct V3 {
    /// Distal part.
    pub x: f64,
    /// Facial part.
    pub y: f64,
    /// Apical part.
    pub z: f64,
}

/// A point of a plane, millimetres; what its axes are is said where it is used.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct P2 {
    /// First axis.
    pub x: f64,
    /// Second axis.
    pub y: f64,
}

/// A half line: `origin + t * direction`, t >= 0. With a unit direction t is in millimetres.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Ray {
    /// Where it starts.
    pub origin: P3,
    /// Where it goes; a unit vector.
    pub direction: V3,
}

impl P3 {
    /// A point from its coordinates in millimetres.
    #[must_use]
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z }
    }

    /// Distance to another point.
    #[must_use]
    pub fn distance(self, other: Self) -> Mm {
        Mm::new((self - other).length())
    }
}

impl V3 {
    /// Distal unit vector.
    pub const DISTAL: Self = Self::new(1.0, 0.0, 0.0);
    /// Facial unit vector.
    pub const FACIAL: Self = Self::new(0.0, 1.0, 0.0);
    /// Apical unit vector.
    pub const APICAL: Self = Self::new(0.0, 0.0, 1.0);

    /// A vector from its parts in millimetres.
    #[must_use]
    pub const fn new(x: f64, y: f64, z: f64) -> Self {
        Self { x, y, z }
    }

    /// Scalar product.
    #[must_use]
    pub fn dot(self, other: Self) -> f64 {
        self.x * other.x + self.y * other.y + self.z * other.z
    }

    /// Vector product, right-handed.
    #[must_use]
    pub fn cross(self, other: Self) -> Self {
        Self::new(
            self.y * other.z - self.z * other.y,
            self.z * other.x - self.x * other.z,
            self.x * other.y - self.y * other.x,
        )
    }

    /// Length in millimetres.
    #[must_use]
    pub fn length(self) -> f64 {
        self.dot(self).sqrt()
    }

    /// The unit vector along it; `None` for the null vector.
    #[must_use]
    pub fn unit(self) -> Option<Self> {
        let length = self.length();
        (length > 0.0).then(|| self * (1.0 / length))
    }
}

impl P2 {
    /// A point from its coordinates in millimetres.
    #[must_use]
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }
}

impl Ray {
    /// The point at parameter `t`.
    #[must_use]
    pub fn at(self, t: f64) -> P3 {
        self.origin + self.direction * t
    }
}

/// The unit vector along an axis with this tilt (apex facially positive) and tip (apex distally
/// positive). Its slopes are `dy/dz = tan(tilt)` and `dx/dz = tan(tip)`, so that each angle is the
/// one seen in its own projection: tilt in the section, tip on the film.
#[must_use]
pub fn direction(tilt: Deg, tip: Deg) -> V3 {
    let slope = V3::new(libm::tan(tip.radians()), libm::tan(tilt.radians()), 1.0);
    slope * (1.0 / slope.length())
}

impl Sub for P3 {
    type Output = V3;
    fn sub(self, other: Self) -> V3 {
        V3::new(self.x - other.x, self.y - other.y, self.z - other.z)
    }
}

impl Add<V3> for P3 {
    type Output = Self;
    fn add(self, step: V3) -> Self {
        Self::new(self.x + step.x, self.y + step.y, self.z + step.z)
    }
}

impl Add for V3 {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.x + other.x, self.y + other.y, self.z + other.z)
    }
}

impl Sub for V3 {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.x - other.x, self.y - other.y, self.z - other.z)
    }
}

impl Mul<f64> for V3 {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.x * factor, self.y * factor, self.z * factor)
    }
}

impl Neg for V3 {
    type Output = Self;
    fn neg(self) -> Self {
        self * -1.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distal_facial_apical_are_right_handed() {
        assert_eq!(V3::DISTAL.cross(V3::FACIAL), V3::APICAL);
    }

    #[test]
    fn a_positive_tilt_leans_the_apex_facially_and_a_positive_tip_distally() {
        let axis = direction(Deg::new(10.0), Deg::new(5.0));
        assert!((axis.y / axis.z - libm::tan(Deg::new(10.0).radians())).abs() < 1e-15);
        assert!((axis.x / axis.z - libm::tan(Deg::new(5.0).radians())).abs() < 1e-15);
        assert!((axis.length() - 1.0).abs() < 1e-15);
    }
}
