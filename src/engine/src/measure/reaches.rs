//! How far the socket reaches towards the faces: whether it leaves a wall beside an implant.

use super::bone::{STEPS, bends_beside, outward};
use crate::anatomy::{Solid, Wall};
use crate::geometry::{Cone, Ray, V3};

/// How far the socket reaches towards each face, by level: bounds from above.
#[derive(Debug)]
pub(super) struct Reaches([Vec<f64>; 2]);

impl Reaches {
    /// Levels of the table, mm: from here on, and its step.
    const FROM: f64 = -6.0;
    const STEP: f64 = 0.25;
    const COUNT: u32 = 200;

    pub(super) fn of(solid: &Solid) -> Self {
        Self([Wall::Facial, Wall::Oral].map(|wall| {
            let towards = V3::FACIAL * outward(wall);
            let reach = |z: f64| {
                let bodies = solid.socket.as_slice().iter();
                let reach = bodies.map(|body| body.reach_apical_of(z, towards));
                reach.fold(f64::NEG_INFINITY, f64::max)
            };
            (0..Self::COUNT).map(|k| reach(Self::FROM + Self::STEP * f64::from(k))).collect()
        }))
    }

    /// Apical of a level.
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "held to the table"
    )]
    fn apical_of(&self, wall: Wall, z: f64) -> f64 {
        let table = &self.0[usize::from(wall == Wall::Oral)];
        let place = (z - Self::FROM) / Self::STEP;
        if place < 0.0 {
            return f64::INFINITY;
        }
        table.get(place as usize).or(table.last()).copied().unwrap_or(f64::INFINITY)
    }

    /// Whether the socket leaves some wall at every depth at which a least thickness is looked for.
    pub(super) fn leave_wall(
        &self,
        solid: &Solid,
        cone: &Cone,
        wall: Wall,
        (from, to): (f64, f64),
    ) -> bool {
        /// A wall thinner than this is left to be measured, mm.
        const THIN: f64 = 1e-3;
        let side = outward(wall);
        let line = cone.generator(cone.frame.facial * side);
        let (a, b) = (line.at(from).z, line.at(to).z);
        if self.apical_of(wall, a.min(b)) < solid.least_face(wall, [a, b]) - THIN {
            return true;
        }
        let step = (to - from) / f64::from(STEPS);
        let even = (0..=STEPS).map(|i| from + step * f64::from(i));
        even.chain(bends_beside(solid, line, wall, (from, to))).all(|depth| {
            let surface = line.at(depth);
            let room = side * (solid.face(wall, surface.z) - surface.y);
            // Here the socket no longer reaches to the face.
            if self.apical_of(wall, surface.z) < side * surface.y + room - THIN {
                return true;
            }
            let ray = Ray { origin: surface, direction: V3::FACIAL * side };
            let ends = solid.socket.as_slice().iter().filter_map(|body| body.ray(&ray).last());
            ends.map(|part| part.to).fold(0.0, f64::max) < room - THIN
        })
    }
}
