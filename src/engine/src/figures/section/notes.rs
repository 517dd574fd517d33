//! Distances, labels and words of the section.

use super::Cutting;
use super::body::Faces;
use crate::anatomy::Wall;
use crate::chart::Fact;
use crate::figures::lit::Part;
use crate::figures::scene::mm;
use crate::figures::sheet::Margin;
use crate::figures::show::directed;
use crate::figures::{Ink, cut};
use crate::geometry::{Cone, P2};
use crate::measure::{DRILL_OVERSHOOT, Measurements};
use crate::plan::Decision;
use crate::units::Mm;

impl Cutting<'_, '_> {
    /// Everything that is named or measured in the margins.
    pub(super) fn notes(&mut self) {
        self.note_levels();
        self.note_walls();
        self.note_structures();
        if let Some(body) = self.scene.body() {
            self.note_implant(&body);
            self.note_gap(&body);
            self.note_depth(&body);
        }
        self.note_cover();
    }

    pub(super) fn note_levels(&mut self) {
        let margin = self.scene.site().crown.margin_z.get();
        let at = self.put(super::TO - 1.8, margin);
        self.sheet.note(Margin::Right, at, "planned margin", Ink::Words);
        if self.scene.sees(Fact::GumThickness) {
            let site = self.scene.site();
            let z = 0.62 * self.apical;
            let at = self.put(
                self.scene.ground.solid.face(Wall::Facial, z) + 0.5 * site.soft.thickness.get(),
                z,
            );
            let words = format!("gum {}", mm(site.soft.thickness));
            self.sheet.note(Margin::Right, at, words, Ink::Words);
        }
    }

    fn note_walls(&mut self) {
        let believed = &self.scene.believed;
        let deepest = self.below.deepest;
        if !believed.ridge.is_seen() {
            let at =
                self.put(self.scene.ground.solid.face(Wall::Oral, 0.7 * deepest), 0.7 * deepest);
            self.sheet.note(Margin::Left, at, "ridge not seen yet", Ink::Quiet);
        }
        if !self.below.names.is_empty() {
            self.note_parts();
        } else if !self.scene.tooth_is_out() {
            let z = 0.45 * deepest;
            let at = self.put(self.inner(Wall::Oral, z).unwrap_or(0.0) + 0.8, z);
            let words = if believed.root.is_seen() { "root" } else { "root not seen yet" };
            let ink = if believed.root.is_seen() { Ink::Words } else { Ink::Quiet };
            self.sheet.note(Margin::Left, at, words, ink);
        }
        for wall in [Wall::Facial, Wall::Oral] {
            self.note_wall(wall);
        }
    }

    fn note_wall(&mut self, wall: Wall) {
        let (side, name, seen) = match wall {
            Wall::Facial => (Margin::Right, "facial", self.scene.believed.facial_wall.is_seen()),
            Wall::Oral => {
                (Margin::Left, self.scene.oral(), self.scene.believed.oral_wall.is_seen())
            }
        };
        let lost = self.lost_stretches(wall);
        let crest = self.scene.crest(wall);
        if let Some(part) = lost.first() {
            let z = 0.5 * (part.from + part.to);
            let face = self.scene.ground.solid.face(wall, z);
            let inner = self.hollow(wall, z);
            let at = self.put(0.5 * (face + inner), z);
            let words = format!("{name} wall missing, {}", mm(Mm::new(part.to - part.from)));
            let lit = wall == Wall::Facial && self.scene.show.lights(Part::Wall);
            self.sheet.note(side, at, words, if lit { Ink::Fault } else { Ink::Words });
            if part.from <= crest {
                let at = self.put(self.scene.ground.solid.face(wall, crest), crest);
                let words = "reconstructed crest";
                self.sheet.note(side, at, words, Ink::Quiet);
            }
        } else if !seen {
            let z = crest + 3.0;
            let at = self.put(self.scene.ground.solid.face(wall, z), z);
            self.sheet.note(side, at, format!("{name} wall not seen yet"), Ink::Quiet);
        } else {
            self.note_plate(wall, side, name);
        }
    }

