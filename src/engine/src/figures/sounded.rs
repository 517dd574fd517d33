//! What bone sounding has read: one side of the tooth with its gum, each reading as a probe that
//! stopped, and a cut where the probe stands.
//!
//! Nothing of the bone is drawn but what a probe has met. Between two places the depth runs
//! evenly from one to the other, which is a way of drawing and no finding; the text says so.

mod beside;
mod numbers;

use super::grain::stipple;
use super::scene::mm;
use super::sheet::{Layout, Margin, Sheet};
use super::{Anchor, Figure, Ink, Window, curve};
use crate::anatomy::{Jaw, Neighbour, Site, Wall};
use crate::cases::gum_margin;
use crate::chart::{Fact, Readings};
use crate::geometry::{P2, order, polyline};
use crate::rules::Known;
use crate::session::{Sounded, Spot};
use crate::units::Mm;
use numbers::Numbers;

/// How much of either neighbour the view of one side holds, the column of labels beside it, what parts
/// it from the cut on its other side, and that cut's width, mm.
const NEIGHBOUR: f64 = 2.2;
const COLUMN: f64 = 6.0;
const GAP: f64 = 0.9;
const CUT: f64 = 6.6;
/// How far coronally of the reference crest the drawing goes, mm: crowns leave the sheet there.
const CORONAL: f64 = 8.6;
/// How much gum and bone is drawn apical of whatever lies deepest, mm.
const BED: f64 = 1.7;
/// How far to either side of a place the bone that was met there is drawn, mm.
const AROUND: f64 = 0.6;
/// How finely the bone as met is followed, mm.
const STEP: f64 = 0.1;
/// How far apart the levels stand through which the gum's margin is drawn, mm.
const SOFT: f64 = 1.25;

/// The figure of one side, to be drawn `px` CSS pixels wide; `at` is where the probe stands now. The
/// gum is drawn as thick as it is once that was tested, and else with a supposed thickness.
#[must_use]
pub fn sounded(site: &Site, known: &Known<'_>, all: &[Sounded], at: Spot, px: f64) -> Figure {
    let (right, down) = ways(site);
    let here = places(all, at.wall);
    let half = half_of(site);
    let wide = COLUMN + 2.0 * half + GAP + CUT;
    let letter = letter_of(wide, px);
    let margin = margin_line(site, -half, half);
    let lowest = margin.iter().map(|at| at.y).fold(f64::NEG_INFINITY, f64::max);
    let levels = here.iter().map(|place| place.level(site));
    let end = levels.fold(lowest + Readings::NORMAL_SOUNDING, f64::max) + BED;
    let numbers = Numbers::of(&here, letter, right, half);
    let apical = end + numbers.depth() + 2.2 * letter;
    let (a, b) = (down * -CORONAL, down * apical);
    let from = -(half + COLUMN);
    let window = Window { least: P2::new(from, a.min(b)), most: P2::new(from + wide, a.max(b)) };
    let mut drawn = Drawn { site, right, down, half, end, apical, sheet: Sheet::new(window, px) };
    drawn.gum();
    drawn.teeth();
    drawn.bone(&here);
    drawn.expected();
    drawn.standing(at, &here);
    drawn.readings(&here);
    drawn.numbers(&numbers);
    drawn.sides();
    let tested = at.wall == Wall::Facial && known.is_seen(Fact::GumThickness);
    let gum = tested.then_some(site.soft.thickness);
    drawn.cut(at, &here, gum);
    let layout = Layout {
        left: COLUMN - letter,
        right: COLUMN - letter,
        from: window.least.y + letter,
        to: window.most.y - 4.0 * letter,
        scale_bar: Some(5.0),
    };
    let side = side_of(site, at.wall);
    let title = format!("What the probe met, {side} side");
    drawn.sheet.finish("sounded", title, says(site, &here, at, gum), layout)
}

