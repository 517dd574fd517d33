//! The facial map: the drape unrolled, with defect, membrane and flap as three nested outlines.
//!
//! Screen x is s, distal to the side where it lies in the mouth; screen y is t, the facial side
//! towards the apex of the jaw as it is drawn in the section.

mod against;
mod cover;
mod ground;
mod notes;

pub use against::facial_map_against;
pub(super) use against::of_all;

use super::scene::Scene;
use super::sheet::{Layout, Margin, Sheet};
use super::{Anchor, Figure, Ink, Show, Window};
use crate::anatomy::{Side, Wall};
use crate::geometry::{Outline, P2};

/// Columns of labels, millimetres.
const COLUMN: f64 = 8.4;
/// Half the width of what lies between them.
const HALF: f64 = 12.5;
/// How far the oral side goes down, as a length on the drape.
const ORAL: f64 = 8.5;
/// How far the facial side goes on beyond the socket's apex, and beyond a foramen that has been seen.
const BEYOND: f64 = 3.5;

pub(super) use ground::neighbours_of;

/// A map in the making.
struct Mapping<'a, 'b> {
    scene: &'b Scene<'a>,
    sheet: Sheet,
    /// 1 where distal is to the right, -1 where it is to the left.
    right: f64,
    /// 1 where apical is down on the facial side, -1 where it is up.
    down: f64,
    /// Apical end of the facial side, in t.
    facial: f64,
}

/// Where the facial side ends: beyond the socket, the outlines that have been drawn, and the foramen
/// where it has been seen.
fn facial_end(scene: &Scene<'_>, others: &[Outline]) -> f64 {
    let t = |z: f64| scene.ground.solid.map.t(Wall::Facial, z);
    let apex = scene.ground.solid.socket.deepest().map_or(12.0, t);
    let foramen = scene.site().vital.foramen.map_or(0.0, |foramen| t(foramen.z));
    let flap = scene.plan.raised().map(|flap| &flap.outline);
    let membrane = scene.plan.membrane().map(|membrane| &membrane.outline);
    let drawn = flap.into_iter().chain(membrane).chain(others).flat_map(Outline::points);
    let drawn = drawn.map(|at| at.y).fold(0.0, f64::max);
    (apex.max(foramen).max(drawn) + BEYOND).clamp(14.0, 34.0)
}

/// The facial map.
#[must_use]
pub fn facial_map(show: &Show<'_>) -> Figure {
    drawn(&Scene::of(show), &[], |_| String::new())
}

/// The map, with room for `others` too, and `over` it what is drawn last; what that says is told last too.
fn drawn(
    scene: &Scene<'_>,
    others: &[Outline],
    over: impl FnOnce(&mut Mapping<'_, '_>) -> String,
) -> Figure {
    let (right, down) = (scene.right(), scene.down());
    let oral = -scene.ground.solid.map.across() - ORAL;
    let facial = facial_end(scene, others);
    let (a, b) = (down * facial, down * oral);
    let window =
        Window { least: P2::new(-HALF - COLUMN, a.min(b)), most: P2::new(HALF + COLUMN, a.max(b)) };
    let mut mapping =
        Mapping { scene, sheet: Sheet::new(window, scene.show.px), right, down, facial };
    mapping.bone();
    mapping.roots();
    mapping.flap();
    mapping.crests();
    mapping.teeth();
    mapping.defects();
    mapping.structures();
    mapping.membrane();
    mapping.margins();
    mapping.notes();
    let said = over(&mut mapping);
    mapping.sides(oral);
    mapping.vertices();
    let says = mapping.says() + &said;
    let letter = mapping.sheet.letter();
    let layout = Layout {
        left: COLUMN - letter,
        right: COLUMN - letter,
        from: window.least.y + letter,
        to: window.most.y - 4.0 * letter,
        scale_bar: Some(5.0),
    };
    mapping.sheet.finish("facial-map", scene.title("Facial map"), says, layout)
}

impl Mapping<'_, '_> {
    /// A point of the map on the screen.
    fn put(&self, s: f64, t: f64) -> P2 {
        P2::new(self.right * s, self.down * t)
    }

    fn put_all(&self, points: &[P2]) -> Vec<P2> {
        points.iter().map(|at| self.put(at.x, at.y)).collect()
    }

    fn ring(&self, outline: &Outline) -> Vec<P2> {
        self.put_all(&outline.points())
    }

    /// The margin on the side of a neighbour.
    fn margin_of(&self, side: Side) -> Margin {
        let mesial_is_left = self.right > 0.0;
        if (side == Side::Mesial) == mesial_is_left { Margin::Left } else { Margin::Right }
    }

    /// The margin nearer to a place.
    fn margin_at(&self, s: f64) -> Margin {
        if self.right * s < 0.0 { Margin::Left } else { Margin::Right }
    }

    /// Place on the map of a level on one side of the ridge: down the face where the level lies
    /// apical of the reference crest, into the flat part by the same height where it lies coronal.
    fn t_of(&self, wall: Wall, z: f64) -> f64 {
        let site = self.scene.site();
        let wide = self.scene.ground.solid.map.across();
        match wall {
            Wall::Facial if z >= 0.0 => self.scene.ground.solid.map.t(wall, z),
            Wall::Facial => z.max(-0.42 * wide),
            Wall::Oral => {
                let above = site.ridge.crest.oral_offset.get() - z;
                if above <= 0.0 {
                    self.scene.ground.solid.map.t(wall, z)
                } else {
                    -wide + above.min(0.42 * wide)
                }
            }
        }
    }

    /// Names of the four sides.
    fn sides(&mut self, oral: f64) {
        let height = 1.1 * self.sheet.letter();
        let words = [
            (self.put(0.0, self.facial - 1.2), "facial"),
            (self.put(0.0, oral + 1.2), self.scene.oral()),
        ];
        for (at, word) in words {
            let at = P2::new(at.x, at.y + 0.5 * height);
            self.sheet.words_of(at, Anchor::Middle, word, Ink::Quiet, height);
        }
        for (s, word) in [(-HALF, "mesial"), (HALF, "distal")] {
            // In the corners of the oral side, where the drape holds nothing else.
            let at = self.put(s, oral + 1.2);
            let (anchor, inward) =
                if at.x < 0.0 { (Anchor::Start, 1.0) } else { (Anchor::End, -1.0) };
            let at = P2::new(at.x + inward * self.sheet.letter(), at.y + 0.5 * height);
            self.sheet.words_of(at, anchor, word, Ink::Quiet, height);
        }
    }
}
