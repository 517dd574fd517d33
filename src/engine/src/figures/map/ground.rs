//! What lies under the plan on the map: bone, roots, teeth or socket, crests, defects, structures.

use super::Mapping;
use crate::anatomy::{Neighbour, RootBody, Side, Tooth, Wall};
use crate::figures::grain::stipple;
use crate::figures::{Anchor, Ink};
use crate::geometry::{P2, P3, polyline};

/// Radius with which the mental foramen is drawn, millimetres [ours]: a site holds its middle.
const FORAMEN: f64 = 1.5;

impl Mapping<'_, '_> {
    /// Bone as a tint and dots that thicken where the ridge turns away, as an engraver shades a
    /// cylinder.
    pub(super) fn bone(&mut self) {
        let wide = self.scene.ground.solid.map.across();
        let (top, bottom) = (self.facial, -wide - super::ORAL);
        let corners = [
            (-super::HALF, bottom),
            (super::HALF, bottom),
            (super::HALF, top),
            (-super::HALF, top),
        ];
        let ring: Vec<P2> = corners.iter().map(|(s, t)| self.put(*s, *t)).collect();
        if !self.scene.believed.ridge.is_seen() {
            let mut line = ring;
            line.extend(line.first().copied());
            self.sheet.line(&line, Ink::Dashed);
            return;
        }
        self.sheet.area(vec![ring.clone()], Ink::Marrow);
        let finer = (0.1 / self.sheet.pixel()).clamp(0.6, 2.0);
        let plane = corners.map(|(s, t)| P2::new(s, t)).to_vec();
        let dots = stipple(&[plane], 7.0 * finer, |at| {
            let far =
                if at.y > 0.0 { at.y / self.facial } else { (-wide - at.y).max(0.0) / super::ORAL };
            let side = (at.x / super::HALF) * (at.x / super::HALF);
            finer * (1.1 + 3.2 * far * far + 1.2 * side * side)
        });
        let dots = self.put_all(&dots);
        self.sheet.dots(&dots, Ink::Stipple);
        let mut line = ring;
        line.extend(line.first().copied());
        self.sheet.line(&line, Ink::Fine);
    }

    /// Roots as they shine through the facial side: the tooth's own and the neighbours'.
    pub(super) fn roots(&mut self) {
        let site = self.scene.site().clone();
        let light = |seen: bool| if seen { Ink::Fine } else { Ink::Dashed };
        if self.scene.believed.root.is_seen() {
            for (from, root) in site.socket.roots() {
                let line = self.root_line(from, &root);
                self.sheet.line(&line, Ink::Fine);
            }
        }
        for neighbour in [&site.neighbours.mesial, &site.neighbours.distal] {
            let ink = light(self.scene.believed.neighbours.is_seen());
            match neighbour {
                Neighbour::Root(root) => {
                    let line = self.root_line(0.0, root);
                    self.sheet.line(&line, ink);
                }
                Neighbour::Implant(implanted) => {
                    let axis = crate::geometry::direction(implanted.tilt, implanted.tip);
                    let half = 0.5 * implanted.diameter.get();
                    let end = implanted.platform + axis * implanted.length.get();
                    let corner =
                        |at: P3, off: f64| self.put(at.x + off, self.t_of(Wall::Facial, at.z));
                    let line = [
                        corner(implanted.platform, -half),
                        corner(end, -0.7 * half),
                        corner(end, 0.7 * half),
                        corner(implanted.platform, half),
                    ];
                    self.sheet.line(&line, ink);
                }
                Neighbour::Absent => {}
            }
        }
    }

    /// A root seen from the facial side, from a level on, its levels laid on the drape.
    fn root_line(&self, from: f64, root: &RootBody) -> Vec<P2> {
        let axis = crate::geometry::direction(root.tilt, root.tip);
        let length = root.length.get();
        let at = |share: f64, out: f64| {
            let narrowing = libm::pow((1.0 - share).max(0.0), root.taper);
            let s = root.x.get() + axis.x * share * length + out * root.half_md.get() * narrowing;
            self.put(s, self.t_of(Wall::Facial, from + axis.z * share * length))
        };
        const STEPS: u32 = 24;
        let shares = (0..=STEPS).map(|k| {
            let part = 1.0 - f64::from(k) / f64::from(STEPS);
            1.0 - part * part
        });
        let mut line: Vec<P2> = shares.clone().map(|share| at(share, -1.0)).collect();
        line.extend(shares.rev().map(|share| at(share, 1.0)));
        line
    }

    /// Place of a point of the crest's plane on the flat part.
    fn flat(&self, x: f64, y: f64) -> P2 {
        let facial = self.scene.ground.solid.face(Wall::Facial, 0.0);
        self.put(x, y - facial)
    }