/// The place of the probe at which a point of that figure lies, held to the neck of the tooth.
#[must_use]
pub fn sounded_at(site: &Site, wall: Wall, x: f64) -> Spot {
    let reach = f64::from(Spot::reach(site));
    let x = if x.is_finite() { x } else { 0.0 };
    #[expect(clippy::cast_possible_truncation, reason = "held to the tooth")]
    let tenths = libm::round(ways(site).0 * x * 10.0).clamp(-reach, reach) as i8;
    Spot { wall, tenths }
}

/// Half the width of the view: the crown, and a part of either neighbour.
fn half_of(site: &Site) -> f64 {
    (0.5 * site.crown.width.get()).max(site.coronal().half_md.get()).clamp(2.0, 8.0) + NEIGHBOUR
}

/// 1 where distal is to the right, and where apical is down; -1 where not.
const fn ways(site: &Site) -> (f64, f64) {
    let down = match site.tooth.jaw() {
        Jaw::Maxilla => -1.0,
        Jaw::Mandible => 1.0,
    };
    (if site.tooth.is_mirrored() { -down } else { down }, down)
}

const fn side_of(site: &Site, wall: Wall) -> &'static str {
    match wall {
        Wall::Facial => "facial",
        Wall::Oral => site.tooth.oral_word(),
    }
}

/// Height of a capital on a sheet so many millimetres wide, drawn `px` wide.
fn letter_of(wide: f64, px: f64) -> f64 {
    let window = Window { least: P2::new(0.0, 0.0), most: P2::new(wide, wide) };
    Sheet::new(window, px).letter()
}

/// The gum's margin between two places, as (x, z): a soft line through levels a good millimetre apart.
fn margin_line(site: &Site, from: f64, to: f64) -> Vec<P2> {
    let steps = libm::round((to - from).abs() / SOFT).max(1.0);
    let mut at = Vec::new();
    let mut step = 0.0;
    while step <= steps {
        let x = from + (to - from) * step / steps;
        at.push(P2::new(x, gum_margin(site, x)));
        step += 1.0;
    }
    curve::smooth_line(&at, 6)
}

/// A place of one side with everything that was read there, in order.
#[derive(Debug)]
struct Place {
    spot: Spot,
    depths: Vec<f64>,
    chosen: bool,
}

impl Place {
    /// The deepest reading: a probe errs mostly by stopping too early.
    fn deepest(&self) -> f64 {
        self.depths.iter().copied().fold(0.0, f64::max)
    }

    /// Level at which the probe stopped there.
    fn level(&self, site: &Site) -> f64 {
        gum_margin(site, self.spot.along()) + self.deepest()
    }
}

/// The places of one side from mesial to distal.
fn places(all: &[Sounded], wall: Wall) -> Vec<Place> {
    let mut places: Vec<Place> = Vec::new();
    for one in all.iter().filter(|one| one.spot.wall == wall) {
        let depth = one.depth.get();
        match places.iter_mut().find(|place| place.spot == one.spot) {
            Some(place) => {
                place.depths.push(depth);
                place.chosen |= one.chosen;
            }
            None => {
                places.push(Place { spot: one.spot, depths: vec![depth], chosen: one.chosen });
            }
        }
    }
    order::sort_short(&mut places, |a, b| a.spot.cmp(&b.spot));
    places
}

/// How deep the probe went along one side, as (x, depth) from mesial to distal: even between places,
/// level beyond the last.
fn depths(here: &[Place]) -> Vec<P2> {
    let at = |place: &Place, aside: f64| P2::new(place.spot.along() + aside, place.deepest());
    let mut line: Vec<P2> = here.first().map(|place| at(place, -AROUND)).into_iter().collect();
    line.extend(here.iter().map(|place| at(place, 0.0)));
    line.extend(here.last().map(|place| at(place, AROUND)));
    line
}

/// The bone as met, as (x, z): as far below the margin as the probe went.
fn met(site: &Site, depths: &[P2]) -> Vec<P2> {
    let (Some(first), Some(last)) = (depths.first(), depths.last()) else {
        return Vec::new();
    };
    let level = |x: f64| P2::new(x, gum_margin(site, x) + polyline::value(depths, x));
    let mut line = Vec::new();
    let mut x = first.x;
    while x < last.x {
        line.push(level(x));
        x += STEP;
    }
    line.push(level(last.x));
    line
}

