//! The gap clock: the site seen from the mouth at one level, with the gap in twelve directions.

use crate::anatomy::{Beside, Wall};
use crate::figures::lit::Part;
use crate::figures::scene::{Scene, mm};
use crate::figures::sheet::{Layout, Sheet};
use crate::figures::show::{counts_per_unit, directed};
use crate::figures::{Anchor, Figure, Handle, Ink, Show, Window, cut};
use crate::geometry::{Cone, P2, P3, Ray, Stack, V3};
use crate::measure::Opening;
use crate::plan::Decision;
use crate::units::{Deg, Mm};

/// Half the width and height of the window, millimetres.
const HALF: P2 = P2::new(11.6, 10.6);
/// Radius of the ring of numbers.
const RING: f64 = 7.2;
/// Directions all round.
const HOURS: u32 = 12;

struct Looking<'a, 'b> {
    scene: &'b Scene<'a>,
    sheet: Sheet,
    /// Level that is looked at.
    z: f64,
    /// y of the middle of the sheet.
    middle: f64,
    right: f64,
    down: f64,
}

/// One direction.
struct Hour {
    opening: Opening,
    /// On the implant's surface.
    start: P2,
    /// Where bone is met, or where the arrow ends.
    end: P2,
    /// Where the direction meets the ring, when its number stands there.
    ring: Option<P2>,
    /// Middle of the number.
    words: P2,
}

/// The gap clock.
#[must_use]
pub fn gap_clock(show: &Show<'_>) -> Figure {
    let scene = Scene::of(show);
    let crest = scene.crest(Wall::Facial).max(0.0);
    let z = scene.body().map_or(crest + 0.5, |body| body.frame.origin.z.max(crest));
    let window = Window { least: P2::new(-HALF.x, -HALF.y), most: P2::new(HALF.x, HALF.y) };
    let mut looking = Looking {
        sheet: Sheet::new(window, show.px),
        z,
        middle: scene.site().coronal().y.get(),
        right: scene.right(),
        down: scene.down(),
        scene: &scene,
    };
    let hours = match scene.body() {
        Some(body) if scene.tooth_is_out() => looking.read(&body),
        _ => Vec::new(),
    };
    looking.bone(&hours);
    looking.neighbours();
    looking.socket();
    looking.lost();
    looking.faces();
    looking.hours(&hours);
    if let Some(body) = scene.body() {
        looking.implant(&body);
    }
    looking.sides();
    let says = looking.says();
    let layout =
        Layout { left: HALF.x, right: HALF.x, from: -HALF.y, to: HALF.y, scale_bar: Some(2.0) };
    looking.sheet.finish("gap-clock", scene.title("Gap clock"), says, layout)
}

impl Looking<'_, '_> {
    fn put(&self, x: f64, y: f64) -> P2 {
        P2::new(self.right * x, self.down * (y - self.middle))
    }

    fn put_all(&self, points: &[P2]) -> Vec<P2> {
        points.iter().map(|at| self.put(at.x, at.y)).collect()
    }

    /// Bone at this level, where the crest reaches it.
    fn bone(&mut self, hours: &[Hour]) {
        if !self.scene.believed.ridge.is_seen() {
            return;
        }
        let solid = &self.scene.ground.solid;
        let (facial, oral) = (solid.face(Wall::Facial, self.z), solid.face(Wall::Oral, self.z));
        let stands = |x: &f64| solid.crest(crate::anatomy::Bone::Now, Wall::Facial, *x) <= self.z;
        let mut rings = Vec::new();
        let columns: Vec<f64> = (-120..=120_i32).map(|k| f64::from(k) / 10.0).collect();
        for run in columns.split(|x| !stands(x)) {
            let (Some(from), Some(to)) = (run.first(), run.last()) else { continue };
            rings.push(
                [(*from, facial), (*to, facial), (*to, oral), (*from, oral)]
                    .map(|(x, y)| self.put(x, y))
                    .to_vec(),
            );
        }
        self.sheet.area(rings.clone(), Ink::Marrow);
        let finer = (0.07 / self.sheet.pixel()).clamp(0.6, 2.6);
        let (wide, tall) = (1.5 * self.sheet.letter(), self.sheet.letter());
        let dots = crate::figures::grain::stipple(&rings, 26.0 * finer, |at| {
            // The dots leave room for the numbers.
            let covered = |hour: &Hour| {
                (at.x - hour.words.x).abs() < wide && (at.y - hour.words.y).abs() < tall
            };
            if hours.iter().any(covered) {
                return 0.0;
            }
            let y = self.down * at.y + self.middle;
            let depth = (facial - y).min(y - oral);
            finer * if depth < 1.0 { 22.0 } else { 9.0 }
        });
        self.sheet.dots(&dots, Ink::Stipple);
    }

