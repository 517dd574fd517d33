//! The map: the drape of the ridge unrolled.
//!
//! `s` is x. `t` is length along the drape: 0 where the facial profile crosses the level of the
//! reference crest (z = 0), positive apically along the facial profile; negative straight across to
//! where the oral profile crosses the level of the oral crest (z = `oral_offset`), which lies at
//! t = -[`Map::across`], and on down the oral profile. Distances on the map are true distances on the
//! drape.
//!
//! Negative t belongs to the crossing. An outline of a *facial* defect that reaches t <= 0 is open to
//! the crest, and everything coronal of that stretch is gone as well (an oral one likewise from
//! t >= -across): a dehiscence has no coronal edge.

use super::{Crest, Profile, Ridge, Wall};
use crate::geometry::{Cone, P2, P3, Ray, Stack, V3, order, polygon, polyline};
use core::f64::consts::TAU;

/// How far coronally a defect that is open to the crest takes bone away, mm: above every crest.
const OPEN_UP_TO: f64 = -30.0;

/// Corners of an orifice's outline.
const CORNERS: u32 = 48;

/// Conversions between the map and the site. See the module.
#[derive(Debug, Clone, PartialEq)]
pub struct Map {
    facial: Face,
    oral: Face,
    across: f64,
}

/// One profile by arc length from a level on: (arc, z) with both rising, and the profile itself.
#[derive(Debug, Clone, PartialEq)]
struct Face {
    arcs: Vec<P2>,
    profile: Vec<P2>,
}

impl Face {
    fn of(profile: &Profile, level: f64) -> Self {
        let knots = &profile.knots;
        let y = |z: f64| polyline::value(knots, z);
        let mut levels: Vec<f64> = knots.iter().map(|knot| knot.x).collect();
        levels.push(level);
        order::ascend_once(&mut levels);
        let mut arcs = Vec::with_capacity(levels.len());
        let (mut arc, mut start) = (0.0, 0.0);
        let mut before: Option<f64> = None;
        for z in levels {
            if let Some(last) = before {
                arc += libm::hypot(z - last, y(z) - y(last));
            }
            if z.to_bits() == level.to_bits() {
                start = arc;
            }
            arcs.push(P2::new(arc, z));
            before = Some(z);
        }
        for knot in &mut arcs {
            knot.x -= start;
        }
        Self { arcs, profile: knots.clone() }
    }

    /// z at an arc length; beyond the knots the profile runs straight along z.
    fn z(&self, arc: f64) -> f64 {
        self.beyond(arc, |knot| knot.x, |knot| knot.y)
    }

    /// Arc length at a level.
    fn arc(&self, z: f64) -> f64 {
        self.beyond(z, |knot| knot.y, |knot| knot.x)
    }

    fn beyond(&self, at: f64, from: fn(&P2) -> f64, to: fn(&P2) -> f64) -> f64 {
        let (Some(first), Some(last)) = (self.arcs.first(), self.arcs.last()) else {
            return at;
        };
        if at <= from(first) {
            return to(first) + (at - from(first));
        }
        if at >= from(last) {
            return to(last) + (at - from(last));
        }
        let piece = self.arcs.windows(2).find(|pair| at <= from(&pair[1]));
        piece.map_or(at, |pair| {
            let way = (at - from(&pair[0])) / (from(&pair[1]) - from(&pair[0]));
            to(&pair[0]) + (to(&pair[1]) - to(&pair[0])) * way
        })
    }

    fn y(&self, z: f64) -> f64 {
        polyline::value(&self.profile, z)
    }
}

impl Map {
    /// The map of a ridge.
    #[must_use]
    pub fn of(ridge: &Ridge) -> Self {
        let drop = ridge.crest.oral_offset.get();
        let (facial, oral) = (Face::of(&ridge.facial, 0.0), Face::of(&ridge.oral, drop));
        let across = libm::hypot(facial.y(0.0) - oral.y(drop), drop);
        Self { facial, oral, across }
    }

    /// From the facial to the oral reference crest, mm; the oral crest lies at t = minus this.
    #[must_use]
    pub const fn across(&self) -> f64 {
        self.across
    }

    /// t of a level z on one wall.
    #[must_use]
    pub fn t(&self, wall: Wall, z: f64) -> f64 {
        match wall {
            Wall::Facial => self.facial.arc(z),
            Wall::Oral => -self.across - self.oral.arc(z),
        }
    }

    /// Level z of a t on one wall.
    #[must_use]
    pub fn z(&self, wall: Wall, t: f64) -> f64 {
        match wall {
            Wall::Facial => self.facial.z(t),
            Wall::Oral => self.oral.z(-self.across - t),
        }
    }

    /// The point of the drape at a place of the map.
    #[must_use]
    pub fn point(&self, at: P2) -> P3 {
        let (s, t) = (at.x, at.y);
        if t >= 0.0 {
            let z = self.facial.z(t);
            return P3::new(s, self.facial.y(z), z);
        }
        if t <= -self.across {
            let z = self.z(Wall::Oral, t);
            return P3::new(s, self.oral.y(z), z);
        }
        let (from, step) = self.crossing();
        P3::new(s, from.y, from.z) + step * -t
    }

