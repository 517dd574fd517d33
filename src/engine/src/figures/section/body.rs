//! The implant in the section: its body, its threads by what they face, the drill beyond it, what
//! stands on it, and how it is taken hold of.

use super::Cutting;
use crate::anatomy::{THREAD_DEPTH, Wall};
use crate::figures::show::counts_per_unit;
use crate::figures::{Handle, Ink};
use crate::geometry::{Cone, P2};
use crate::measure::{DRILL_OVERSHOOT, Measurements, Opening};
use crate::plan::{Component, Decision};
use crate::units::{Deg, Mm};

/// From thread to thread, millimetres [ours].
const PITCH: f64 = 0.8;

/// What a thread faces on one side.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Faces {
    /// It stands in bone.
    Bone,
    /// Bone across a gap.
    Gap,
    /// No bone.
    Nothing,
}

impl Cutting<'_, '_> {
    /// A point at some depth and distance from the axis, facially positive, in (y, z).
    fn beside(body: &Cone, depth: f64, off: f64) -> P2 {
        let middle = body.axis_at(depth);
        // The silhouette stands square to the axis as it is seen along x.
        let tall = libm::hypot(body.frame.along.y, body.frame.along.z).max(1e-9);
        P2::new(
            middle.y + off * body.frame.along.z / tall,
            middle.z - off * body.frame.along.y / tall,
        )
    }

    /// What a thread faces on one side at some depth.
    pub(super) fn faces(m: &Measurements<'_>, depth: f64, wall: Wall) -> Faces {
        let side = Deg::new(if wall == Wall::Facial { 0.0 } else { 180.0 });
        match m.gap(side, Mm::new(depth)) {
            Some(Opening::Bone(length)) if length == Mm::ZERO => Faces::Bone,
            Some(Opening::Bone(_)) => Faces::Gap,
            Some(Opening::AboveCrest | Opening::Open) | None => Faces::Nothing,
        }
    }

    /// The silhouette in (y, z), threads and rounded end included.
    pub(super) fn silhouette(body: &Cone) -> Vec<P2> {
        let mut facial = vec![Self::beside(body, 0.0, body.near)];
        let mut oral = vec![Self::beside(body, 0.0, -body.near)];
        let collar = 0.6;
        let end = body.length - 0.7;
        let mut depth = collar;
        while depth + PITCH <= end {
            let (root, crest) = (depth, depth + 0.5 * PITCH);
            for (at, inset) in [(root, THREAD_DEPTH.get()), (crest, 0.0)] {
                let off = body.radius(at) - inset;
                facial.push(Self::beside(body, at, off));
                oral.push(Self::beside(body, at, -off));
            }
            depth += PITCH;
        }
        for (depth, share) in [(end, 0.94), (body.length - 0.25, 0.78), (body.length, 0.45)] {
            let off = share * body.radius(depth);
            facial.push(Self::beside(body, depth, off));
            oral.push(Self::beside(body, depth, -off));
        }
        facial.extend(oral.into_iter().rev());
        facial
    }

    /// The implant and all that belongs to it.
    pub(super) fn implant(&mut self) {
        let open = self.scene.show.plan.implant.is_none();
        let moved = open.then_some([Decision::OffsetFacial, Decision::Depth, Decision::Tilt]);
        self.implant_under(self.scene.plan.component(), moved);
    }

    /// The implant under what stands on it; with the decisions about its place, depth and tilt while
    /// it can still be taken hold of.
    pub(super) fn implant_under(
        &mut self,
        component: Option<Component>,
        moved: Option<[Decision; 3]>,
    ) {
        let Some(body) = self.scene.body() else { return };
        self.drill(&body);
        let ring = self.put_all(&Self::silhouette(&body));
        self.sheet.area(vec![ring], Ink::Implant);
        self.threads(&body);
        if let Some(component) = component {
            self.component(&body, component);
        }
        let axis = [self.put(body.frame.origin.y, body.frame.origin.z), {
            let apex = body.axis_at(body.length);
            self.put(apex.y, apex.z)
        }];
        self.sheet.line(&axis, Ink::Fine);
        if let Some(moved) = moved {
            self.handles(&body, axis, moved);
        }
    }

