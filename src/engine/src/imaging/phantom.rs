//! Test bodies of known form: what a scanner is checked on.

use super::marrow::Marrow;
use super::materials::Material;
use super::path::Materials;
use super::scene::Scene;
use super::shape::Shape;
use super::strip::Strip;
use crate::anatomy::{Density, DensityClass};
use crate::geometry::P2;
use crate::units::Mm;

/// y of the middle of the plate, mm.
pub const MIDDLE: f64 = -2.0;
/// Soft tissue reaches so far to either side of the middle, mm.
const AROUND: f64 = 20.0;

/// A plate of compact bone of a width, parallel to tooth and arch, in soft tissue.
#[must_use]
pub fn plate(width: Mm) -> Scene {
    let density = Density { hu: 700.0, class: DensityClass::D3 };
    let mut scene = Scene::new(density, Marrow::even());
    let level = |y: f64| vec![P2::new(-40.0, y), P2::new(60.0, y)];
    let strip = |half: f64| {
        let share = [P2::new(-half, 1.0), P2::new(half, 0.0)];
        let faces = [level(MIDDLE + half), level(MIDDLE - half)];
        Shape::Ridge(Strip::new(faces, vec![P2::new(0.0, -29.0)], (0.0, share), None))
    };
    scene.lay("soft", strip(AROUND), Materials::ALL, Material::Soft);
    scene.lay("plate", strip(0.5 * width.get()), Materials::ALL, Material::Cortical);
    scene
}
