//! Gum, tooth or socket, planned crown, and the levels that come with it.

use super::Cutting;
use crate::anatomy::Wall;
use crate::figures::curve::smooth_line;
use crate::figures::{Ink, cut};
use crate::geometry::{Cone, P2};

impl Cutting<'_, '_> {
    /// Gum on both sides. The oral side has no level and thickness of its own in a case and is drawn
    /// with those of the facial side.
    pub(super) fn gum(&mut self) {
        for wall in [Wall::Facial, Wall::Oral] {
            let Some(ring) = self.gum_ring(wall) else { continue };
            let ring = self.put_all(&ring);
            self.sheet.area(vec![ring], Ink::Gum);
        }
    }

    fn gum_ring(&self, wall: Wall) -> Option<Vec<P2>> {
        let site = self.scene.site();
        let out = if wall == Wall::Facial { 1.0 } else { -1.0 };
        let thickness = site.soft.thickness.get();
        let crest = self.scene.crest(wall);
        let margin = site.soft.margin_z.get() + (crest - self.scene.crest(Wall::Facial));
        let reflected = self.reflected(wall);
        let from = reflected.unwrap_or(crest);
        let mut inner = Vec::new();
        let mut outer = Vec::new();
        let mut z = self.apical + 1.0;
        while z > from {
            let face = self.scene.ground.solid.face(wall, z);
            inner.push(P2::new(face, z));
            outer.push(P2::new(face + out * thickness, z));
            z -= 0.5;
        }
        let face = self.scene.ground.solid.face(wall, from);
        if reflected.is_some() {
            inner.push(P2::new(face, from));
            outer.push(P2::new(face + out * 0.5 * thickness, from - 0.1));
        } else {
            // Over the crest to the neck of the tooth, then up along it to the margin.
            let neck = self.neck(wall);
            inner.extend([P2::new(face, from), P2::new(neck, from), P2::new(neck, margin)]);
            let tall = from - margin;
            outer.extend([
                P2::new(0.85 * face + 0.15 * neck + out * thickness, from),
                P2::new(0.4 * face + 0.6 * neck + out * 0.95 * thickness, from - 0.5 * tall),
                P2::new(neck + out * 0.5 * thickness, margin + 0.1 * tall),
                P2::new(neck, margin),
            ]);
        }
        let mut ring = inner;
        ring.extend(smooth_line(&outer, 3).into_iter().rev());
        Some(ring)
    }

    /// Apical end of the area that a raised flap lays bare in the cut, while it is open.
    fn reflected(&self, wall: Wall) -> Option<f64> {
        if self.scene.plan.closure.is_some() {
            return None;
        }
        let flap = self.scene.plan.flap.as_ref()?;
        match wall {
            Wall::Facial => {
                let outline = &flap.raised.as_ref()?.outline;
                let apical = cut::stretches(outline, 0.0).as_slice().last()?.to;
                (apical > 0.0).then(|| cut::drape(&self.scene.ground.solid, apical).y)
            }
            Wall::Oral => {
                let raised = flap.oral.get();
                (raised > 0.0).then(|| {
                    let across = self.scene.ground.solid.map.across();
                    cut::drape(&self.scene.ground.solid, -across - raised).y
                })
            }
        }
    }

    /// y of the tooth's surface at its neck on one side.
    fn neck(&self, wall: Wall) -> f64 {
        let root = self.scene.site().coronal();
        let row =
            cut::root_rows(&self.scene.ground.solid, 0.0).into_iter().next().map(|(_, row)| row);
        let (y, half) = (root.y.get(), root.half_fo.get());
        match wall {
            Wall::Facial => row.map_or(y + half, |row| row.to),
            Wall::Oral => row.map_or(y - half, |row| row.from),
        }
    }