    fn threads(&mut self, body: &Cone) {
        let m = self.scene.measured();
        let mut across = Vec::new();
        let mut strokes: [(Faces, Vec<Vec<P2>>); 3] =
            [Faces::Bone, Faces::Gap, Faces::Nothing].map(|faces| (faces, Vec::new()));
        let mut depth = 0.6 + 0.5 * PITCH;
        while depth + 0.5 * PITCH <= body.length - 0.7 {
            let off = body.radius(depth);
            let lean = 0.5 * PITCH;
            across.push(self.put_all(&[
                Self::beside(body, depth, off),
                Self::beside(body, depth + lean, -(body.radius(depth + lean) - THREAD_DEPTH.get())),
            ]));
            for (wall, out) in [(Wall::Facial, 1.0), (Wall::Oral, -1.0)] {
                let faces = Self::faces(&m, depth, wall);
                let flank = |at: f64| {
                    Self::beside(body, at, out * (body.radius(at) - 0.6 * THREAD_DEPTH.get()))
                };
                let mut stroke = self.put_all(&[
                    flank(depth - 0.3 * PITCH),
                    Self::beside(body, depth, out * off),
                    flank(depth + 0.3 * PITCH),
                ]);
                if faces == Faces::Nothing {
                    // Said by form too: a bare thread carries a stroke that points away from it.
                    let tip = Self::beside(body, depth, out * (off + 0.45));
                    stroke.insert(2, stroke[1]);
                    stroke.insert(2, self.put(tip.x, tip.y));
                }
                for (kind, list) in &mut strokes {
                    if *kind == faces {
                        list.push(stroke.clone());
                    }
                }
            }
            depth += PITCH;
        }
        self.sheet.lines(&across, Ink::Fine);
        for (faces, list) in strokes {
            let ink = match faces {
                Faces::Bone => Ink::Thread,
                Faces::Gap => Ink::ThreadFacing,
                Faces::Nothing => Ink::ThreadExposed,
            };
            self.sheet.lines(&list, ink);
        }
    }

    fn drill(&mut self, body: &Cone) {
        let off = 0.5 * body.radius(body.length);
        let end = body.length + DRILL_OVERSHOOT.get();
        let line = [
            Self::beside(body, body.length - 0.3, off),
            Self::beside(body, end - 0.35, off),
            Self::beside(body, end, 0.0),
            Self::beside(body, end - 0.35, -off),
            Self::beside(body, body.length - 0.3, -off),
        ];
        let line = self.put_all(&line);
        self.sheet.line(&line, Ink::Drill);
    }

    /// What stands on the platform, up to the planned margin.
    fn component(&mut self, body: &Cone, component: Component) {
        let margin = self.scene.site().crown.margin_z.get();
        let rise = (body.frame.origin.z - margin).max(0.8);
        let (tall, wide) = match component {
            Component::CoverScrew => (0.5, 0.85),
            Component::HealingAbutment => (rise + 0.6, 1.12),
            Component::CustomAbutment => (rise + 0.4, 1.5),
            Component::Provisional(_) => (rise, 1.4),
        };
        let neck = 0.86 * body.near;
        let ring = [
            Self::beside(body, 0.0, neck),
            Self::beside(body, -0.5 * tall, neck),
            Self::beside(body, -0.85 * tall, wide * body.near),
            Self::beside(body, -tall, 0.94 * wide * body.near),
            Self::beside(body, -tall, -0.94 * wide * body.near),
            Self::beside(body, -0.85 * tall, -wide * body.near),
            Self::beside(body, -0.5 * tall, -neck),
            Self::beside(body, 0.0, -neck),
        ];
        let ring = self.put_all(&ring);
        self.sheet.area(vec![ring], Ink::Implant);
    }

    /// Platform: facially and in depth. Apex: tilt.
    fn handles(
        &mut self,
        body: &Cone,
        [platform, apex]: [P2; 2],
        [facial, depth, tilt]: [Decision; 3],
    ) {
        self.sheet.handle(Handle {
            at: platform,
            label: format!("platform: facial or {}, and its level", self.scene.oral()),
            across: Some((facial, counts_per_unit(facial))),
            down: Some((depth, self.down * counts_per_unit(depth))),
            vertex: None,
            makes: false,
        });
        let Some(implant) = self.scene.implant() else { return };
        // y of the apex is L T / sqrt(1 + T^2 + P^2), T and P the tangents of tilt and tip.
        let (t, p) = (libm::tan(implant.tilt.radians()), libm::tan(implant.tip.radians()));
        let root = libm::sqrt(1.0 + t * t + p * p);
        let slope = body.length * (1.0 + p * p) / (root * root * root);
        let for_degree = slope * (1.0 + t * t) * core::f64::consts::PI / 180.0;
        self.sheet.handle(Handle {
            at: apex,
            label: "apex: tilt".to_owned(),
            across: Some((tilt, counts_per_unit(tilt) / for_degree)),
            down: None,
            vertex: None,
            makes: false,
        });
    }
}
