//! Rays that run side by side: those of a tile of a film. What all of them miss is asked once.

use super::bounds::{Bounds, joined};
use crate::geometry::{P3, Ray};

/// Rays between four corner rays.
#[derive(Debug, Clone, Copy)]
pub struct Bundle {
    corners: [Ray; 4],
    /// Whether all of them run towards the oral side, and not along it.
    crosses: bool,
}

impl Bundle {
    /// The rays between these.
    #[must_use]
    pub fn new(corners: [Ray; 4]) -> Self {
        Self { corners, crosses: corners.iter().all(|ray| ray.direction.y < -0.1) }
    }

    /// A box round what they pass between two levels of y: there they lie within the hull of where the
    /// corner rays pass the two. None where one of them does not surely pass both.
    #[must_use]
    pub fn between(&self, levels: [f64; 2]) -> Option<Bounds> {
        // A little wider, so that no rounding leaves out what a ray just touches.
        const NEAR: f64 = 1e-6;
        let Self { corners, crosses } = self;
        let passed = corners.iter().flat_map(|ray| {
            levels.map(|y| {
                let at = ray.at((y - ray.origin.y) / ray.direction.y);
                [P3::new(at.x - NEAR, y, at.z - NEAR), P3::new(at.x + NEAR, y, at.z + NEAR)]
            })
        });
        crosses.then(|| passed.reduce(joined)).flatten()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::V3;

    fn ray(x: f64, z: f64) -> Ray {
        Ray { origin: P3::new(0.0, 200.0, 0.0), direction: V3::new(x, -1.0, z) }
    }

    #[test]
    fn rays_between_the_corners_stay_in_the_box() {
        let bundle =
            Bundle::new([(0.0, 0.0), (0.1, 0.0), (0.0, 0.2), (0.1, 0.2)].map(|(x, z)| ray(x, z)));
        let [low, high] = bundle.between([-10.0, 10.0]).unwrap();
        for turn in 0..100 {
            let share = f64::from(turn) / 99.0;
            let at = ray(0.1 * share, 0.2 * (1.0 - share)).at(190.0 + 20.0 * share);
            assert!(low.x <= at.x && at.x <= high.x && low.z <= at.z && at.z <= high.z, "{at:?}");
        }
        assert!((high.x - 21.0).abs() < 0.01 && low.x.abs() < 0.01, "{low:?} {high:?}");
    }

    #[test]
    fn rays_along_the_arch_have_no_box() {
        let along = Ray { origin: P3::new(-20.0, 0.0, 0.0), direction: V3::DISTAL };
        assert!(Bundle::new([along; 4]).between([-10.0, 10.0]).is_none());
    }
}