/// The ring between two lines, which are empty afterwards.
fn closed(upper: &mut Vec<P2>, lower: &mut Vec<P2>) -> Vec<P2> {
    let mut ring = core::mem::take(upper);
    ring.extend(core::mem::take(lower).into_iter().rev());
    ring
}

struct Drawn<'a> {
    site: &'a Site,
    right: f64,
    down: f64,
    /// Half the width of the view.
    half: f64,
    /// Where gum and bone end, and where the drawing does.
    end: f64,
    apical: f64,
    sheet: Sheet,
}

impl Drawn<'_> {
    fn put(&self, x: f64, z: f64) -> P2 {
        P2::new(self.right * x, self.down * z)
    }

    fn put_all(&self, points: &[P2]) -> Vec<P2> {
        points.iter().map(|at| self.put(at.x, at.y)).collect()
    }

    /// The x that is drawn furthest left.
    fn leftmost(&self) -> f64 {
        -self.right * self.half
    }

    /// Gum from its margin down, torn off where the drawing of it ends.
    fn gum(&mut self) {
        let mut ring = margin_line(self.site, -self.half, self.half);
        let torn = [(1.0, 0.9), (0.97, 0.3), (0.88, 0.0), (0.55, 0.18), (0.2, 0.0)];
        let mut edge: Vec<P2> =
            torn.iter().map(|(x, up)| P2::new(x * self.half, self.end - up)).collect();
        edge.extend(torn.iter().rev().map(|(x, up)| P2::new(-x * self.half, self.end - up)));
        ring.extend(curve::smooth_line(&edge, 6));
        let ring = self.put_all(&ring);
        self.sheet.area(vec![ring], Ink::Gum);
        let x = self.leftmost();
        let target = self.put(0.93 * x, gum_margin(self.site, 0.93 * x));
        self.sheet.note(Margin::Left, target, "gum margin", Ink::Quiet);
    }

    /// The crowns, from where they leave the gum to the edge of the sheet: the tooth's own, and of its
    /// neighbours as much as there is room for.
    fn teeth(&mut self) {
        let (neck, contact) =
            (self.site.coronal().half_md.get(), 0.5 * self.site.crown.width.get());
        let contact = contact.max(neck);
        let tall = gum_margin(self.site, neck);
        let top = -CORONAL - 1.0;
        let flank = |side: f64, from: f64, contact: f64| {
            let points = [
                P2::new(side * from, gum_margin(self.site, side * from)),
                P2::new(side * (0.5 * from + 0.5 * contact), tall - 1.1),
                P2::new(side * contact, tall - 3.0),
                P2::new(side * contact, top),
            ];
            curve::smooth_line(&points, 6)
        };
        let mut own = margin_line(self.site, -neck, neck);
        own.extend(flank(1.0, neck, contact));
        own.extend(flank(-1.0, neck, contact).into_iter().rev());
        let neighbours = &self.site.neighbours;
        let mut rings = vec![own];
        for (sign, neighbour) in [(-1.0, &neighbours.mesial), (1.0, &neighbours.distal)] {
            if !matches!(neighbour, Neighbour::Absent) {
                let from = (contact + 1.1).min(self.half - 0.2);
                let mut ring = flank(sign, from, contact + 0.1);
                ring.push(P2::new(sign * self.half, top));
                ring.extend(margin_line(self.site, sign * self.half, sign * from));
                rings.push(ring);
            }
        }
        for ring in rings {
            let ring = self.put_all(&ring);
            self.sheet.area(vec![ring], Ink::Tooth);
        }
    }

    /// Bone as the probe met it, and what is deeper than it is expected to lie.
    fn bone(&mut self, here: &[Place]) {
        let depths = depths(here);
        let line = met(self.site, &depths);
        let (Some(first), Some(last)) = (line.first().copied(), line.last().copied()) else {
            return;
        };
        // It runs out below, as an engraver ends what he does not know.
        let under = [(0.0, 0.0), (0.02, 0.7), (0.12, 0.95), (0.5, 1.0), (0.88, 0.95), (0.98, 0.7)];
        let under = under.map(|(share, down)| {
            let x = last.x + share * (first.x - last.x);
            P2::new(
                x,
                last.y
                    + share * (first.y - last.y)
                    + down * (self.end - 0.25 - last.y.max(first.y)),
            )
        });
        let mut ring = line.clone();
        ring.extend(curve::smooth_line(&under, 4));
        let inked = self.put_all(&ring);
        self.sheet.area(vec![inked], Ink::Marrow);
        let finer = (0.1 / self.sheet.pixel()).clamp(0.6, 2.0);
        let dots = stipple(&[ring], 30.0 * finer, |at| {
            let below = at.y - polyline::value(&line, at.x);
            finer * (26.0 * libm::exp(-1.8 * below) + 3.0)
        });
        let dots = self.put_all(&dots);
        self.sheet.dots(&dots, Ink::Stipple);
        for ring in self.deeper(&depths) {
            let ring = self.put_all(&ring);
            self.sheet.area(vec![ring], Ink::Lost);
        }
        let inked = self.put_all(&line);
        self.sheet.line(&inked, Ink::Outline);
        let end = if self.right > 0.0 { first } else { last };
        let target = self.put(end.x, end.y + 0.5);
        self.sheet.note(Margin::Left, target, "bone as met", Ink::Words);
    }

    /// Where the probe went deeper than the crest is expected: rings between there and the bone as met.
    fn deeper(&self, depths: &[P2]) -> Vec<Vec<P2>> {
        let mut rings = Vec::new();
        let (mut upper, mut lower): (Vec<P2>, Vec<P2>) = (Vec::new(), Vec::new());
        for at in met(self.site, depths) {
            let expected = gum_margin(self.site, at.x) + Readings::NORMAL_SOUNDING;
            if at.y > expected + 1e-9 {
                upper.push(P2::new(at.x, expected));
                lower.push(at);
            } else if !upper.is_empty() {
                rings.push(closed(&mut upper, &mut lower));
            }
        }
        if !upper.is_empty() {
            rings.push(closed(&mut upper, &mut lower));
        }
        rings
    }

    /// Where the crest is expected: as far below the margin as is still normal.
    fn expected(&mut self) {
        let line: Vec<P2> = margin_line(self.site, -self.half, self.half)
            .iter()
            .map(|at| self.put(at.x, at.y + Readings::NORMAL_SOUNDING))
            .collect();
        self.sheet.line(&line, Ink::Dashed);
        let x = 0.97 * self.leftmost();
        let level = gum_margin(self.site, x) + Readings::NORMAL_SOUNDING;
        let words = format!("crest expected\nwithin {}", mm(Mm::new(Readings::NORMAL_SOUNDING)));
        let target = self.put(x, level);
        self.sheet.note(Margin::Left, target, words, Ink::Words);
    }

    /// Each reading from the margin to where the probe stopped; what was read there before as rings.
    fn readings(&mut self, here: &[Place]) {
        for place in here {
            let x = place.spot.along();
            let from = gum_margin(self.site, x);
            let (a, b) = (self.put(x, from), self.put(x, from + place.deepest()));
            let ink = if place.chosen { Ink::Mark } else { Ink::Dimension };
            self.sheet.dimension(a, b, ink);
            self.sheet.circle(b, 1.8 * self.sheet.pixel(), Ink::Words);
            let shallower = place.depths.iter().filter(|depth| **depth < place.deepest());
            for depth in shallower {
                let at = self.put(x, from + depth);
                self.sheet.circle(at, 2.0 * self.sheet.pixel(), Ink::Fine);
            }
        }
    }

    /// A number for each place, in rows below the bed, each with a fine line to its probe.
    fn numbers(&mut self, numbers: &Numbers) {
        let shelf = self.end + 0.1;
        let middle = |row: f64| self.down * (shelf + numbers.middle(row));
        for one in &numbers.all {
            let top = self.down * (shelf + numbers.middle(one.row) - 0.9 * numbers.letter);
            let first = self.down * (shelf + numbers.middle(0.0) - 0.9 * numbers.letter);
            let tip = P2::new(
                one.x,
                self.down * (one.deepest + gum_margin(self.site, self.right * one.x)),
            );
            let bend = P2::new(one.x, self.down * shelf);
            self.sheet.line(&[tip, bend, P2::new(one.at, first), P2::new(one.at, top)], Ink::Fine);
            let at = P2::new(one.at, middle(one.row) + 0.5 * numbers.letter);
            self.sheet.words(at, Anchor::Middle, &one.words, Ink::Words);
        }
    }

    /// The probe as it stands: on the margin, or as deep as it went here.
    fn standing(&mut self, at: Spot, here: &[Place]) {
        let x = at.along();
        let place = here.iter().find(|place| place.spot == at);
        let tip = gum_margin(self.site, x) + place.map_or(0.0, Place::deepest);
        let axis = [self.put(x, -CORONAL - 1.0), self.put(x, tip)];
        self.probe(axis);
    }

    /// A probe between two points of the sheet, its tip last, with a stroke at each millimetre.
    fn probe(&mut self, [top, tip]: [P2; 2]) {
        let (dx, dy) = (top.x - tip.x, top.y - tip.y);
        let length = libm::hypot(dx, dy).max(1e-9);
        let (along, across) =
            (P2::new(dx / length, dy / length), P2::new(-dy / length, dx / length));
        let half = |far: f64| 0.13 + 0.016 * far;
        let at = |far: f64, side: f64| {
            P2::new(
                tip.x + far * along.x + side * half(far) * across.x,
                tip.y + far * along.y + side * half(far) * across.y,
            )
        };
        let ring = vec![at(length, -1.0), at(0.1, -1.0), tip, at(0.1, 1.0), at(length, 1.0)];
        self.sheet.area(vec![ring], Ink::Implant);
        let mut marks = Vec::new();
        let mut far = 1.0;
        while far < length {
            marks.push(vec![at(far, -1.0), at(far, 1.0)]);
            far += 1.0;
        }
        self.sheet.lines(&marks, Ink::Dimension);
    }

    fn sides(&mut self) {
        let letter = self.sheet.letter();
        let y = self.down * (self.apical - 1.1 * letter) + 0.5 * letter;
        for (sign, words) in [(-1.0, "mesial"), (1.0, "distal")] {
            let x = self.right * sign;
            let anchor = if x > 0.0 { Anchor::End } else { Anchor::Start };
            self.sheet.words(P2::new(x * (self.half - 0.3), y), anchor, words, Ink::Quiet);
        }
    }
}

