//! A site and what has been done there, as materials in space: what films and sections are made of.
//!
//! A scene is a list of layers, laid from the ground up. Each says where it lies and what it makes of
//! what lay there before, so that along a ray the exact intervals of each shape are painted one over
//! the other, and a point is asked layer by layer. Highest: titanium, then graft, tooth, room and
//! nerve, compact bone, marrow bone, gum, air.
//!
//! The lip or cheek in front and what is behind the receptor are left out: over a film they change
//! nothing but the exposure.

use super::bone::{BOUNDS, RIM};
use super::bounds::{Bounds, apart, clip, joined};
use super::marrow::Marrow;
use super::materials::{Beam, Coefficients, Material};
use super::path::{Materials, Path};
use super::shape::Shape;

use crate::anatomy::Density;
use crate::geometry::{P3, Ray};

/// One layer.
#[derive(Debug, Clone, PartialEq)]
pub struct Layer {
    /// What it is called, for whoever writes the scene down.
    pub name: &'static str,
    /// Where it lies.
    pub shape: Shape,
    /// What it changes.
    pub only: Materials,
    /// Into what.
    pub to: Material,
    /// The place of an earlier layer within whose shape it lies.
    pub within: Option<usize>,
    /// A box round its shape.
    pub bounds: Bounds,
}

/// The scene. See the module.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    pub(super) layers: Vec<Layer>,
    groups: Vec<Group>,
    pub(super) density: Density,
    pub(super) marrow: Marrow,
}

/// Layers of one thing, as a tooth, with a box round all of them.
#[derive(Debug, Clone, PartialEq)]
struct Group {
    from: usize,
    to: usize,
    bounds: Bounds,
}

impl Scene {
    pub(super) const fn new(density: Density, marrow: Marrow) -> Self {
        Self { layers: Vec::new(), groups: Vec::new(), density, marrow }
    }

    /// Says that the layers from a place on, up to the last one laid, are one thing.
    pub(super) fn group(&mut self, from: usize) {
        let to = self.layers.len();
        let boxes = self.layers[from.min(to)..].iter().map(|layer| layer.bounds);
        if let Some(bounds) = boxes.reduce(joined) {
            self.groups.push(Group { from, to, bounds });
        }
    }

    /// Lays one more layer on top and returns its place.
    pub(super) fn lay(
        &mut self,
        name: &'static str,
        shape: Shape,
        only: Materials,
        to: Material,
    ) -> usize {
        let bounds = shape.bounds(BOUNDS);
        self.layers.push(Layer { name, shape, only, to, within: None, bounds });
        self.layers.len() - 1
    }

    /// Says that a layer lies within the shape of an earlier one.
    pub(super) fn nest(&mut self, place: usize, within: usize) {
        if let Some(layer) = self.layers.get_mut(place) {
            layer.within = Some(within);
        }
    }

    /// The layers from the ground up.
    #[must_use]
    pub fn layers(&self) -> &[Layer] {
        &self.layers
    }

    /// The coefficients of its materials.
    #[must_use]
    pub fn coefficients(&self, beam: Beam) -> Coefficients {
        Coefficients::at(beam, &self.density)
    }

    /// The variation of its marrow bone.
    #[must_use]
    pub const fn marrow(&self) -> &Marrow {
        &self.marrow
    }

    /// The same with marrow bone that is even throughout.
    #[must_use]
    pub fn evenly(self) -> Self {
        Self { marrow: Marrow::even(), ..self }
    }

    /// Least and greatest y of anything but air, mm: what a ray towards a receptor has to pass.
    #[must_use]
    pub fn depth(&self) -> [f64; 2] {
        let solid = self.layers.iter().filter(|layer| !matches!(layer.shape, Shape::Window(_)));
        let all = solid.map(|layer| layer.bounds).reduce(joined).unwrap_or(BOUNDS);
        [all[0].y, all[1].y]
    }

    /// What lies along a ray between two parameters; nothing where it passes the scene by.
    pub fn trace(&self, ray: &Ray, from: f64, to: f64, path: &mut Path) {
        let Some((from, to)) = clip(BOUNDS, ray, from, to) else {
            path.clear(0.0, 0.0);
            return;
        };
        path.clear(from, to);
        let passed = passage(ray.at(from), ray.at(to));
        let (mut place, mut groups) = (0, self.groups.iter().peekable());
        let mut met = Met::default();
        while let Some(layer) = self.layers.get(place) {
            if let Some(group) = groups.next_if(|group| group.from <= place)
                && apart(&passed, &group.bounds)
            {
                place = group.to;
                continue;
            }
            let missed = layer.within.is_some_and(|around| !met.has(around));
            if !missed && !apart(&passed, &layer.bounds) {
                layer.shape.each(ray, from, to, |a, b| {
                    met.add(place);
                    path.paint(a, b, layer.only, layer.to);
                });
            }
            place += 1;
        }
    }

    /// The places of the layers that a bundle of rays within a box can meet, from the ground up.
    #[must_use]
    pub fn among(&self, bundle: &Bounds) -> Vec<usize> {
        let near = self.layers.iter().enumerate().filter(|(_, one)| !apart(bundle, &one.bounds));
        near.map(|(place, _)| place).collect()
    }

    /// The same as [`Self::trace`] for a ray of a bundle, by the layers that the bundle can meet.
    pub fn trace_among(&self, kept: &[usize], ray: &Ray, from: f64, to: f64, path: &mut Path) {
        let Some((from, to)) = clip(BOUNDS, ray, from, to) else {
            path.clear(0.0, 0.0);
            return;
        };
        path.clear(from, to);
        let mut met = Met::default();
        for &place in kept {
            let Some(layer) = self.layers.get(place) else { continue };
            if layer.within.is_none_or(|around| met.has(around)) {
                layer.shape.each(ray, from, to, |a, b| {
                    met.add(place);
                    path.paint(a, b, layer.only, layer.to);
                });
            }
        }
    }

    /// What lies at a point (on a surface, either answer).
    #[must_use]
    pub fn material(&self, point: P3) -> Material {
        self.layers.iter().fold(Material::Air, |before, layer| {
            if layer.only.has(before) && layer.shape.contains(point) { layer.to } else { before }
        })
    }
}

/// Which of the first layers were met; of later ones it is taken that they were.
#[derive(Default)]
struct Met(u128);

impl Met {
    const fn add(&mut self, place: usize) {
        if place < 128 {
            self.0 |= 1 << place;
        }
    }

    const fn has(&self, place: usize) -> bool {
        place >= 128 || self.0 & (1 << place) != 0
    }
}

/// The box of a straight passage.
#[inline]
fn passage(a: P3, b: P3) -> Bounds {
    joined([a, a], [b, b])
}

/// Compact bone round a canal, mm of radius.
pub(super) const fn rimmed(radius: f64) -> f64 {
    radius + RIM
}
