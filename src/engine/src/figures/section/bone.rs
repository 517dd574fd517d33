//! Ridge, socket and what is missing from the walls, in the section.

use super::Cutting;
use crate::anatomy::{DensityClass, Lesion, Tube, Wall};
use crate::figures::curve::{clip_line, ellipse};
use crate::figures::grain::stipple;
use crate::figures::{Ink, Window, cut};
use crate::geometry::{Interval, P2, order};

/// Levels are sampled this far apart, millimetres.
const STEP: f64 = 0.2;

impl Cutting<'_, '_> {
    /// Levels from `from` to `to`, both included.
    pub(super) fn levels_between(from: f64, to: f64) -> Vec<f64> {
        let count = libm::ceil((to - from) / STEP).clamp(1.0, 400.0);
        let mut levels = Vec::new();
        let mut k = 0.0;
        while k <= count {
            levels.push(from + (to - from) * k / count);
            k += 1.0;
        }
        levels
    }

    /// Inner face of a wall at a level: the socket's, or none apical of it.
    pub(super) fn inner(&self, wall: Wall, z: f64) -> Option<f64> {
        let roots = cut::roots_at(&self.scene.ground.solid, 0.0, z);
        let (first, last) = (roots.as_slice().first()?, roots.as_slice().last()?);
        let face = self.scene.ground.solid.face(wall, z);
        Some(match wall {
            Wall::Facial => last.to.min(face),
            Wall::Oral => first.from.max(face),
        })
    }

    /// The outer edge of the bone along one side, from its crest down, in (y, z): the face, or the
    /// socket's wall where the wall is missing.
    pub(super) fn edge(&self, wall: Wall) -> Vec<P2> {
        let missing = cut::missing(&self.scene.ground.solid, wall, 0.0);
        let mut levels = Self::levels_between(self.scene.crest(wall), self.apical + 1.0);
        for part in missing.as_slice() {
            levels.extend([part.from, part.from - 1e-6, part.to, part.to + 1e-6]);
        }
        levels.retain(|z| *z >= self.scene.crest(wall));
        order::ascend(&mut levels);
        levels
            .into_iter()
            .map(|z| {
                let face = self.scene.ground.solid.face(wall, z);
                let gone = missing.as_slice().iter().any(|part| part.from <= z && z <= part.to);
                P2::new(if gone { self.hollow(wall, z) } else { face }, z)
            })
            .collect()
    }

    /// The socket's wall on one side, from the crest down its rows, in (y, z).
    pub(super) fn wall(&self, wall: Wall) -> Vec<P2> {
        let crest = self.scene.crest(wall);
        let mut line: Vec<P2> = cut::root_rows(&self.scene.ground.solid, 0.0)
            .iter()
            .map(|(z, _)| *z)
            .filter(|z| *z > crest)
            .chain([crest])
            .filter_map(|z| self.inner(wall, z).map(|y| P2::new(y, z)))
            .collect();
        order::sort_short(&mut line, |a, b| a.y.total_cmp(&b.y));
        line
    }

    /// The whole wall of the socket, from the oral crest round its floor to the facial one, in (y, z).
    fn socket_line(&self) -> Vec<P2> {
        let mut line = self.wall(Wall::Oral);
        line.extend(&self.below.floor);
        line.extend(self.wall(Wall::Facial).into_iter().rev());
        line
    }

    /// The whole cut surface of the bone, as one ring in (y, z).
    fn bone_ring(&self) -> Vec<P2> {
        let mut ring = self.edge(Wall::Facial);
        ring.extend(self.edge(Wall::Oral).into_iter().rev());
        ring.extend(self.socket_line());
        ring
    }

    /// Bone: its tint, and dots as dense as the bone.
    pub(super) fn bone(&mut self) {
        let ring = self.bone_ring();
        if self.scene.believed.ridge.is_seen() {
            let mut rings = vec![ring];
            rings.extend(self.below.islands.iter().cloned());
            self.bone_in(&rings);
        }
    }

