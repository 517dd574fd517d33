//! Trabeculae: marrow bone is not even. Its density varies about the site's own, so that a film and a
//! section show grain; the mean is unchanged.
//!
//! The variation is a field in the site, one leaf of [`LEAF`] mm after the other along y, each with a
//! pattern of its own in (x, z): thin dense lines round looser rooms. It is drawn once for a case from
//! the generator that everything is drawn from. Film and section sum and sample the same field.

use super::bounds::{greater, lesser};
use crate::geometry::{P3, Ray};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// Thickness of a leaf along y, mm (ours: of the order of the rooms between trabeculae).
pub const LEAF: f64 = 0.9;
/// Standard deviation of the density over its mean (ours: trabeculae are several times denser than
/// marrow, seen over a quarter of a millimetre).
pub const SPREAD: f64 = 0.55;
/// Spacing of the pattern, mm.
const CELL: f64 = 0.25;
/// Cells on a side of the pattern, which repeats after 16 mm; each leaf has it elsewhere. A power of two.
const SIDE: usize = 64;
/// Cells of the pattern.
const CELLS: usize = SIDE * SIDE;
/// Leaves after which the shifts repeat: more than a jaw is thick.
const LEAVES: usize = 64;
/// Distinguishes this stream from the streams of drawn cases.
const STREAM: u64 = 1001;

/// The field.
#[derive(Debug, Clone, PartialEq)]
pub struct Marrow {
    pattern: Option<Box<Pattern>>,
    /// Of each leaf, in cells.
    shifts: [[f64; 2]; LEAVES],
}

impl Marrow {
    /// The field of a key.
    #[must_use]
    pub fn of(key: [u8; 32]) -> Self {
        let mut generator = ChaCha8Rng::from_seed(key);
        generator.set_stream(STREAM);
        let mut grain: Vec<f32> = (0..CELLS).map(|_| nearly_normal(&mut generator)).collect();
        for _ in 0..2 {
            grain = smooth(&grain, &[0.25, 0.5, 0.25]);
        }
        let broad = smooth(&grain, &[1.0 / 9.0; 9]);
        // Lines where the banded grain crosses nothing, rooms between.
        let mut pattern: Vec<f32> = grain.iter().zip(&broad).map(|(g, b)| -(g - b).abs()).collect();
        level(&mut pattern);
        let shift = |generator: &mut ChaCha8Rng| {
            let bits = generator.next_u64();
            let whole = |bits: u64| f64::from(u32::try_from(bits & 0xffff).unwrap_or(0));
            [whole(bits) / 65_536.0, whole(bits >> 16) / 65_536.0]
                .map(|part| part * SIDE as f64 + BEYOND)
        };
        let shifts = core::array::from_fn(|_| shift(&mut generator));
        Self { pattern: Some(Box::new(Pattern::of(&pattern))), shifts }
    }

    /// Marrow that is even throughout.
    #[must_use]
    pub const fn even() -> Self {
        Self { pattern: None, shifts: [[0.0; 2]; LEAVES] }
    }

    /// Density over its mean, less 1, at a point.
    #[must_use]
    pub fn at(&self, point: P3) -> f64 {
        let Some(pattern) = &self.pattern else { return 0.0 };
        let [u, v] = self.shift(whole(point.y / LEAF));
        pattern.at(point.x / CELL + u, point.z / CELL + v)
    }

    /// The integral of density over its mean, less 1, along the ray between two parameters, mm. Within
    /// a leaf the pattern at the middle of each quarter of a cell stands for it.
    #[must_use]
    pub fn along(&self, ray: &Ray, from: f64, to: f64) -> f64 {
        let Some(pattern) = &self.pattern else { return 0.0 };
        let Ray { origin, direction } = ray;
        let (forward, crosses) = (direction.y > 0.0, direction.y.abs() > 1e-9);
        let slowness = 1.0 / direction.y;
        let (x, dx) = (origin.x / CELL, direction.x / CELL);
        let (z, dz) = (origin.z / CELL, direction.z / CELL);
        // A quarter of a cell of the pattern aside at the most: half of one is 0.6 % of a film off.
        let quarters = 4.0 * (dx.abs() + dz.abs());
        let mut leaf = whole((origin.y + direction.y * from) / LEAF);
        let (mut sum, mut t) = (0.0, from);
        while t < to {
            let border = if forward { leaf + 1 } else { leaf } as f64 * LEAF;
            let leaves = if crosses { (border - origin.y) * slowness } else { to };
            let stop = lesser(leaves, to);
            if stop > t {
                let [u, v] = self.shift(leaf);
                let parts = whole((stop - t) * quarters) + 1;
                let step = (stop - t) / parts as f64;
                let mut inside = 0.0;
                for part in 0..parts {
                    let at = t + (part as f64 + 0.5) * step;
                    inside += pattern.at(x + dx * at + u, z + dz * at + v);
                }
                sum += inside * step;
                t = stop;
            }
            leaf += if forward { 1 } else { -1 };
        }
        sum
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // wrapped round
    const fn shift(&self, leaf: i64) -> [f64; 2] {
        self.shifts[leaf as usize % LEAVES]
    }
}

/// One leaf's pattern: a row more and a column more than it has, so that a cell's far corners need no
/// turning back.
#[derive(Debug, Clone, PartialEq)]
struct Pattern([[f32; SIDE + 1]; SIDE + 1]);

impl Pattern {
    /// From its values, row by row.
    fn of(values: &[f32]) -> Self {
        let value = |row: usize, column: usize| values[row % SIDE * SIDE + column % SIDE];
        Self(core::array::from_fn(|row| core::array::from_fn(|column| value(row, column))))
    }

