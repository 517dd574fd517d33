//! Labels and words of the map.

use super::Mapping;
use crate::anatomy::{DefectKind, Wall};
use crate::figures::Ink;
use crate::figures::lit::Part;
use crate::figures::scene::mm;
use crate::geometry::{P2, polyline};
use crate::measure::Margins;
use crate::units::Mm;

impl Mapping<'_, '_> {
    /// Labels of what lies on the map.
    pub(super) fn notes(&mut self) {
        let site = self.scene.site().clone();
        for defect in &site.defects {
            let points = defect.outline.points();
            let at = middle(&points);
            let at = if defect.wall == Wall::Facial { P2::new(at.x, at.y.max(1.0)) } else { at };
            let words = defect_words(defect.kind, defect.wall, self.scene.oral());
            let lit = defect.wall == Wall::Facial && self.scene.show.lights(Part::Wall);
            let ink = if lit { Ink::Fault } else { Ink::Words };
            self.sheet.note(self.margin_at(at.x + 0.01), self.put(at.x, at.y), words, ink);
        }
        if !self.scene.believed.facial_wall.is_seen() {
            let at = self.put(1.5, 3.0);
            self.sheet.note(self.margin_at(1.5), at, "facial wall not seen yet", Ink::Quiet);
        }
        if !self.scene.believed.ridge.is_seen() {
            let at = self.put(-super::HALF + 2.0, 9.0);
            self.sheet.note(self.margin_at(-9.0), at, "form of the ridge not seen yet", Ink::Quiet);
        }
        self.note_crest();
        if let Some(foramen) = site.vital.foramen {
            let t = self.scene.ground.solid.map.t(Wall::Facial, foramen.z);
            let at = self.put(foramen.x, t);
            self.sheet.note(self.margin_at(foramen.x), at, "mental foramen", Ink::Words);
        }
        self.note_cover();
    }

    fn note_crest(&mut self) {
        let seen = self.scene.believed.crest.is_seen();
        let s = -0.55 * super::HALF;
        let knots = &self.scene.site().ridge.crest.knots;
        let z = polyline::value(knots, s);
        let at = self.put(s, self.t_of(Wall::Facial, z));
        let words = if seen { "facial crest" } else { "facial crest not seen yet" };
        let ink = if seen { Ink::Words } else { Ink::Quiet };
        self.sheet.note(self.margin_at(s), at, words, ink);
    }

    fn note_cover(&mut self) {
        if let Some(membrane) = self.scene.plan.membrane() {
            let corner = apical_corner(&membrane.outline.points(), -1.0);
            let at = self.put(corner.x, corner.y);
            self.sheet.note(self.margin_at(corner.x), at, "membrane", Ink::Words);
        }
        if let Some(flap) = self.scene.plan.raised() {
            let corner = apical_corner(&flap.outline.points(), 1.0);
            let at = self.put(corner.x, corner.y - 0.6);
            self.sheet.note(self.margin_at(corner.x), at, "reflected area", Ink::Words);
        }
        let oral = self.scene.plan.flap.as_ref().map_or(0.0, |flap| flap.oral.get());
        if oral > 0.0 {
            let s = 0.5 * super::HALF;
            let at = self.put(s, -self.scene.ground.solid.map.across() - 0.5 * oral);
            let words = format!("{} margin raised {}", self.scene.oral(), mm(Mm::new(oral)));
            self.sheet.note(self.margin_at(s), at, words, Ink::Words);
        }
    }

    /// The map in sentences.
    pub(super) fn says(&self) -> String {
        let scene = self.scene;
        let oral = scene.oral();
        let mut said = vec![format!(
            "The ridge unrolled: the facial side, across the crest, the {oral} side."
        )];
        if !scene.believed.facial_wall.is_seen() {
            said.push("Whether the facial wall is whole has not been seen yet.".to_owned());
        } else if scene.site().defects_of(Wall::Facial).next().is_none() {
            said.push("No defect of the facial wall.".to_owned());
        }
        let m = scene.measured();
        for defect in &scene.site().defects {
            let points = defect.outline.points();
            let (least, most) = points
                .iter()
                .fold((f64::MAX, f64::MIN), |(least, most), at| (least.min(at.x), most.max(at.x)));
            let deep = points.iter().map(|at| at.y).fold(f64::MIN, f64::max);
            let mut words = format!(
                "A {}, {} wide",
                defect_words(defect.kind, defect.wall, oral),
                mm(Mm::new(most - least))
            );
            if defect.wall == Wall::Facial {
                words.push_str(&format!(
                    ", reaching {} below the reference crest",
                    mm(Mm::new(deep))
                ));
            }
            said.push(format!("{words}."));
        }
        if let Some(flap) = scene.plan.raised() {
            let corners = flap.outline.tenths().len();
            said.push(format!("The reflected area has {corners} corners."));
        }
        if let Some(margins) = m.membrane_margin() {
            said.push(say_margins("The membrane lies on bone", &margins, oral));
        } else if let Some(membrane) = scene.plan.membrane() {
            said.push(format!("A membrane of {} is laid.", membrane.kind.label()));
        }
        if let Some(margins) = m.flap_beyond_membrane() {
            said.push(say_margins("The flap reaches beyond the membrane", &margins, oral));
        }
        said.retain(|sentence| !sentence.is_empty());
        said.join(" ")
    }
}

fn say_margins(what: &str, margins: &Margins, oral: &str) -> String {
    let sides = [
        (margins.mesial, "mesially".to_owned()),
        (margins.distal, "distally".to_owned()),
        (margins.apical, "apically".to_owned()),
        (margins.oral, format!("to the {oral} side")),
    ];
    let parts: Vec<String> = sides
        .into_iter()
        .filter_map(|(margin, way)| margin.map(|margin| (margin, way)))
        .map(|(margin, way)| {
            let short = if margin.get() < 0.0 { " short" } else { "" };
            format!("{}{short} {way}", mm(margin.abs()))
        })
        .collect();
    if parts.is_empty() { String::new() } else { format!("{what}: {}.", parts.join(", ")) }
}

fn defect_words(kind: DefectKind, wall: Wall, oral: &str) -> String {
    let side = if wall == Wall::Facial { "facial" } else { oral };
    match kind {
        DefectKind::DehiscenceV => format!("V-shaped dehiscence of the {side} wall"),
        DefectKind::DehiscenceU => format!("U-shaped dehiscence of the {side} wall"),
        DefectKind::Fenestration => format!("fenestration of the {side} wall"),
        DefectKind::LostWall => format!("lost {side} wall"),
    }
}

fn middle(points: &[P2]) -> P2 {
    let count = points.iter().map(|_| 1.0).sum::<f64>().max(1.0);
    let (s, t) = points.iter().fold((0.0, 0.0), |(s, t), at| (s + at.x, t + at.y));
    P2::new(s / count, t / count)
}

/// The most apical corner on one side (-1 mesial, 1 distal).
fn apical_corner(points: &[P2], side: f64) -> P2 {
    points
        .iter()
        .copied()
        .max_by(|a, b| (a.y + 0.5 * side * a.x).total_cmp(&(b.y + 0.5 * side * b.x)))
        .unwrap_or(P2::new(0.0, 0.0))
}
