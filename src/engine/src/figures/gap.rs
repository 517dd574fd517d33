//! The gap all round (clock) and along the implant (profile).

mod clock;
mod profile;
#[cfg(test)]
mod tests;

pub use clock::gap_clock;
pub use profile::{Facing, gap_profile, gap_rows};

use super::scene::Scene;
use crate::anatomy::Bone;
use crate::geometry::{Cone, Ray};
use crate::measure::Opening;
use crate::units::{COMPARISON_STEP, Deg, Mm};

/// How far bone is looked for, millimetres.
const FARTHEST: f64 = 60.0;

/// From the implant's outer surface at some depth to the first bone, in the plane across its axis;
/// the angle counts from facial over distal.
fn gap(scene: &Scene<'_>, body: &Cone, from_facial: Deg, depth: f64) -> Opening {
    let side = body.frame.radial(from_facial);
    let ray = Ray { origin: body.axis_at(depth) + side * body.radius(depth), direction: side };
    match scene.solid.bone(Bone::Now, &ray, 0.0, FARTHEST).as_slice().first() {
        None => Opening::Open,
        Some(first) if first.from <= COMPARISON_STEP => Opening::Bone(Mm::ZERO),
        Some(first) => Opening::Bone(Mm::new(first.from)),
    }
}
