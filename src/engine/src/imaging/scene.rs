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
use super::marrow::Marrow;
use super::materials::{Beam, Coefficients, Material};
use super::path::{Materials, Path};
use super::shape::Shape;
use super::sheet::clip;
use crate::anatomy::Density;
use crate::geometry::{Intervals, P3, Ray};

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
    /// How many layers after it lie wholly within its shape.
    pub holds: usize,
    /// A box round its shape.
    pub bounds: [P3; 2],
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
    bounds: [P3; 2],
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

    /// Lays one more layer on top.
    pub(super) fn lay(&mut self, name: &'static str, shape: Shape, only: Materials, to: Material) {
        let bounds = shape.bounds(BOUNDS);
        self.layers.push(Layer { name, shape, only, to, holds: 0, bounds });
    }

    /// Says that the layers after the one at this place lie within it, up to the last one laid.
    pub(super) fn close(&mut self, place: usize) {
        let after = self.layers.len().saturating_sub(place + 1);
        if let Some(layer) = self.layers.get_mut(place) {
            layer.holds = after;
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
        while let Some(layer) = self.layers.get(place) {
            if let Some(group) = groups.next_if(|group| group.from <= place)
                && apart(passed, group.bounds)
            {
                place = group.to;
                continue;
            }
            place += 1;
            let met = if apart(passed, layer.bounds) {
                Intervals::empty()
            } else {
                layer.shape.ray(ray, from, to)
            };
            if met.is_empty() {
                place += layer.holds;
            }
            for part in met.as_slice() {
                path.paint(part.from, part.to, layer.only, layer.to);
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

/// The box of a straight passage.
fn passage(a: P3, b: P3) -> [P3; 2] {
    [
        P3::new(a.x.min(b.x), a.y.min(b.y), a.z.min(b.z)),
        P3::new(a.x.max(b.x), a.y.max(b.y), a.z.max(b.z)),
    ]
}

/// Whether two boxes have nothing in common.
fn apart([a, b]: [P3; 2], [c, d]: [P3; 2]) -> bool {
    a.x > d.x || b.x < c.x || a.z > d.z || b.z < c.z || a.y > d.y || b.y < c.y
}

/// A box round two boxes.
fn joined([a, b]: [P3; 2], [c, d]: [P3; 2]) -> [P3; 2] {
    [
        P3::new(a.x.min(c.x), a.y.min(c.y), a.z.min(c.z)),
        P3::new(b.x.max(d.x), b.y.max(d.y), b.z.max(d.z)),
    ]
}

/// Compact bone round a canal, mm of radius.
pub(super) const fn rimmed(radius: f64) -> f64 {
    radius + RIM
}
