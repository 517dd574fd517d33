//! An intraoral film: what is left of the beam behind the site, pixel by pixel.

use super::aim::{Aim, View};
use super::bone::BOUNDS;
use super::bounds::{Bounds, greater, joined, lesser};
use super::materials::{Beam, Coefficients, Material};
use super::noise::Noise;
use super::path::Path;
use super::scene::Scene;
use crate::anatomy::Site;
use crate::geometry::{P3, Ray};

/// Quanta that reach a pixel behind nothing (ours: as grainy as a usual exposure).
const QUANTA: f64 = 5000.0;
/// Share of the beam that gives the middle grey, and how steep the curve is there (ours: enamel is
/// nearly white, air nearly black, marrow bone in the lower half).
const MIDDLE: f64 = 0.34;
const STEEPNESS: f64 = 2.1;

/// Pixels on a side of a tile whose rays are asked together what they can meet.
const TILE: u32 = 8;

/// A film.
#[derive(Debug, Clone, PartialEq)]
pub struct Film {
    /// Where tube and receptor stood.
    pub view: View,
    /// Share of the beam that is left, row by row, before any noise.
    pub left: Vec<f64>,
    /// Grey, row by row: 0 where nothing lay in the way, 255 where nothing came through.
    pub grey: Vec<u8>,
}

/// Takes a film. The focus is a point (a focal spot of 0.4 to 0.7 mm blurs by less than a third of a
/// pixel); one ray stands for a pixel; scatter, the fall of intensity to the edges and the spectrum's
/// hardening are left out.
#[must_use]
pub fn film(scene: &Scene, site: &Site, aim: &Aim, noise: &mut Noise) -> Film {
    let view = View::of(site, aim);
    let coefficients = scene.coefficients(Beam::Intraoral);
    let [columns, rows] = view.pixels;
    let mut path = Path::default();
    let mut left = vec![0.0; (columns * rows) as usize];
    for top in (0..rows).step_by(TILE as usize) {
        for start in (0..columns).step_by(TILE as usize) {
            let (end, below) = ((start + TILE).min(columns), (top + TILE).min(rows));
            let kept = scene.among(&bundle(&view, [start, end - 1], [top, below - 1]));
            for row in top..below {
                for column in start..end {
                    let (ray, length) = view.ray(f64::from(column), f64::from(row));
                    scene.trace_among(&kept, &ray, 0.0, length, &mut path);
                    left[(row * columns + column) as usize] =
                        libm::exp(-weakening(scene, &coefficients, &ray, &path));
                }
            }
        }
    }
    let curve = Curve::new();
    let grey = left
        .iter()
        .map(|share| {
            let quanta = QUANTA * share;
            let counted = quanta + quanta.sqrt() * noise.normal();
            curve.grey(counted / QUANTA)
        })
        .collect();
    Film { view, left, grey }
}

/// A box round what the rays of a tile pass of the scene. Between two planes of y they lie within the
/// hull of where its corner rays pass these; where one does not cross both, the box is the scene's.
fn bundle(view: &View, columns: [u32; 2], rows: [u32; 2]) -> Bounds {
    let [low, high] = BOUNDS;
    let mut whole: Option<Bounds> = None;
    for column in columns {
        for row in rows {
            let (ray, _) = view.ray(f64::from(column), f64::from(row));
            if ray.direction.y > -0.1 {
                return BOUNDS;
            }
            for y in [low.y, high.y] {
                let at = ray.at((y - ray.origin.y) / ray.direction.y);
                // A little wider, so that no rounding leaves out what a ray just touches.
                let near = [P3::new(-1e-6, 0.0, -1e-6), P3::new(1e-6, 0.0, 1e-6)];
                let [a, b] = near.map(|off| P3::new(at.x + off.x, y, at.z + off.z));
                whole = Some(whole.map_or([a, b], |before| joined(before, [a, b])));
            }
        }
    }
    whole.unwrap_or(BOUNDS)
}

/// The share of the beam that is left of one ray at a depth, mm.
#[must_use]
pub fn left(scene: &Scene, ray: &Ray, depth: f64) -> f64 {
    let mut path = Path::default();
    scene.trace(ray, 0.0, depth, &mut path);
    libm::exp(-weakening(scene, &scene.coefficients(Beam::Intraoral), ray, &path))
}

/// The sum of coefficient times length along a path.
fn weakening(scene: &Scene, coefficients: &Coefficients, ray: &Ray, path: &Path) -> f64 {
    path.iter()
        .map(|(from, to, material)| {
            let length = match material {
                Material::Spongiosa => to - from + scene.marrow().along(ray, from, to),
                _ => to - from,
            };
            coefficients.of(material) * length
        })
        .sum()
}

/// What is left of one ray by marching: the scene is asked at the middle of each of `steps` equal
/// steps between two depths. The reference that films are held against; it shares no interval with
/// them.
#[must_use]
pub fn marched(scene: &Scene, ray: &Ray, [from, to]: [f64; 2], steps: u32) -> f64 {
    let coefficients = scene.coefficients(Beam::Intraoral);
    let step = (to - from) / f64::from(steps);
    let sum: f64 = (0..steps)
        .map(|turn| {
            let at: P3 = ray.at(from + (f64::from(turn) + 0.5) * step);
            let material = scene.material(at);
            let more = if material == Material::Spongiosa { scene.marrow().at(at) } else { 0.0 };
            coefficients.of(material) * (1.0 + more)
        })
        .sum();
    libm::exp(-sum * step)
}

/// The grey curve, as a table: a film darkens over the logarithm of the exposure along an S.
#[derive(Debug)]
struct Curve(Vec<u8>);

/// Entries for a whole beam.
const ENTRIES: f64 = 4096.0;

impl Curve {
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // 0 to 255
    fn new() -> Self {
        let entry = |place: u32| {
            let share = (f64::from(place) + 0.5) / ENTRIES;
            let white = 1.0 / (1.0 + libm::pow(share / MIDDLE, STEEPNESS));
            libm::round(255.0 * white) as u8
        };
        Self((0..5000).map(entry).collect())
    }

    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss)] // held to the table
    fn grey(&self, share: f64) -> u8 {
        let last = self.0.len() - 1;
        let place = lesser(greater(share, 0.0) * ENTRIES, last as f64) as usize;
        self.0.get(place).copied().unwrap_or(0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn less_light_is_never_darker() {
        let curve = Curve::new();
        let greys: Vec<u8> = (0..=120).map(|i| curve.grey(f64::from(i) / 100.0)).collect();
        assert!(greys.windows(2).all(|pair| pair[0] >= pair[1]));
        assert!(greys[100] < 40 && greys[0] > 250, "{greys:?}");
        assert_eq!(curve.grey(-1.0), greys[0]);
    }
}