    /// Between its cells, at a place in cells that has been shifted past nothing.
    #[inline]
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // wrapped round
    fn at(&self, x: f64, z: f64) -> f64 {
        // Cutting off is rounding down past nothing.
        let (i, j) = (greater(x, 0.0) as i32, greater(z, 0.0) as i32);
        let (p, q) = ((x - f64::from(i)) as f32, (z - f64::from(j)) as f32);
        let (i, j) = (i as usize % SIDE, j as usize % SIDE);
        let row = |row: &[f32; SIDE + 1]| row[i] + (row[i + 1] - row[i]) * p;
        let (a, b) = (row(&self.0[j]), row(&self.0[j + 1]));
        f64::from(a + (b - a) * q)
    }
}

/// Cells, a whole number of patterns, by which places are shifted past nothing.
const BEYOND: f64 = 8192.0;

/// Rounded down.
#[inline]
#[allow(clippy::cast_possible_truncation)] // leaves of a jaw
fn whole(value: f64) -> i64 {
    let cut = value as i64;
    if (cut as f64) > value { cut - 1 } else { cut }
}

/// Nearly normal with spread 1: four uniform numbers of 16 bits, summed.
fn nearly_normal(generator: &mut ChaCha8Rng) -> f32 {
    let bits = generator.next_u64();
    let sum: u64 = (0..4).map(|part| (bits >> (16 * part)) & 0xffff).sum();
    // Mean 2 and variance 4/12 of four uniform numbers.
    ((sum as f64 / 65_536.0 - 2.0) * 1.732_050_807_568_877_2) as f32
}

/// The pattern smoothed by a kernel along both axes; it repeats beyond its edges.
fn smooth(from: &[f32], kernel: &[f32]) -> Vec<f32> {
    let half = kernel.len() / 2;
    let pass = |from: &[f32], at: &dyn Fn(usize, usize) -> usize| -> Vec<f32> {
        let mut to = vec![0.0; from.len()];
        for line in 0..SIDE {
            for place in 0..SIDE {
                let taps = kernel.iter().enumerate();
                to[at(line, place)] = taps
                    .map(|(tap, w)| w * from[at(line, (place + SIDE + tap - half) % SIDE)])
                    .sum();
            }
        }
        to
    };
    let across = pass(from, &|line, place| line * SIDE + place);
    pass(&across, &|line, place| place * SIDE + line)
}

/// Takes the mean to nothing and the spread to [`SPREAD`], and keeps density above nothing.
fn level(pattern: &mut [f32]) {
    let count = pattern.len() as f32;
    let mean = pattern.iter().sum::<f32>() / count;
    let spread = libm::sqrtf(pattern.iter().map(|p| (p - mean) * (p - mean)).sum::<f32>() / count);
    for value in pattern.iter_mut() {
        *value = ((*value - mean) / spread.max(1e-6) * SPREAD as f32).max(-0.95);
    }
    let rest = pattern.iter().sum::<f32>() / count;
    for value in pattern.iter_mut() {
        *value -= rest;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::V3;

    #[test]
    fn the_mean_density_is_the_site_s_own() {
        let marrow = Marrow::of([7; 32]);
        let (mut sum, mut squares, mut count) = (0.0, 0.0, 0.0);
        for i in 0..40_000 {
            let turn = f64::from(i);
            let at = P3::new(0.0137 * turn, 0.29 * turn % 12.0, 0.211 * turn % 31.0);
            let value = marrow.at(at);
            sum += value;
            squares += value * value;
            count += 1.0;
        }
        assert!((sum / count).abs() < 0.02, "{}", sum / count);
        let spread = libm::sqrt(squares / count);
        assert!((0.3..0.6).contains(&spread), "{spread}");
    }

    #[test]
    fn the_sum_along_a_ray_is_that_of_its_points() {
        let marrow = Marrow::of([3; 32]);
        for i in 0..60 {
            let turn = f64::from(i);
            let direction = V3::new(0.3 * libm::sin(turn), -1.0, 0.4 * libm::sin(2.0 * turn));
            let Some(direction) = direction.unit() else { continue };
            let ray = Ray { origin: P3::new(turn * 0.3 - 8.0, 5.0, 6.0), direction };
            let steps = 20_000;
            let step = 9.0 / f64::from(steps);
            let march = (0..steps).map(|k| marrow.at(ray.at((f64::from(k) + 0.5) * step)));
            let march = march.sum::<f64>() * step;
            // Two hundredths of a millimetre of marrow bone weaken a film's beam by 0.1 to 0.2 %.
            assert!((marrow.along(&ray, 0.0, 9.0) - march).abs() < 0.02, "{i}: {march}");
        }
    }

    #[test]
    fn another_key_is_another_pattern_and_even_marrow_is_even() {
        let at = P3::new(1.2, -0.4, 8.0);
        let of = |key: u8| Marrow::of([key; 32]).at(at);
        assert_eq!(of(1).to_bits(), of(1).to_bits());
        assert_ne!(of(1).to_bits(), of(2).to_bits());
        assert_eq!(Marrow::even().at(at), 0.0);
    }
}