    /// Where the crossing starts facially, and its unit vector towards the oral crest.
    fn crossing(&self) -> (P3, V3) {
        let level = self.z(Wall::Oral, -self.across);
        let (facial, oral) = (self.facial.y(0.0), self.oral.y(level));
        let step = V3::new(0.0, oral - facial, level).unit().unwrap_or(-V3::FACIAL);
        (P3::new(0.0, facial, 0.0), step)
    }

    /// The shadow along y, as (x, z), of a wall defect's outline: its edges are divided where they
    /// pass a knot of the profile, so that the shadow is exact, and where it reaches the crest it is
    /// open coronally (see the module).
    #[must_use]
    pub fn shadow(&self, wall: Wall, outline: &[P2]) -> Vec<P2> {
        let (face, sign, start) = match wall {
            Wall::Facial => (&self.facial, 1.0, 0.0),
            Wall::Oral => (&self.oral, -1.0, -self.across),
        };
        let arc = |p: P2| sign * (p.y - start);
        let below = polygon::clipped(outline, arc);
        let mut shadow = Vec::with_capacity(below.len() + 8);
        for (a, b) in polygon::edges(&below) {
            let (from, to) = (arc(a), arc(b));
            shadow.push(P2::new(a.x, face.z(from)));
            // Along the crest the defect is open: go round over every crest instead.
            if from <= 1e-9 && to <= 1e-9 {
                shadow.push(P2::new(a.x, OPEN_UP_TO));
                shadow.push(P2::new(b.x, OPEN_UP_TO));
                continue;
            }
            let mut ways: Vec<f64> = face
                .arcs
                .iter()
                .map(|knot| (knot.x - from) / (to - from))
                .filter(|way| *way > 1e-9 && *way < 1.0 - 1e-9)
                .collect();
            order::ascend(&mut ways);
            for way in ways {
                shadow.push(P2::new(a.x + (b.x - a.x) * way, face.z(from + (to - from) * way)));
            }
        }
        shadow
    }

    /// The orifice of a socket: the section of its root or trunk with the surface that crosses the
    /// crest.
    #[must_use]
    pub fn orifice(&self, root: &Stack) -> Vec<P2> {
        let (from, step) = self.crossing();
        let normal = V3::DISTAL.cross(step);
        let axis = root.frame.along;
        let lean = axis.dot(normal);
        let way =
            if lean.abs() > 1e-9 { (from - root.frame.origin).dot(normal) / lean } else { 0.0 };
        let middle = root.frame.origin + axis * way;
        let t = -(middle - from).dot(step);
        (0..CORNERS)
            .filter_map(|corner| {
                let (sin, cos) = libm::sincos(TAU * f64::from(corner) / f64::from(CORNERS));
                let ray = Ray { origin: middle, direction: V3::DISTAL * cos + step * -sin };
                let reach = root.ray(&ray).last()?.to.max(0.0);
                Some(P2::new(middle.x + reach * cos, t + reach * sin))
            })
            .collect()
    }

    /// A root seen from the facial side: its mesial and distal lines at their own levels, from its
    /// neck to its apex.
    #[must_use]
    pub fn root_outline(&self, root: &Stack) -> Vec<P2> {
        let (first, last) = (root.first_level(), root.last_level());
        let mut levels: Vec<f64> = root.knots().iter().map(|knot| knot.at).collect();
        let base = levels.last().copied().unwrap_or(last);
        levels.push(f64::max(0.0, first));
        levels.extend([0.5, 0.8, 0.95, 1.0].map(|way| base + (last - base) * way));
        order::ascend_once(&mut levels);
        let line = |sign: f64, level: f64| {
            let [aside, _] = root.radii(root.share(level));
            self.facially(root.frame.point(V3::new(0.0, 0.0, level)) + aside * sign)
        };
        let distal = levels.iter().map(|level| line(1.0, *level));
        let mesial = levels.iter().rev().skip(1).map(|level| line(-1.0, *level));
        distal.chain(mesial).collect()
    }

    /// An implant seen from the facial side.
    #[must_use]
    pub fn implant_outline(&self, implant: &Cone) -> Vec<P2> {
        let across = implant.frame.across;
        let (near, far) = (implant.frame.origin, implant.end());
        [
            near + across * implant.near,
            far + across * implant.far,
            far + across * -implant.far,
            near + across * -implant.near,
        ]
        .map(|point| self.facially(point))
        .to_vec()
    }

    /// A point of the site seen on the facial side: at its x, at the t of its level.
    #[must_use]
    pub fn facially(&self, point: P3) -> P2 {
        P2::new(point.x, self.t(Wall::Facial, point.z))
    }