    /// Neighbours' necks with their numbers, and the orifice or the tooth in it.
    pub(super) fn teeth(&mut self) {
        let site = self.scene.site().clone();
        let numbers = neighbours_of(site.tooth);
        let sides = [
            (Side::Mesial, &site.neighbours.mesial, numbers[0]),
            (Side::Distal, &site.neighbours.distal, numbers[1]),
        ];
        for (_, neighbour, number) in sides {
            let middle = match neighbour {
                Neighbour::Root(root) => {
                    let ring = self.neck(root);
                    self.sheet.area(vec![ring], Ink::Tooth);
                    self.flat(root.x.get(), root.y.get())
                }
                Neighbour::Implant(implanted) => {
                    let at = self.flat(implanted.platform.x, implanted.platform.y);
                    self.sheet.circle(at, 0.5 * implanted.diameter.get(), Ink::Implant);
                    at
                }
                Neighbour::Absent => continue,
            };
            if let Some(number) = number {
                let at = P2::new(middle.x, middle.y + 0.5 * self.sheet.letter());
                self.sheet.words(at, Anchor::Middle, &number.to_string(), Ink::Words);
            }
        }
        let ring = self.put_all(self.scene.ground.orifice());
        if self.scene.tooth_is_out() {
            self.sheet.area(vec![ring.clone()], Ink::Socket);
            let mut line = ring;
            line.extend(line.first().copied());
            self.sheet.line(&line, Ink::Outline);
        } else {
            self.sheet.area(vec![ring], Ink::Tooth);
            let own = site.coronal();
            let at = self.flat(own.x.get(), own.y.get());
            let at = P2::new(at.x, at.y + 0.5 * self.sheet.letter());
            self.sheet.words(at, Anchor::Middle, &site.tooth.to_string(), Ink::Words);
        }
    }

    /// A root cut by the crossing of the drape.
    fn neck(&self, root: &RootBody) -> Vec<P2> {
        self.put_all(&self.scene.ground.solid.map.orifice(&root.stack()))
    }

    /// Crest lines on both sides; where bone was lost, the former line dashed.
    pub(super) fn crests(&mut self) {
        let site = self.scene.site().clone();
        let seen = self.scene.believed.crest.is_seen();
        let offset = site.ridge.crest.oral_offset.get();
        for wall in [Wall::Facial, Wall::Oral] {
            let shift = if wall == Wall::Oral { offset } else { 0.0 };
            let line = |knots: &[P2]| {
                let mut line = Vec::new();
                let mut s = -super::HALF;
                while s <= super::HALF + 1e-9 {
                    line.push(self.put(s, self.t_of(wall, polyline::value(knots, s) + shift)));
                    s += 0.25;
                }
                line
            };
            let (now, before) = (line(&site.ridge.crest.knots), line(&site.ridge.crest.unharmed));
            if seen && now != before {
                self.sheet.line(&before, Ink::Dashed);
            }
            self.sheet.line(&now, if seen { Ink::Outline } else { Ink::Dashed });
        }
    }

    /// Defects of the walls.
    pub(super) fn defects(&mut self) {
        let lit = self.scene.show.lights(crate::figures::lit::Part::Wall);
        for defect in &self.scene.site().defects.clone() {
            let ring = self.ring(&defect.outline);
            self.sheet.area(vec![ring.clone()], Ink::Defect);
            if lit && defect.wall == Wall::Facial {
                self.sheet.area(vec![ring], Ink::Fault);
            }
        }
    }

    /// Foramen and loop, where they have been seen.
    pub(super) fn structures(&mut self) {
        let site = self.scene.site().clone();
        if let Some(tube) = &site.vital.loop_ {
            let at = |end: P3| P2::new(end.x, self.scene.ground.solid.map.t(Wall::Facial, end.z));
            let (a, b) = (at(tube.from), at(tube.to));
            let ring = self.put_all(&band(a, b, tube.radius.get()));
            self.sheet.area(vec![ring], Ink::Vital);
        }
        if let Some(foramen) = site.vital.foramen {
            let at = self.put(foramen.x, self.scene.ground.solid.map.t(Wall::Facial, foramen.z));
            self.sheet.circle(at, FORAMEN, Ink::Vital);
        }
    }
}

/// A rounded band about a segment.
fn band(a: P2, b: P2, radius: f64) -> Vec<P2> {
    let turn = libm::atan2(b.y - a.y, b.x - a.x);
    const CHORDS: u32 = 12;
    let quarter = core::f64::consts::FRAC_PI_2;
    let half = |middle: P2, from: f64| {
        (0..=CHORDS).map(move |k| {
            let angle = from + core::f64::consts::PI * f64::from(k) / f64::from(CHORDS);
            P2::new(middle.x + radius * libm::cos(angle), middle.y + radius * libm::sin(angle))
        })
    };
    half(a, turn + quarter).chain(half(b, turn - quarter)).collect()
}

/// The teeth next to a tooth: mesially (across the midline beside a first incisor) and distally.
pub(in crate::figures) fn neighbours_of(tooth: Tooth) -> [Option<Tooth>; 2] {
    let (quadrant, position) = (tooth.quadrant(), tooth.position());
    let mesial = if position > 1 {
        Tooth::new(tooth.iso() - 1)
    } else {
        Tooth::new(10 * [2, 1, 4, 3][usize::from(quadrant - 1)] + 1)
    };
    [mesial.ok(), Tooth::new(tooth.iso() + 1).ok()]
}