    /// The tooth, or the socket that it left.
    pub(super) fn tooth_or_socket(&mut self) {
        let site = self.scene.site();
        let seen = self.scene.believed.root.is_seen();
        let out = self.scene.tooth_is_out();
        let from = if out {
            self.scene.crest(Wall::Facial).min(self.scene.crest(Wall::Oral))
        } else {
            f64::NEG_INFINITY
        };
        let rows = cut::root_rows(&self.scene.ground.solid, 0.0);
        let mut facial: Vec<P2> =
            rows.iter().filter(|(z, _)| *z >= from).map(|(z, row)| P2::new(row.to, *z)).collect();
        let mut oral: Vec<P2> =
            rows.iter().filter(|(z, _)| *z >= from).map(|(z, row)| P2::new(row.from, *z)).collect();
        if out {
            for (wall, line) in [(Wall::Facial, &mut facial), (Wall::Oral, &mut oral)] {
                if let Some(y) = self.inner(wall, from) {
                    line.insert(0, P2::new(y, from));
                }
            }
        }
        let mut ring = facial;
        ring.extend(self.below.floor.iter().rev());
        ring.extend(oral.into_iter().rev());
        let rings = core::iter::once(&ring).chain(&self.below.islands);
        let rings: Vec<_> = rings.map(|ring| self.put_all(ring)).collect();
        match (out, seen) {
            (true, _) => self.sheet.area(rings, Ink::Socket),
            (false, true) => self.sheet.area(rings, Ink::Tooth),
            (false, false) => self.sheet.lines(&rings, Ink::Dashed),
        }
        if !out {
            let neck = -site.coronal().neck.get();
            let crown = self.put_all(&self.crown_ring(neck, neck));
            self.sheet.area(vec![crown], Ink::Tooth);
        }
    }

    /// The planned crown, once the tooth is out.
    pub(super) fn planned_crown(&mut self) {
        if self.scene.tooth_is_out() {
            self.crown_over(self.scene.body());
        }
    }

    /// The planned crown over an implant's body, or over nothing.
    pub(super) fn crown_over(&mut self, body: Option<Cone>) {
        let margin = self.scene.site().crown.margin_z.get();
        let mut line = self.crown_ring(margin, margin);
        if let Some(body) = body {
            // The crown comes out of the implant: its flanks run down to the platform's edges.
            let at = body.frame.origin;
            let (facial, oral) = (P2::new(at.y + body.near, at.z), P2::new(at.y - body.near, at.z));
            line.insert(0, facial);
            line.push(oral);
        }
        line.extend(line.first().copied());
        let line = self.put_all(&line);
        self.sheet.line(&line, Ink::Crown);
    }

    /// A crown in (y, z), from its facial margin over the edge to its oral margin.
    fn crown_ring(&self, facial_margin: f64, oral_margin: f64) -> Vec<P2> {
        let site = self.scene.site();
        let edge = site.crown.edge;
        let (facial, oral) = (self.neck(Wall::Facial), self.neck(Wall::Oral));
        let tall = edge.z - facial_margin;
        let down = |from: f64, share: f64| from + share * tall;
        let points = if site.tooth.is_anterior() {
            vec![
                P2::new(facial, facial_margin),
                P2::new(facial + 0.42, down(facial_margin, 0.3)),
                P2::new(0.45 * facial + 0.55 * edge.y + 0.55, down(facial_margin, 0.68)),
                P2::new(edge.y + 0.5, edge.z - 0.03 * tall),
                P2::new(edge.y, edge.z),
                P2::new(edge.y - 0.55, edge.z - 0.06 * tall),
                P2::new(0.6 * edge.y + 0.4 * oral - 0.1, down(facial_margin, 0.6)),
                P2::new(oral - 0.25, down(facial_margin, 0.22)),
                P2::new(oral, oral_margin),
            ]
        } else {
            let half = 0.5 * (facial - oral);
            vec![
                P2::new(facial, facial_margin),
                P2::new(facial + 0.7, down(facial_margin, 0.35)),
                P2::new(edge.y + 0.95 * half, down(facial_margin, 0.75)),
                P2::new(edge.y + 0.55 * half, edge.z + 0.06 * tall),
                P2::new(edge.y, edge.z - 0.16 * tall),
                P2::new(edge.y - 0.55 * half, edge.z + 0.04 * tall),
                P2::new(edge.y - 0.95 * half, down(facial_margin, 0.72)),
                P2::new(oral - 0.7, down(facial_margin, 0.35)),
                P2::new(oral, oral_margin),
            ]
        };
        smooth_line(&points, 8)
    }

    /// Levels of the planned margin and of the crest, as fine lines beside the drawing.
    pub(super) fn levels(&mut self) {
        let site = self.scene.site();
        let margin = site.crown.margin_z.get();
        let from = self.neck(Wall::Facial) - 0.6;
        let line = [self.put(from, margin), self.put(super::TO - 0.4, margin)];
        self.sheet.line(&line, Ink::Crown);
    }
}