    /// A body's outline at this level, as the plane across z meets it.
    fn level_ring(&self, root: &Stack) -> Vec<P2> {
        let along = root.frame.along;
        let middle = root.frame.origin + along * ((self.z - root.frame.origin.z) / along.z);
        (0..72_u32)
            .filter_map(|k| {
                let (sin, cos) = libm::sincos(core::f64::consts::TAU * f64::from(k) / 72.0);
                let ray = Ray { origin: middle, direction: V3::new(cos, sin, 0.0) };
                let reach = root.ray(&ray).as_slice().last()?.to.max(0.0);
                let at = ray.at(reach);
                Some(P2::new(at.x, at.y))
            })
            .collect()
    }

    fn neighbours(&mut self) {
        let numbers = crate::figures::map::neighbours_of(self.scene.show.case.site.tooth);
        let seen = self.scene.believed.neighbours.is_seen();
        let m = self.scene.measured();
        let distances = [m.to_mesial_neighbour(), m.to_distal_neighbour()];
        let besides = self.scene.ground.solid.beside.clone();
        for ((beside, number), distance) in besides.iter().zip(numbers).zip(distances) {
            let middle = match beside {
                Beside::Root(root) => {
                    let ring = self.put_all(&self.level_ring(root));
                    if seen {
                        self.sheet.area(vec![ring], Ink::Tooth);
                    } else {
                        let mut line = ring;
                        line.extend(line.first().copied());
                        self.sheet.line(&line, Ink::Dashed);
                    }
                    let along = root.frame.along;
                    root.frame.origin + along * ((self.z - root.frame.origin.z) / along.z)
                }
                Beside::Implant(cone) => {
                    let at = self.put(cone.frame.origin.x, cone.frame.origin.y);
                    self.sheet.circle(at, cone.near, Ink::Implant);
                    cone.frame.origin
                }
                Beside::Absent => continue,
            };
            let at = self.put(middle.x, middle.y);
            let edge = HALF.x - 1.6 * self.sheet.letter();
            if let Some(number) = number {
                let at = P2::new(at.x.clamp(-edge, edge), at.y + 0.5 * self.sheet.letter());
                self.sheet.words(at, Anchor::Middle, &number.to_string(), Ink::Words);
                if let (Some(distance), true) = (distance, seen) {
                    let ink = self.scene.ink(Part::Neighbours, Ink::Quiet);
                    let oral = self.scene.ground.solid.face(Wall::Oral, self.z);
                    let out = self.put(0.0, oral).y;
                    let letter = self.sheet.letter();
                    let y = if out > 0.0 { out + 1.8 * letter } else { out - 0.8 * letter };
                    let under = P2::new(at.x, y);
                    self.sheet.words(under, Anchor::Middle, &away(distance.distance), ink);
                }
            }
        }
    }

    fn socket(&mut self) {
        let seen = self.scene.believed.root.is_seen();
        for root in self.scene.ground.solid.socket.as_slice().to_vec() {
            let ring = self.put_all(&self.level_ring(&root));
            let mut line = ring.clone();
            line.extend(line.first().copied());
            if self.scene.tooth_is_out() {
                self.sheet.area(vec![ring], Ink::Socket);
                self.sheet.line(&line, Ink::Outline);
            } else if seen {
                self.sheet.area(vec![ring], Ink::Tooth);
            } else {
                self.sheet.line(&line, Ink::Dashed);
            }
        }
    }

    /// Columns of x over which a wall is missing at this level, in runs of (x, inner, face).
    fn missing(&self, wall: Wall) -> Vec<Vec<(f64, f64, f64)>> {
        let solid = &self.scene.ground.solid;
        if solid.cuts.iter().all(|cut| cut.wall != wall) {
            return Vec::new();
        }
        let face = solid.face(wall, self.z);
        let column = |x: f64| {
            cut::missing(solid, wall, x).contains(self.z).then(|| {
                let roots = cut::roots_at(solid, x, self.z);
                let (level, slope) = self.scene.site().socket.plane(wall);
                let plane = level + slope * self.z;
                let inner = match wall {
                    Wall::Facial => roots.as_slice().last().map_or(plane, |part| part.to),
                    Wall::Oral => roots.as_slice().first().map_or(plane, |part| part.from),
                };
                (x, inner, face)
            })
        };
        let columns: Vec<Option<(f64, f64, f64)>> =
            (-120..=120_i32).map(|k| column(f64::from(k) / 10.0)).collect();
        columns
            .split(Option::is_none)
            .map(|run| run.iter().flatten().copied().collect::<Vec<_>>())
            .filter(|run| run.len() > 1)
            .collect()
    }

