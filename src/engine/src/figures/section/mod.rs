//! The section: the site cut facio-orally through the tooth's middle, facial to the right.
//!
//! Screen x is y of the site; screen y is z, upwards in the upper jaw. The implant is drawn as it is
//! seen along x, so its facial and oral distances are true.

mod against;
mod around;
mod below;
mod body;
mod bone;
mod filling;
mod healed;
mod notes;
mod room;
mod several;
mod soft;

use self::below::Below;
pub(super) use against::of_all;
pub use against::section_against;
pub use healed::healed_section;
pub use room::room_section;

use super::scene::Scene;
use super::sheet::{Layout, Sheet};
use super::{Anchor, Figure, Ink, Show, Window};
use crate::geometry::P2;

/// Columns of labels, millimetres.
const LEFT: f64 = 11.0;
const RIGHT: f64 = 11.0;
/// What lies between them, in y.
const FROM: f64 = -13.2;
const TO: f64 = 8.0;
/// How far the drawing goes on beyond the socket's apex, and beyond a canal that has been seen.
const BEYOND: f64 = 8.0;
const BEYOND_CANAL: f64 = 2.5;

/// A section in the making.
struct Cutting<'a, 'b> {
    scene: &'b Scene<'a>,
    sheet: Sheet,
    /// 1 where apical is down, -1 where it is up.
    down: f64,
    /// Apical end of the drawing, in z.
    apical: f64,
    /// The socket apical of its rows.
    below: Below,
}

impl<'a, 'b> Cutting<'a, 'b> {
    /// An empty sheet for a scene, and its window.
    fn of(scene: &'b Scene<'a>, below: Below) -> (Self, Window) {
        let down = scene.down();
        let coronal = scene.site().crown.edge.z - 2.4;
        let apical = apical_end(scene);
        let (a, b) = (down * coronal, down * apical);
        let window =
            Window { least: P2::new(FROM - LEFT, a.min(b)), most: P2::new(TO + RIGHT, a.max(b)) };
        let sheet = Sheet::new(window, scene.show.px);
        (Self { scene, sheet, down, apical, below }, window)
    }

    /// A point of the cut on the screen.
    fn put(&self, y: f64, z: f64) -> P2 {
        P2::new(y, self.down * z)
    }

    fn put_all(&self, points: &[P2]) -> Vec<P2> {
        points.iter().map(|at| self.put(at.x, at.y)).collect()
    }
}

/// Where the drawing ends apically: beyond the socket, and beyond the canal where it has been seen.
fn apical_end(scene: &Scene<'_>) -> f64 {
    let apex = scene.ground.solid.socket.deepest().unwrap_or(13.0);
    let canal = scene
        .site()
        .vital
        .canal
        .as_ref()
        .map_or(0.0, |canal| canal.from.z.min(canal.to.z) + canal.radius.get() + BEYOND_CANAL);
    (apex + BEYOND).max(canal).clamp(16.0, 32.0)
}

/// The section.
#[must_use]
pub fn section(show: &Show<'_>) -> Figure {
    drawn(&Scene::of(show), several::below, |_| String::new())
}

/// The section of a tooth with one root; of several it shows the trunk. For a room that has not loaded
/// the rest yet.
#[must_use]
pub fn section_of_one(show: &Show<'_>) -> Figure {
    drawn(&Scene::of(show), Below::of_one, |_| String::new())
}

/// The section, and `over` it what is drawn last; what that says is told last too.
fn drawn(
    scene: &Scene<'_>,
    below: fn(&Scene<'_>) -> Below,
    over: impl FnOnce(&mut Cutting<'_, '_>) -> String,
) -> Figure {
    let (mut cutting, window) = Cutting::of(scene, below(scene));
    cutting.site();
    cutting.filling();
    cutting.implant();
    cutting.membrane();
    cutting.levels();
    cutting.notes();
    let said = over(&mut cutting);
    cutting.sides();
    let says = cutting.says() + &said;
    let layout = cutting.layout(window);
    cutting.sheet.finish("section", scene.title("Section"), says, layout)
}

impl Cutting<'_, '_> {
    /// The site by itself, with the planned crown over it.
    fn site(&mut self) {
        self.gum();
        self.bone();
        self.structures();
        self.tooth_or_socket();
        self.lost();
        self.outlines();
        self.passing_roots();
        self.planned_crown();
    }

    fn layout(&self, window: Window) -> Layout {
        let letter = self.sheet.letter();
        Layout {
            left: LEFT,
            right: RIGHT,
            from: window.least.y + letter,
            to: window.most.y - 4.0 * letter,
            scale_bar: Some(5.0),
        }
    }

    /// The names of the two sides, beyond the crown's edge, where nothing else stands.
    fn sides(&mut self) {
        let z = self.scene.site().crown.edge.z - 1.3;
        let height = 1.1 * self.sheet.letter();
        let left = self.put(FROM + 1.5, z);
        let right = self.put(TO - 1.0, z);
        let oral = self.scene.oral();
        self.sheet.words_of(left, Anchor::Start, oral, Ink::Quiet, height);
        self.sheet.words_of(right, Anchor::End, "facial", Ink::Quiet, height);
    }
}
