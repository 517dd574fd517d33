//! The facial map: the drape unrolled, with defect, membrane and flap as three nested outlines.
//!
//! Screen x is s, distal to the side where it lies in the mouth; screen y is t, the facial side
//! towards the apex of the jaw as it is drawn in the section.

mod cover;
mod ground;
mod notes;
#[cfg(test)]
mod tests;

use super::scene::Scene;
use super::sheet::{Layout, Margin, Sheet};
use super::{Anchor, Figure, Ink, Show, Window};
use crate::anatomy::{Side, Wall};
use crate::geometry::{Outline, P2};

/// Columns of labels, millimetres.
const COLUMN: f64 = 8.4;
/// Half the width of what lies between them.
const HALF: f64 = 12.5;
/// Apical ends of the facial and the oral side, as lengths on the drape.
const FACIAL: f64 = 16.0;
const ORAL: f64 = 8.5;

pub(super) use ground::neighbours_of;

/// A map in the making.
struct Mapping<'a, 'b> {
    scene: &'b Scene<'a>,
    sheet: Sheet,
    /// 1 where distal is to the right, -1 where it is to the left.
    right: f64,
    /// 1 where apical is down on the facial side, -1 where it is up.
    down: f64,
}

/// The facial map.
#[must_use]
pub fn facial_map(show: &Show<'_>) -> Figure {
    let scene = Scene::of(show);
    let (right, down) = (scene.right(), scene.down());
    let oral = -scene.solid.map.across() - ORAL;
    let (a, b) = (down * FACIAL, down * oral);
    let window =
        Window { least: P2::new(-HALF - COLUMN, a.min(b)), most: P2::new(HALF + COLUMN, a.max(b)) };
    let mut mapping = Mapping { scene: &scene, sheet: Sheet::new(window, show.px), right, down };
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
    mapping.sides(oral);
    mapping.vertices();
    let says = mapping.says();
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
        let wide = self.scene.solid.map.across();
        match wall {
            Wall::Facial if z >= 0.0 => self.scene.solid.map.t(wall, z),
            Wall::Facial => z.max(-0.42 * wide),
            Wall::Oral => {
                let above = site.ridge.crest.oral_offset.get() - z;
                if above <= 0.0 {
                    self.scene.solid.map.t(wall, z)
                } else {
                    -wide + above.min(0.42 * wide)
                }
            }
        }
    }

    /// Names of the four sides.
    fn sides(&mut self, oral: f64) {
        let height = 1.1 * self.sheet.letter();
        let middle = -0.5 * self.scene.solid.map.across();
        let words = [
            (self.put(0.0, FACIAL - 1.6), "facial"),
            (self.put(0.0, oral + 1.6), self.scene.oral()),
        ];
        for (at, word) in words {
            let at = P2::new(at.x, at.y + 0.5 * height);
            self.sheet.words_of(at, Anchor::Middle, word, Ink::Quiet, height);
        }
        for (s, word) in [(-HALF, "mesial"), (HALF, "distal")] {
            let at = self.put(s, middle);
            let (anchor, aside) =
                if at.x < 0.0 { (Anchor::End, -1.0) } else { (Anchor::Start, 1.0) };
            let at = P2::new(at.x + aside * self.sheet.letter(), at.y + 0.5 * height);
            self.sheet.words_of(at, anchor, word, Ink::Quiet, height);
        }
    }
}