    fn note_plate(&mut self, wall: Wall, side: Margin, name: &str) {
        let seen = wall == Wall::Oral || self.scene.believed.facial_plate.is_seen();
        let m = self.scene.measured();
        let plate = if wall == Wall::Facial { m.facial_plate() } else { m.oral_plate() };
        let z = self.scene.crest(wall) + 1.0;
        let face = self.scene.ground.solid.face(wall, z);
        let Some(inner) = self.inner(wall, z) else { return };
        let (from, to) = (self.put(inner, z), self.put(face, z));
        let ridge = self.scene.believed.ridge.is_seen();
        let words = match plate {
            Some(plate) if seen && ridge => {
                self.sheet.dimension(from, to, Ink::Dimension);
                format!("{name} plate {}", mm(plate))
            }
            _ => format!("{name} plate"),
        };
        self.sheet.note(side, to, words, Ink::Words);
    }

    pub(super) fn note_implant(&mut self, body: &Cone) {
        let Some(implant) = self.scene.implant() else { return };
        let at = body.axis_at(0.55 * body.length);
        let place = directed(
            Decision::OffsetFacial,
            implant.facial.get(),
            "on the tooth's axis",
            self.scene.tooth(),
        );
        let lean = directed(Decision::Tilt, implant.tilt.get(), "upright", self.scene.tooth());
        let size = format!("implant {:.1} x {}", implant.diameter.get(), mm(implant.length));
        let target = self.put(at.y - 0.4 * body.near, at.z);
        let ink = self.scene.ink(Part::Place, Ink::Words);
        self.sheet.note(Margin::Left, target, format!("{size}\n{place}\n{lean}"), ink);
        let tip = body.axis_at(body.length + DRILL_OVERSHOOT.get());
        let words = format!("drill, {} beyond", mm(DRILL_OVERSHOOT));
        let target = self.put(tip.y, tip.z);
        self.sheet.note(Margin::Left, target, words, Ink::Quiet);
        if let Some(depth) = self.bare_depth(body) {
            let off = body.radius(depth);
            let at = body.axis_at(depth);
            let target = self.put(at.y + off, at.z);
            self.sheet.note(Margin::Right, target, "threads without bone", Ink::Fault);
        }
    }

    /// Depth of the middle one of the threads that face no bone facially, if any.
    fn bare_depth(&self, body: &Cone) -> Option<f64> {
        let m = self.scene.measured();
        let depths: Vec<f64> = (1..40_u32)
            .map(|k| 0.5 * f64::from(k))
            .filter(|depth| *depth < body.length - 1.0)
            .filter(|depth| Self::faces(&m, *depth, Wall::Facial) == Faces::Nothing)
            .collect();
        depths.get(depths.len() / 2).copied()
    }

    /// The facial gap, drawn where it is measured.
    fn note_gap(&mut self, body: &Cone) {
        let m = self.scene.measured();
        let Some(gap) = m.facial_gap() else { return };
        let (from, to) = self.gap_ends(body, gap.width.get());
        let ink = self.scene.ink(Part::Gap, Ink::Dimension);
        self.sheet.dimension(from, to, ink);
        let words = if gap.wall_present {
            format!("facial gap {}", mm(gap.width))
        } else {
            format!("{} to where the facial wall was", mm(gap.width))
        };
        let words_ink = if ink == Ink::Fault { Ink::Fault } else { Ink::Words };
        let middle = P2::new(0.5 * (from.x + to.x), from.y);
        self.sheet.note(Margin::Right, middle, words, words_ink);
    }

    /// Where the facial gap is drawn: from the implant's most facial point at its platform, on its
    /// facial line at the crest where that point stands above it.
    pub(super) fn gap_ends(&self, body: &Cone, width: f64) -> (P2, P2) {
        let line = body.generator(body.frame.facial);
        let rise = line.direction.z.max(1e-9);
        let depth =
            ((self.scene.crest(Wall::Facial) - line.origin.z) / rise).clamp(0.0, body.length);
        let start = line.at(depth);
        (self.put(start.y, start.z), self.put(start.y + width, start.z))
    }