fn says(site: &Site, here: &[Place], at: Spot, gum: Option<Mm>) -> String {
    let side = side_of(site, at.wall);
    let mut said = vec![format!(
        "The {side} side of the tooth with its gum, and a cut from facial to {} where the probe stands, {}.",
        site.tooth.oral_word(),
        at.words()
    )];
    let told: Vec<String> = here
        .iter()
        .map(|place| {
            let read: Vec<String> = place.depths.iter().map(|depth| mm(Mm::new(*depth))).collect();
            format!("{}, {}", place.spot.words(), read.join(" and "))
        })
        .collect();
    if told.is_empty() {
        said.push("Nothing has been read here yet.".to_owned());
    } else {
        said.push(format!("From the margin to the bone: {}.", told.join("; ")));
        said.push("Between two places the depth is drawn as changing evenly; of several readings at one place the deepest counts.".to_owned());
    }
    let normal = mm(Mm::new(Readings::NORMAL_SOUNDING));
    let deep = here.iter().filter(|place| place.deepest() > Readings::NORMAL_SOUNDING);
    let deep: Vec<String> = deep.map(|place| place.spot.words()).collect();
    said.push(if deep.is_empty() {
        format!("The dashed line shows where the crest is expected, within {normal} of the margin.")
    } else {
        format!("Hatched: deeper than {normal}, where the crest is expected: {}.", deep.join("; "))
    });
    said.push(match gum {
        Some(thick) => format!("The gum is {} thick.", mm(thick)),
        None => "How thick the gum is was not tested; its thickness in the cut is a supposition."
            .to_owned(),
    });
    said.join(" ")
}

#[cfg(test)]
mod tests;
