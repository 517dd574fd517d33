//! Graft that is laid outside the facial wall: a layer of uneven thickness on the facial profile.

use super::bounds::clip;
use crate::geometry::{P2, P3, Ray, polyline};

/// Spacing of the grid, mm.
const SPACING: f64 = 0.2;

/// At (x, z) the layer reaches from the facial profile out along y by `height`, which runs evenly
/// between the corners of a grid and is nothing on its edge.
#[derive(Debug, Clone, PartialEq)]
pub struct Sheet {
    facial: Vec<P2>,
    origin: P2,
    columns: usize,
    heights: Vec<f64>,
    bounds: [P3; 2],
}

impl Sheet {
    /// From heights at every place (x, z) within a box; `None` where nothing has any height.
    #[must_use]
    pub fn of(
        facial: &[P2],
        from: P2,
        to: P2,
        mut height: impl FnMut(f64, f64) -> f64,
    ) -> Option<Self> {
        let steps = |span: f64| libm::ceil(span / SPACING).clamp(0.0, 400.0);
        let (wide, tall) = (steps(to.x - from.x), steps(to.y - from.y));
        let count = |steps: f64| (0..).take_while(move |step| f64::from(*step) <= steps);
        let mut heights = Vec::new();
        let mut columns = 0;
        for row in count(tall) {
            columns = 0;
            for column in count(wide) {
                let (x, z) =
                    (from.x + SPACING * f64::from(column), from.y + SPACING * f64::from(row));
                heights.push(height(x, z).max(0.0));
                columns += 1;
            }
        }
        let most = heights.iter().copied().fold(0.0, f64::max);
        if most <= 0.0 || columns < 2 || heights.len() < 2 * columns {
            return None;
        }
        let faces: Vec<f64> = count(tall)
            .map(|row| polyline::value(facial, from.y + SPACING * f64::from(row)))
            .chain(facial.iter().filter(|k| k.x > from.y && k.x < to.y).map(|k| k.y))
            .collect();
        let least = faces.iter().copied().fold(f64::MAX, f64::min);
        let deepest = faces.iter().copied().fold(f64::MIN, f64::max);
        let bounds = [
            P3::new(from.x, least, from.y),
            P3::new(from.x + SPACING * wide, deepest + most, from.y + SPACING * tall),
        ];
        Some(Self { facial: facial.to_vec(), origin: from, columns, heights, bounds })
    }

    /// Its box.
    #[must_use]
    pub const fn bounds(&self) -> [P3; 2] {
        self.bounds
    }

    /// Profile, first corner, spacing, columns and heights row by row, for whoever writes it down.
    #[must_use]
    pub fn grid(&self) -> (&[P2], P2, f64, usize, &[f64]) {
        (&self.facial, self.origin, SPACING, self.columns, &self.heights)
    }

    /// How far a point lies within the layer along y, mm; negative outside it.
    fn within(&self, point: P3) -> f64 {
        let off = point.y - polyline::value(&self.facial, point.z);
        off.min(self.height(point.x, point.z) - off)
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // checked to lie in the grid
    fn height(&self, x: f64, z: f64) -> f64 {
        let (u, v) = ((x - self.origin.x) / SPACING, (z - self.origin.y) / SPACING);
        let rows = self.heights.len() / self.columns;
        let inside = u >= 0.0 && v >= 0.0;
        let (i, j) = (u as usize, v as usize);
        if !inside || i + 1 >= self.columns || j + 1 >= rows {
            return 0.0;
        }
        let (p, q) = (u - i as f64, v - j as f64);
        let at = |i: usize, j: usize| self.heights[j * self.columns + i];
        (at(i, j) * (1.0 - p) + at(i + 1, j) * p) * (1.0 - q)
            + (at(i, j + 1) * (1.0 - p) + at(i + 1, j + 1) * p) * q
    }

    /// Whether a point lies in the layer.
    #[must_use]
    pub fn contains(&self, point: P3) -> bool {
        self.height(point.x, point.z) > 0.0 && self.within(point) >= 0.0
    }

    /// Calls `put(from, to)` with every stretch of the ray that lies in the layer: ends are found
    /// between steps of half the grid, where the depth runs nearly straight.
    pub fn each(&self, ray: &Ray, from: f64, to: f64, put: &mut impl FnMut(f64, f64)) {
        let Some((from, to)) = clip(self.bounds, ray, from, to) else { return };
        let steps = libm::ceil((to - from) / (0.5 * SPACING)).clamp(1.0, 4000.0);
        let step = (to - from) / steps;
        let (mut t, mut depth) = (from, self.within(ray.at(from)));
        while t < to {
            let next = (t + step).min(to);
            let after = self.within(ray.at(next));
            let crossing = t + (next - t) * depth / (depth - after);
            match (depth > 0.0, after > 0.0) {
                (true, true) => put(t, next),
                (true, false) => put(t, crossing),
                (false, true) => put(crossing, next),
                (false, false) => {}
            }
            (t, depth) = (next, after);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::shape::gathered;
    use super::*;
    use crate::geometry::V3;

    fn dome() -> Sheet {
        let facial = [P2::new(-5.0, 4.0), P2::new(2.0, 4.0), P2::new(12.0, 3.0)];
        let height = |x: f64, z: f64| 1.5 - 0.1 * (x * x + (z - 4.0) * (z - 4.0));
        Sheet::of(&facial, P2::new(-4.0, 0.0), P2::new(4.0, 8.0), height).unwrap()
    }

    #[test]
    fn straight_through_the_middle_the_layer_is_as_thick_as_it_is_high() {
        let ray = Ray { origin: P3::new(0.01, 20.0, 4.01), direction: -V3::FACIAL };
        let length = gathered(|mut put| dome().each(&ray, 0.0, 40.0, &mut put)).length();
        assert!((length - 1.5).abs() < 2e-3, "{length}");
    }

    #[test]
    fn slanting_rays_lie_in_the_layer_where_their_points_do() {
        let layer = dome();
        let (mut inside, mut wrong) = (0, 0);
        for i in 0..400 {
            let turn = f64::from(i);
            let origin = P3::new(3.0 * libm::sin(turn), 8.0, 4.0 + 3.0 * libm::cos(1.7 * turn));
            let direction = V3::new(0.5 * libm::sin(turn), -1.0, 0.6 * libm::cos(2.3 * turn));
            let Some(direction) = direction.unit() else { continue };
            let ray = Ray { origin, direction };
            let met = gathered(|mut put| layer.each(&ray, 0.0, 12.0, &mut put));
            for j in 0..240 {
                let t = 0.05 * f64::from(j);
                // Crossings are sought between steps, so they may be off by a little.
                let edge = met
                    .as_slice()
                    .iter()
                    .any(|p| (p.from - t).abs() < 0.02 || (p.to - t).abs() < 0.02);
                inside += u32::from(met.contains(t));
                wrong += u32::from(!edge && met.contains(t) != layer.contains(ray.at(t)));
            }
        }
        assert!(inside > 1500, "{inside}");
        assert!(wrong < 10, "{wrong}");
    }

    #[test]
    fn a_layer_without_height_is_none() {
        let (from, to) = (P2::new(0.0, 0.0), P2::new(4.0, 4.0));
        assert!(Sheet::of(&[P2::new(0.0, 4.0)], from, to, |_, _| 0.0).is_none());
        assert!(Sheet::of(&[P2::new(0.0, 4.0)], to, from, |_, _| 1.0).is_none());
    }
}