    /// The crest of one wall as a line on the map, coronal peaks included.
    #[must_use]
    pub fn crest_line(&self, wall: Wall, crest: &Crest) -> Vec<P2> {
        let drop = match wall {
            Wall::Facial => 0.0,
            Wall::Oral => crest.oral_offset.get(),
        };
        crest.knots.iter().map(|knot| P2::new(knot.x, self.t(wall, knot.y + drop))).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;
    use crate::units::{Deg, Mm};

    fn plain() -> (Ridge, Map, Stack) {
        let site = Trial::plain().case.site;
        let map = Map::of(&site.ridge);
        let stack = site.socket.only().unwrap().stack();
        (site.ridge, map, stack)
    }

    #[test]
    fn lengths_on_the_map_are_lengths_along_the_profile() {
        let (_, map, _) = plain();
        // The plain facial profile runs straight from (z 0, y 4.2) to (5.5, 3.5).
        let first = libm::hypot(5.5, 0.7);
        assert!((map.t(Wall::Facial, 5.5) - first).abs() < 1e-12);
        assert!((map.z(Wall::Facial, 0.5 * first) - 2.75).abs() < 1e-12);
        assert!((map.across() - 8.4).abs() < 1e-12);
        assert!((map.t(Wall::Oral, 5.5) + 8.4 + libm::hypot(5.5, 2.0)).abs() < 1e-12);
    }

    #[test]
    fn going_to_the_map_and_back_gives_the_level_back_over_a_sweep() {
        let (mut ridge, ..) = plain();
        for drop in [-1.0, 0.0, 1.5] {
            ridge.crest.oral_offset = Mm::new(drop);
            let map = Map::of(&ridge);
            for i in -100..500 {
                let z = f64::from(i) * 0.1;
                for wall in [Wall::Facial, Wall::Oral] {
                    assert!((map.z(wall, map.t(wall, z)) - z).abs() < 1e-9, "{wall:?} {z}");
                }
            }
        }
    }

    #[test]
    fn neighbouring_places_of_the_map_are_as_far_apart_on_the_drape() {
        let (mut ridge, ..) = plain();
        ridge.crest.oral_offset = Mm::new(1.0);
        let map = Map::of(&ridge);
        for i in -200..200 {
            let t = f64::from(i) * 0.1;
            let apart =
                map.point(P2::new(0.0, t)).distance(map.point(P2::new(0.0, t + 1e-3))).get();
            // A bend between both shortens the straight way a little.
            assert!(apart <= 1e-3 + 1e-9 && apart > 0.9e-3, "{t} {apart}");
        }
    }

    #[test]
    fn the_orifice_of_an_upright_root_is_its_ellipse() {
        let (_, map, stack) = plain();
        let orifice = map.orifice(&stack);
        let area = polygon::signed_area(&orifice);
        let ellipse = crate::geometry::ellipse::area(3.2, 3.0);
        assert!(area > 0.995 * ellipse && area < ellipse, "{area} {ellipse}");
        let reach = polygon::extent(&orifice, |p| p.y).unwrap();
        assert!((reach.to + 1.2).abs() < 1e-9 && (reach.from + 7.2).abs() < 1e-9, "{reach:?}");
    }

    #[test]
    fn a_shadow_is_cut_at_knots_and_open_where_the_outline_reaches_the_crest() {
        let (_, map, _) = plain();
        let outline =
            [(-2.0, 0.0), (2.0, 0.0), (2.0, 8.0), (-2.0, 8.0)].map(|(s, t)| P2::new(s, t));
        let shadow = map.shadow(Wall::Facial, &outline);
        let deepest = map.z(Wall::Facial, 8.0);
        let area = polygon::signed_area(&shadow);
        assert!((area - 4.0 * (deepest - OPEN_UP_TO)).abs() < 1e-9, "{area}");
        let window = [(-2.0, 3.0), (2.0, 3.0), (2.0, 8.0), (-2.0, 8.0)].map(|(s, t)| P2::new(s, t));
        let area = polygon::signed_area(&map.shadow(Wall::Facial, &window));
        assert!((area - 4.0 * (deepest - map.z(Wall::Facial, 3.0))).abs() < 1e-9, "{area}");
    }

    #[test]
    fn an_oral_shadow_lies_under_its_outline() {
        let (_, map, _) = plain();
        let outline =
            [(-2.0, -16.0), (2.0, -16.0), (2.0, -10.0), (-2.0, -10.0)].map(|(s, t)| P2::new(s, t));
        let shadow = map.shadow(Wall::Oral, &outline);
        let reach = polygon::extent(&shadow, |p| p.y).unwrap();
        assert!((reach.from - map.z(Wall::Oral, -10.0)).abs() < 1e-9);
        assert!((reach.to - map.z(Wall::Oral, -16.0)).abs() < 1e-9);
    }

    #[test]
    fn a_tilted_root_is_outlined_between_its_lines() {
        let (ridge, map, _) = plain();
        let mut root = Trial::plain().case.site.socket.only().unwrap().clone();
        root.tilt = Deg::new(15.0);
        root.tip = Deg::new(5.0);
        let outline = map.root_outline(&root.stack());
        let area = polygon::signed_area(&outline);
        assert!(area > 40.0 && area < 90.0, "{area}");
        assert_eq!(map.crest_line(Wall::Facial, &ridge.crest)[2], P2::new(0.0, 0.0));
    }
}
