//! Graft at true grain size, and the membrane as a line, in the section.

use super::Cutting;
use crate::anatomy::Wall;
use crate::figures::curve::Region;
use crate::figures::grain::{grains, stipple};
use crate::figures::show::grain_sizes;
use crate::figures::{Ink, cut};
use crate::geometry::P2;
use crate::measure::CONTOUR_FALL;
use crate::plan::choices::GrainSize;

impl Cutting<'_, '_> {
    /// Graft in gap or socket, and the contour layer outside the facial wall.
    pub(super) fn filling(&mut self) {
        let Some(graft) = self.scene.plan.graft_laid().cloned() else { return };
        if !self.scene.tooth_is_out() {
            return;
        }
        let body = self.scene.body();
        let metal = body.and_then(|body| Region::of(&[Self::silhouette(&body)]));
        let room = self.room(-graft.fill.get());
        let layer = graft.contour.map(|thick| self.contour_ring(thick.get()));
        let islands = self.below.islands.clone();
        let rings = core::iter::once(room).chain(layer).chain(islands);
        for ring in rings.filter(|ring| ring.len() > 2) {
            self.strew(ring, graft.grains, metal.as_ref());
        }
    }

    pub(super) fn strew(&mut self, ring: Vec<P2>, size: GrainSize, metal: Option<&Region>) {
        let taken = |at: P2| metal.is_some_and(|metal| metal.holds(at));
        let rings = [ring];
        if size == GrainSize::Dust {
            let dots = stipple(&rings, 30.0, |at| if taken(at) { 0.0 } else { 30.0 });
            let dots = self.put_all(&dots);
            self.sheet.dots(&dots, Ink::Stipple);
            return;
        }
        let Some(region) = Region::of(&rings) else { return };
        let chips: Vec<Vec<P2>> = grains(&region, grain_sizes(size), taken)
            .iter()
            .map(|chip| self.put_all(chip))
            .collect();
        self.sheet.area(chips, Ink::Grain);
    }

    /// The room to fill from a level down, in (y, z): socket, and defects out to the former face.
    fn room(&self, from: f64) -> Vec<P2> {
        let mut facial = Vec::new();
        let mut oral = Vec::new();
        let missing = cut::missing(&self.scene.ground.solid, Wall::Facial, 0.0);
        let floor = &self.below.floor;
        let end = floor.first().map_or(from, |at| at.y);
        let mut z = from;
        while z < end {
            let level = z.max(self.scene.crest(Wall::Facial));
            let roots = cut::roots_at(&self.scene.ground.solid, 0.0, level);
            if let (Some(first), Some(last)) = (roots.as_slice().first(), roots.as_slice().last()) {
                let face = self.scene.ground.solid.face(Wall::Facial, level);
                let out =
                    if missing.contains(level) { last.to.max(face) } else { last.to.min(face) };
                facial.push(P2::new(out, z));
                oral.push(P2::new(first.from, z));
            }
            z += 0.15;
        }
        facial.extend(floor.iter().rev());
        facial.extend(oral.into_iter().rev());
        facial
    }

    /// Thickness of the contour layer at a level: whole over the defect, falling to nothing beyond.
    fn layer(&self, thick: f64, z: f64) -> f64 {
        let lost = self.lost_stretches(Wall::Facial);
        let crest = self.scene.crest(Wall::Facial);
        let away = if lost.is_empty() {
            // Over a whole wall it lies on its coronal half.
            (z - crest - 0.5 * (self.below.deepest - crest)).max(0.0)
        } else {
            lost.iter().map(|part| (part.from - z).max(z - part.to).max(0.0)).fold(99.0, f64::min)
        };
        thick * (1.0 - away / CONTOUR_FALL).max(0.0)
    }

    fn contour_ring(&self, thick: f64) -> Vec<P2> {
        let crest = self.scene.crest(Wall::Facial);
        let mut inner = Vec::new();
        let mut outer = Vec::new();
        let mut z = crest;
        while z < self.apical {
            let layer = self.layer(thick, z);
            if layer > 0.0 {
                let face = self.scene.ground.solid.face(Wall::Facial, z);
                inner.push(P2::new(face, z));
                outer.push(P2::new(face + layer, z));
            }
            z += 0.2;
        }
        inner.extend(outer.into_iter().rev());
        inner
    }

    /// The membrane where the cut meets it: a line that lies on the drape, over the contour layer.
    pub(super) fn membrane(&mut self) {
        let Some(membrane) = self.scene.plan.membrane() else { return };
        let thick = self.scene.plan.graft_laid().and_then(|graft| graft.contour);
        let thick = thick.map_or(0.0, |layer| layer.get());
        let ink = self.scene.ink(crate::figures::lit::Part::Membrane, Ink::Membrane);
        for part in cut::stretches(&membrane.outline, 0.0).as_slice() {
            let mut line = Vec::new();
            let mut t = part.from;
            loop {
                line.push(self.on_drape(t, thick));
                if t >= part.to {
                    break;
                }
                t = (t + 0.25).min(part.to);
            }
            self.sheet.line(&line, ink);
        }
    }

    /// A point just outside the drape, lifted by the contour layer where there is one.
    pub(super) fn on_drape(&self, t: f64, thick: f64) -> P2 {
        let at = cut::drape(&self.scene.ground.solid, t);
        let off = 2.0 * self.sheet.pixel();
        let across = self.scene.ground.solid.map.across();
        if t >= 0.0 {
            let layer = if thick > 0.0 { self.layer(thick, at.y) } else { 0.0 };
            self.put(at.x + off + layer, at.y)
        } else if t >= -across {
            self.put(at.x, at.y - off)
        } else {
            self.put(at.x - off, at.y)
        }
    }
}