    /// Bone in rings in (y, z).
    pub(super) fn bone_in(&mut self, rings: &[Vec<P2>]) {
        let put = rings.iter().map(|ring| self.put_all(ring)).collect();
        self.sheet.area(put, Ink::Marrow);
        // Dots for a square millimetre at 0.1 mm to the pixel; finer drawings take more.
        let (core, cortex) = match self.scene.site().density.class {
            DensityClass::D1 => (11.0, 3.0),
            DensityClass::D2 => (7.0, 1.6),
            DensityClass::D3 => (4.6, 1.0),
            DensityClass::D4 => (2.4, 0.7),
        };
        const COMPACT: f64 = 15.0;
        let finer = (0.1 / self.sheet.pixel()).clamp(0.6, 2.0);
        let solid = &self.scene.ground.solid;
        let crest = self.scene.crest(Wall::Facial).min(self.scene.crest(Wall::Oral));
        let dots = stipple(rings, COMPACT * finer, |at| {
            let facial = solid.face(Wall::Facial, at.y) - at.x;
            let oral = at.x - solid.face(Wall::Oral, at.y);
            let depth = facial.min(oral).min(at.y - crest);
            let fading = ((cortex + 0.5 - depth) / 0.5).clamp(0.0, 1.0);
            finer * (core + (COMPACT - core) * fading)
        });
        let dots = self.put_all(&dots);
        self.sheet.dots(&dots, Ink::Stipple);
    }

    /// Floor, canal, nasopalatine canal and a lesion, as seen along x.
    pub(super) fn structures(&mut self) {
        let site = self.scene.site().clone();
        if let Some(floor) = &site.vital.floor {
            let z = floor.z.get();
            let inset = |wall, z: f64| {
                let inward = if wall == Wall::Facial { -1.0 } else { 1.0 };
                self.scene.ground.solid.face(wall, z) + inward * 0.9
            };
            let levels = Self::levels_between(z, self.apical + 1.0);
            let mut ring: Vec<P2> =
                levels.iter().map(|z| self.put(inset(Wall::Facial, *z), *z)).collect();
            ring.extend(levels.iter().rev().map(|z| self.put(inset(Wall::Oral, *z), *z)));
            self.sheet.area(vec![ring], Ink::Vital);
        }
        for tube in
            [&site.vital.canal, &site.vital.loop_, &site.vital.nasopalatine].into_iter().flatten()
        {
            let ring = self.put_all(&capsule(tube));
            if in_the_cut(tube) {
                self.sheet.area(vec![ring], Ink::Vital);
            } else {
                // It runs past the cut, in front of it or behind.
                let mut line = ring;
                line.extend(line.first().copied());
                let drawing = Window {
                    least: P2::new(super::FROM + 0.6, self.sheet.window().least.y),
                    most: P2::new(super::TO, self.sheet.window().most.y),
                };
                self.sheet.lines(&clip_line(&line, drawing), Ink::Dashed);
            }
        }
        if let Lesion::Chronic { diameter }
        | Lesion::Abscess { diameter }
        | Lesion::Spreading { diameter } = site.lesion
        {
            self.lesion(0.5 * diameter.get());
        }
    }

    /// A lesion of the first root's apex: cut where the plane meets it, or as it is seen along x.
    fn lesion(&mut self, half: f64) {
        let Some(apex) = self.below.heart else { return };
        let cut = half * half - apex.x * apex.x;
        let radius = if cut > 0.0 { libm::sqrt(cut) } else { half };
        let middle = P2::new(apex.y, apex.z + 0.3 * half);
        let mut line = self.put_all(&ellipse(middle, radius, radius));
        if cut > 0.0 {
            self.sheet.area(vec![line.clone()], Ink::Lost);
        }
        line.extend(line.first().copied());
        self.sheet.line(&line, if cut > 0.0 { Ink::Outline } else { Ink::Dashed });
    }

