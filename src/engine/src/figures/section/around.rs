//! What must not be hurt, in the section: its name, and how far the implant or its drill stays away.

use super::Cutting;
use super::bone::in_the_cut;
use crate::anatomy::{FloorKind, Tube, Wall};
use crate::chart::Fact;
use crate::figures::Ink;
use crate::figures::lit::Part;
use crate::figures::scene::mm;
use crate::figures::sheet::Margin;
use crate::geometry::P2;
use crate::units::Mm;

impl Cutting<'_, '_> {
    /// Names floor, canals and loop where they have been seen, with the distances that are measured.
    pub(super) fn note_structures(&mut self) {
        let vital = self.scene.site().vital.clone();
        let m = self.scene.measured();
        let (floor, canal) = (m.to_floor(), m.to_canal());
        let (foramen, nasopalatine) = (m.to_foramen(), m.to_nasopalatine());
        if let Some(near) = &vital.floor {
            let z = near.z.get();
            let at = self.put(0.5 * self.scene.ground.solid.face(Wall::Oral, z), z);
            let name = floor_words(near.kind);
            self.note_structure(at, name, Fact::Floor, floor, "the implant");
        }
        if let Some(tube) = &vital.canal {
            let at = self.nearest_of(tube);
            let name = format!("inferior alveolar canal{}", beside(tube));
            self.note_structure(at, &name, Fact::Canal, canal, "the drill");
        }
        if let Some(tube) = &vital.loop_ {
            let at = self.nearest_of(tube);
            let name = format!("loop of the mental nerve{}", beside(tube));
            self.note_structure(at, &name, Fact::Foramen, foramen, "the drill");
        }
        if let Some(tube) = &vital.nasopalatine {
            let at = self.nearest_of(tube);
            let name = format!("nasopalatine canal{}", beside(tube));
            self.note_structure(at, &name, Fact::Nasopalatine, nasopalatine, "the implant");
        }
    }

    fn note_structure(&mut self, at: P2, name: &str, fact: Fact, distance: Option<Mm>, from: &str) {
        let words = match distance {
            Some(inside) if inside < Mm::ZERO => {
                format!("{name}\n{from} {} inside", mm(inside.abs()))
            }
            Some(distance) => format!("{name}\n{} from {from}", mm(distance)),
            None => name.to_owned(),
        };
        let hurt = distance.is_some_and(|distance| distance <= Mm::ZERO);
        let ink = if hurt { Ink::Fault } else { self.scene.ink(Part::Structure(fact), Ink::Words) };
        self.sheet.note(Margin::Left, at, words, ink);
    }

    /// The middle of a tube where it comes nearest to the cut.
    fn nearest_of(&self, tube: &Tube) -> P2 {
        let (a, b) = (tube.from, tube.to);
        let run = b.x - a.x;
        let part = if run.abs() > 1e-9 { (-a.x / run).clamp(0.0, 1.0) } else { 0.5 };
        self.put(a.y + part * (b.y - a.y), a.z + part * (b.z - a.z))
    }

    /// The distances in sentences.
    pub(super) fn say_structures(&self) -> Vec<String> {
        let vital = &self.scene.site().vital;
        let m = self.scene.measured();
        let floor = vital.floor.as_ref().map(|floor| floor_words(floor.kind));
        let parts = [
            (floor, m.to_floor(), "implant"),
            (vital.canal.as_ref().map(|_| "inferior alveolar canal"), m.to_canal(), "drill"),
            (vital.loop_.as_ref().map(|_| "loop of the mental nerve"), m.to_foramen(), "drill"),
            (
                vital.nasopalatine.as_ref().map(|_| "nasopalatine canal"),
                m.to_nasopalatine(),
                "implant",
            ),
        ];
        parts
            .into_iter()
            .filter_map(|(name, distance, what)| {
                let (name, distance) = (name?, distance?);
                Some(if distance < Mm::ZERO {
                    format!("The {what} goes {} into the {name}.", mm(distance.abs()))
                } else {
                    format!("From the {what} to the {name} it is {}.", mm(distance))
                })
            })
            .collect()
    }
}

/// How far beside the cut a tube runs, as words that follow its name; nothing when it is cut.
fn beside(tube: &Tube) -> String {
    if in_the_cut(tube) {
        return String::new();
    }
    let (a, b) = (tube.from.x, tube.to.x);
    let x = if a.abs() < b.abs() { a } else { b };
    let way = if x < 0.0 { "mesially" } else { "distally" };
    format!(", {} {way}", mm(Mm::new(x.abs())))
}

/// What a floor is called.
const fn floor_words(kind: FloorKind) -> &'static str {
    match kind {
        FloorKind::Sinus => "floor of the sinus",
        FloorKind::Nose => "floor of the nose",
    }
}