    fn lost(&mut self) {
        for wall in [Wall::Facial, Wall::Oral] {
            for run in self.missing(wall) {
                let mut ring: Vec<P2> =
                    run.iter().map(|(x, _, face)| self.put(*x, *face)).collect();
                let line = ring.clone();
                ring.extend(run.iter().rev().map(|(x, inner, _)| self.put(*x, *inner)));
                self.sheet.area(vec![ring], Ink::Lost);
                self.sheet.line(&line, Ink::Dashed);
            }
        }
    }

    /// Outer faces, where they are left.
    fn faces(&mut self) {
        let believed = &self.scene.believed;
        let firm = [
            (Wall::Facial, believed.ridge.is_seen() && believed.facial_plate.is_seen()),
            (Wall::Oral, believed.ridge.is_seen()),
        ];
        for (wall, seen) in firm {
            let y = self.scene.ground.solid.face(wall, self.z);
            let gone = self.missing(wall);
            let mut from = -HALF.x;
            for run in &gone {
                let (Some(first), Some(last)) = (run.first(), run.last()) else { continue };
                self.face_line(y, from, first.0, seen);
                from = last.0;
            }
            self.face_line(y, from, HALF.x, seen);
        }
    }

    fn face_line(&mut self, y: f64, from: f64, to: f64, seen: bool) {
        let line = [self.put(from, y), self.put(to, y)];
        self.sheet.line(&line, if seen { Ink::Outline } else { Ink::Dashed });
    }

    /// Depth below the platform at which the gap is read.
    fn depth(&self, body: &Cone) -> f64 {
        ((self.z - body.frame.origin.z) / body.frame.along.z.max(1e-9)).max(0.0)
    }

    /// Reads the gap in twelve directions, and finds the place of each number: outside the ridge on
    /// the facial and oral sides, in the bone between the teeth elsewhere.
    fn read(&self, body: &Cone) -> Vec<Hour> {
        let depth = self.depth(body);
        let m = self.scene.measured();
        (0..HOURS)
            .map(|hour| {
                let turn = Deg::new(f64::from(hour) * 360.0 / f64::from(HOURS));
                let side = body.frame.radial(turn);
                let at = |reach: f64| {
                    let p = body.axis_at(depth) + side * (body.radius(depth) + reach);
                    self.put(p.x, p.y)
                };
                let opening = m.gap(turn, Mm::new(depth)).unwrap_or(Opening::Open);
                let reach = match opening {
                    Opening::Bone(length) => length.get(),
                    Opening::AboveCrest | Opening::Open => (5.0 - body.radius(depth)).max(1.0),
                };
                let (start, end) = (at(0.0), at(reach));
                let outside = side.x.abs() < 0.6 || !matches!(opening, Opening::Bone(_));
                let ring = if outside { Some(self.ring(body, depth, side)) } else { None };
                let words = match ring {
                    Some(ring) => P2::new(ring.x * 1.08, ring.y * 1.08),
                    None => at(reach + 1.9 * self.sheet.letter()),
                };
                Hour { opening, start, end, ring, words }
            })
            .collect()
    }

    /// Draws the twelve directions.
    fn hours(&mut self, hours: &[Hour]) {
        let lit = self.scene.show.lights(Part::Gap);
        for (place, hour) in hours.iter().enumerate() {
            let ink = if place == 0 && lit { Ink::Fault } else { Ink::Dimension };
            let (words, words_ink) = match hour.opening {
                Opening::Bone(length) => {
                    if let Some(ring) = hour.ring {
                        self.sheet.line(&[hour.end, ring], Ink::Fine);
                    }
                    if length.get() > 0.0 {
                        self.sheet.dimension(hour.start, hour.end, ink);
                    }
                    (format!("{:.1}", length.get()), Ink::Words)
                }
                Opening::AboveCrest => ("above".to_owned(), Ink::Quiet),
                Opening::Open => {
                    self.sheet.line(&[hour.start, hour.end], Ink::Fault);
                    self.arrow(hour.start, hour.end);
                    ("open".to_owned(), Ink::Fault)
                }
            };
            let at = P2::new(hour.words.x, hour.words.y + 0.5 * self.sheet.letter());
            let words_ink = if ink == Ink::Fault { Ink::Fault } else { words_ink };
            self.sheet.words(at, Anchor::Middle, &words, words_ink);
        }
    }

    /// Where a direction from the implant meets the ring of numbers.
    fn ring(&self, body: &Cone, depth: f64, side: V3) -> P2 {
        let from: P3 = body.axis_at(depth);
        let start = self.put(from.x, from.y);
        let step = P2::new(self.right * side.x, self.down * side.y);
        let square = (step.x * step.x + step.y * step.y).max(1e-12);
        let half = (start.x * step.x + start.y * step.y) / square;
        let rest = (start.x * start.x + start.y * start.y - RING * RING) / square;
        let reach = -half + libm::sqrt((half * half - rest).max(0.0));
        P2::new(start.x + reach * step.x, start.y + reach * step.y)
    }