    /// What is missing from the walls, hatched, with the face that they had, dashed.
    pub(super) fn lost(&mut self) {
        for wall in [Wall::Facial, Wall::Oral] {
            for part in self.lost_stretches(wall) {
                let levels = Self::levels_between(part.from, part.to);
                let face: Vec<P2> = levels
                    .iter()
                    .map(|z| self.put(self.scene.ground.solid.face(wall, *z), *z))
                    .collect();
                let mut ring = face.clone();
                ring.extend(levels.iter().rev().map(|z| self.put(self.hollow(wall, *z), *z)));
                self.sheet.area(vec![ring], Ink::Lost);
                self.sheet.line(&face, Ink::Dashed);
            }
        }
    }

    /// Stretches of z over which a wall is missing below the crest and beside the socket.
    pub(super) fn lost_stretches(&self, wall: Wall) -> Vec<Interval> {
        let (crest, apex) = (self.scene.crest(wall), self.below.deepest);
        cut::missing(&self.scene.ground.solid, wall, 0.0)
            .as_slice()
            .iter()
            .map(|part| Interval { from: part.from.max(crest), to: part.to.min(apex) })
            .filter(|part| part.from < part.to)
            .collect()
    }

    /// Lines of faces, crests and socket walls: firm where seen, dashed where supposed.
    pub(super) fn outlines(&mut self) {
        let believed = &self.scene.believed;
        let firm = |seen: bool| if seen { Ink::Outline } else { Ink::Dashed };
        let facial = firm(believed.ridge.is_seen() && believed.facial_plate.is_seen());
        let oral = firm(believed.ridge.is_seen());
        let root_seen = believed.root.is_seen();
        for (wall, ink) in [(Wall::Facial, facial), (Wall::Oral, oral)] {
            let lost = self.lost_stretches(wall);
            let edge = self.put_all(&self.edge(wall));
            let gone = |at: &P2| {
                let z = self.down * at.y;
                lost.iter().any(|part| part.from <= z && z <= part.to)
            };
            for piece in edge.split(gone).filter(|piece| piece.len() > 1).map(<[P2]>::to_vec) {
                self.sheet.line(&piece, ink);
            }
            let open = lost.iter().any(|part| part.from <= self.scene.crest(wall));
            if let (false, Some(outer)) = (open, edge.first()) {
                let z = self.down * outer.y;
                if let Some(inner) = self.inner(wall, z) {
                    self.sheet.line(&[*outer, self.put(inner, z)], ink);
                }
            }
        }
        if self.scene.tooth_is_out() && root_seen {
            let socket = self.socket_line();
            let lines = core::iter::once(&socket).chain(&self.below.islands);
            let lines: Vec<_> = lines.map(|line| self.put_all(line)).collect();
            self.sheet.lines(&lines, Ink::Outline);
        }
    }
}

/// The outline of a tube in the cut's projection: a circle drawn out into a capsule.
fn capsule(tube: &Tube) -> Vec<P2> {
    let (a, b) = (P2::new(tube.from.y, tube.from.z), P2::new(tube.to.y, tube.to.z));
    let radius = tube.radius.get();
    let turn = libm::atan2(b.y - a.y, b.x - a.x);
    const CHORDS: u32 = 16;
    let half = |middle: P2, from: f64| {
        (0..=CHORDS).map(move |k| {
            let angle = from + core::f64::consts::PI * f64::from(k) / f64::from(CHORDS);
            P2::new(middle.x + radius * libm::cos(angle), middle.y + radius * libm::sin(angle))
        })
    };
    let quarter = core::f64::consts::FRAC_PI_2;
    half(a, turn + quarter).chain(half(b, turn - quarter)).collect()
}

/// Whether the plane of the cut meets a tube.
pub(super) fn in_the_cut(tube: &Tube) -> bool {
    let (a, b, radius) = (tube.from.x, tube.to.x, tube.radius.get());
    a.min(b) <= radius && a.max(b) >= -radius
}
