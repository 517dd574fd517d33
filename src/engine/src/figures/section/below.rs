//! What of the socket lies apical of its rows in the cut, and what of the tooth passes it by.

use super::Cutting;
use crate::anatomy::Wall;
use crate::figures::scene::Scene;
use crate::figures::sheet::Margin;
use crate::figures::{Ink, cut};
use crate::geometry::{P2, P3};

/// A part that is named in a margin.
pub(super) struct Named {
    pub side: Margin,
    /// In (y, z).
    pub at: P2,
    pub words: String,
}

/// The part. Points are (y, z).
#[derive(Default)]
pub(super) struct Below {
    /// The outline of the socket from its last row on, from oral to facial: one apex, or the level at
    /// which a trunk ends with the roots that the cut meets there.
    pub floor: Vec<P2>,
    /// Cuts of roots that come to the plane of the cut apical of their trunk.
    pub islands: Vec<Vec<P2>>,
    /// Outlines of roots that lie mesial or distal of the cut.
    pub passing: Vec<Vec<P2>>,
    /// Level at which the socket ends.
    pub deepest: f64,
    /// Where a lesion of the apex has its middle.
    pub heart: Option<P3>,
    /// What the parts are called.
    pub names: Vec<Named>,
    /// The same in sentences.
    pub says: String,
}

impl Below {
    /// Of one root.
    pub(super) fn of_one(scene: &Scene<'_>) -> Self {
        let root = scene.site().socket.as_one();
        let rows = cut::root_rows(&scene.ground.solid, 0.0);
        let apex = rows.last().map_or(P2::new(root.y.get(), root.length.get()), |(z, row)| {
            P2::new(0.5 * (row.from + row.to), *z)
        });
        Self {
            floor: vec![apex],
            deepest: apex.y,
            heart: Some(P3::new(0.0, apex.x, apex.y)),
            ..Self::default()
        }
    }
}

impl Cutting<'_, '_> {
    /// Where bone that is missing from a wall ends inwards, at a level beside the socket: at the root,
    /// of several where none stands in the cut at the plane of their axes; the face, apical of them.
    pub(super) fn hollow(&self, wall: Wall, z: f64) -> f64 {
        let solid = &self.scene.ground.solid;
        if z > self.below.deepest {
            return solid.face(wall, z);
        }
        let middle = solid.socket.middle(wall, z);
        match (wall, self.inner(wall, z)) {
            (_, None) => middle,
            (Wall::Facial, Some(root)) => root.max(middle),
            (Wall::Oral, Some(root)) => root.min(middle),
        }
    }

    /// Roots that pass the cut by, as they are seen along x.
    pub(super) fn passing_roots(&mut self) {
        let lines: Vec<_> = self.below.passing.iter().map(|line| self.put_all(line)).collect();
        self.sheet.lines(&lines, Ink::Dashed);
    }

    /// Names of the parts of a tooth with several roots.
    pub(super) fn note_parts(&mut self) {
        for Named { side, at, words } in core::mem::take(&mut self.below.names) {
            let at = self.put(at.x, at.y);
            self.sheet.note(side, at, words, Ink::Words);
        }
    }
}