    pub(super) fn note_depth(&mut self, body: &Cone) {
        let m = self.scene.measured();
        let Some(depth) = m.depth_from_margin() else { return };
        let site = self.scene.site();
        let y = self.scene.ground.solid.face(Wall::Facial, 0.0) + site.soft.thickness.get() + 0.9;
        let z = body.frame.origin.z;
        let ink = self.scene.ink(Part::Depth, Ink::Dimension);
        let (from, to) = (self.put(y, z - depth.get()), self.put(y, z));
        self.sheet.dimension(from, to, ink);
        let level = [self.put(body.frame.origin.y + body.near, z), self.put(y + 0.4, z)];
        self.sheet.line(&level, Ink::Fine);
        let way = if depth.get() < 0.0 { "above" } else { "below" };
        let words = format!("{} {way} the planned margin", mm(depth.abs()));
        let words_ink = if ink == Ink::Fault { Ink::Fault } else { Ink::Words };
        let middle = P2::new(y, 0.5 * (from.y + to.y));
        self.sheet.note(Margin::Right, middle, words, words_ink);
    }

    fn note_cover(&mut self) {
        let Some(membrane) = self.scene.plan.membrane() else { return };
        let cut = cut::stretches(&membrane.outline, 0.0);
        let Some(part) = cut.as_slice().last() else { return };
        let thick = self.scene.plan.graft_laid().and_then(|graft| graft.contour);
        let at = self.on_drape(0.35 * part.from + 0.65 * part.to, thick.map_or(0.0, Mm::get));
        let ink = self.scene.ink(Part::Membrane, Ink::Words);
        self.sheet.note(Margin::Right, at, "membrane", ink);
    }

    /// The section in sentences.
    pub(super) fn says(&self) -> String {
        let mut said = vec![format!(
            "The ridge cut from facial to {}, through the middle of tooth {}.",
            self.scene.oral(),
            self.scene.show.case.site.tooth
        )];
        let m = self.scene.measured();
        let believed = &self.scene.believed;
        if !self.below.says.is_empty() {
            said.push(self.below.says.clone());
        }
        if !believed.ridge.is_seen() {
            said.push("The ridge has not been seen yet; its outline is a supposition.".to_owned());
        }
        said.push(self.say_facial_wall(&m));
        if let (Some(implant), Some(body)) = (self.scene.implant(), self.scene.body()) {
            let place = directed(
                Decision::OffsetFacial,
                implant.facial.get(),
                "on the tooth's axis",
                self.scene.tooth(),
            );
            let lean = directed(Decision::Tilt, implant.tilt.get(), "upright", self.scene.tooth());
            said.push(format!(
                "An implant of {:.1} by {} stands {place}, {lean}.",
                2.0 * body.near,
                mm(implant.length)
            ));
            if let Some(gap) = m.facial_gap() {
                said.push(if gap.wall_present {
                    format!("The facial gap is {}.", mm(gap.width))
                } else {
                    format!("It is {} to where the facial wall was.", mm(gap.width))
                });
            }
            if let Some(depth) = m.depth_from_margin() {
                let way = if depth.get() < 0.0 { "above" } else { "below" };
                said.push(format!(
                    "The platform lies {} {way} the planned margin.",
                    mm(depth.abs())
                ));
            }
            if self.bare_depth(&body).is_some() {
                said.push("Threads on the facial side have no bone to face.".to_owned());
            }
        }
        said.extend(self.say_structures());
        said.join(" ")
    }

    fn say_facial_wall(&self, m: &Measurements<'_>) -> String {
        let lost: f64 =
            self.lost_stretches(Wall::Facial).iter().map(|part| part.to - part.from).sum();
        if lost > 0.0 {
            format!("The facial wall is missing over {} in this cut.", mm(Mm::new(lost)))
        } else if !self.scene.believed.facial_wall.is_seen() {
            "Whether the facial wall is whole has not been seen yet.".to_owned()
        } else {
            match m.facial_plate() {
                Some(plate)
                    if self.scene.believed.facial_plate.is_seen()
                        && self.scene.believed.ridge.is_seen() =>
                {
                    format!("The facial wall is whole here, {} thick.", mm(plate))
                }
                _ => "The facial wall is whole here.".to_owned(),
            }
        }
    }
}