    fn arrow(&mut self, from: P2, to: P2) {
        let (dx, dy) = (to.x - from.x, to.y - from.y);
        let length = libm::hypot(dx, dy).max(1e-9);
        let (ux, uy) = (dx / length, dy / length);
        let size = 6.0 * self.sheet.pixel();
        let wing = |turn: f64| {
            P2::new(to.x - size * (ux + 0.5 * turn * uy), to.y - size * (uy - 0.5 * turn * ux))
        };
        self.sheet.line(&[wing(1.0), to, wing(-1.0)], Ink::Fault);
    }

    fn implant(&mut self, body: &Cone) {
        let depth = self.depth(body);
        let at = body.axis_at(depth);
        let middle = self.put(at.x, at.y);
        let radius = body.radius(depth);
        self.sheet.circle(middle, radius, Ink::Implant);
        let core = radius - crate::anatomy::THREAD_DEPTH.get();
        let ring = crate::figures::curve::ellipse(middle, core, core);
        let mut line = ring;
        line.extend(line.first().copied());
        self.sheet.line(&line, Ink::Fine);
        if self.scene.show.plan.implant.is_none() {
            self.sheet.handle(Handle {
                at: middle,
                label: format!("implant: mesial or distal, facial or {}", self.scene.oral()),
                across: Some((
                    Decision::OffsetDistal,
                    self.right * counts_per_unit(Decision::OffsetDistal),
                )),
                down: Some((
                    Decision::OffsetFacial,
                    self.down * counts_per_unit(Decision::OffsetFacial),
                )),
                vertex: None,
                makes: false,
            });
        }
    }

    fn sides(&mut self) {
        let height = 1.1 * self.sheet.letter();
        let (down, right) = (self.down, self.right);
        let edge = HALF.y - 1.1 * height;
        let oral = self.scene.oral();
        for (y, word) in [(down * edge, "facial"), (-down * edge, oral)] {
            self.sheet.words_of(
                P2::new(0.0, y + 0.5 * height),
                Anchor::Middle,
                word,
                Ink::Quiet,
                height,
            );
        }
        // Beside the ring, on the facial side of the neighbours, where nothing else stands.
        let aside = HALF.x - height;
        for (x, word) in [(-right * aside, "mesial"), (right * aside, "distal")] {
            let anchor = if x < 0.0 { Anchor::Start } else { Anchor::End };
            let at = P2::new(x, self.down * 0.62 * HALF.y);
            self.sheet.words_of(at, anchor, word, Ink::Quiet, height);
        }
    }

    /// How far the neighbours are, in sentences.
    fn say_neighbours(&self) -> String {
        if !self.scene.believed.neighbours.is_seen() {
            return String::new();
        }
        let m = self.scene.measured();
        let sides = [(m.to_mesial_neighbour(), "mesially"), (m.to_distal_neighbour(), "distally")];
        let said = sides.into_iter().filter_map(|(distance, way)| {
            let distance = distance?;
            let what = if distance.to_implant { "implant" } else { "root" };
            Some(format!(" The neighbouring {what} {way}: {}.", away(distance.distance)))
        });
        said.collect()
    }

    fn says(&self) -> String {
        let scene = self.scene;
        let oral = scene.oral();
        let level =
            directed(Decision::Depth, self.z, "level with the reference crest", scene.tooth());
        if !scene.tooth_is_out() {
            return format!("The tooth stands; its neck is shown {level}, seen from the mouth.");
        }
        let Some(body) = scene.body() else {
            return format!("The socket seen from the mouth, {level}. No implant yet.");
        };
        let depth = self.depth(&body);
        let m = scene.measured();
        let name = |degrees: f64, word: &str| match m
            .gap(Deg::new(degrees), Mm::new(depth))
            .unwrap_or(Opening::Open)
        {
            Opening::Bone(length) if length == Mm::ZERO => {
                format!("{word} none, it stands in bone")
            }
            Opening::Bone(length) => format!("{word} {}", mm(length)),
            Opening::AboveCrest => format!("{word} above the bone here"),
            Opening::Open => format!("{word} open, no bone is met"),
        };
        format!(
            "The gap round the implant, {level}: {}; {}; {}; {}.{}",
            name(0.0, "facially"),
            name(90.0, "distally"),
            name(180.0, &format!("on the {oral} side")),
            name(270.0, "mesially"),
            self.say_neighbours(),
        )
    }
}

/// A distance to a neighbour in words.
fn away(distance: Mm) -> String {
    if distance < Mm::ZERO {
        format!("{} into it", mm(distance.abs()))
    } else {
        format!("{} away", mm(distance))
    }
}
