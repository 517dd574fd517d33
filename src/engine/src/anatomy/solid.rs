//! The site as solids that answer rays.
//!
//! Bone is what lies between the facial and the oral profile, apical of the crest's surface
//! `z = crest(x) + oral_offset * w(y)` (w falls linearly in y from 1 at the oral profile's y at z = 0
//! to 0 at the facial one's, and stays level beyond), coronal of a floor; less the socket's
//! bodies, the neighbours' bodies, canals, the hollow of an apical lesion (a ball about the first
//! root's apex) and, as the site is now, the wall defects. It has no ends along x. Every surface is a
//! plane, a quadric or a piece of one, so the intervals on a ray are exact.

use super::bodies::Bodies;
use super::body::Beside;
pub use super::cut::Cut;
use super::cut::at_most_nothing;
use super::map::Map;
use super::{Crest, Lesion, Profile, Site, Tube, Wall};
use crate::geometry::convex::Convex;
use crate::geometry::{
    Capsule, Cone, Interval, Intervals, P2, P3, Ray, Stack, V3, polygon, polyline,
};

/// Rounds in which the level is sought at which a face meets the crest's surface.
const CREST_ROUNDS: u32 = 12;

/// Which bone is asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bone {
    /// As it is.
    Now,
    /// With the crest as it is and every wall defect filled in.
    WallsWhole,
    /// Before any loss of wall or crest.
    Unharmed,
}

/// The site's bodies, prepared once. See the module.
#[derive(Debug, Clone, PartialEq)]
pub struct Solid {
    /// Root and trunk bodies of the socket.
    pub socket: Bodies,
    /// Mesial and distal neighbour.
    pub beside: [Beside; 2],
    /// Map of the ridge.
    pub map: Map,
    /// What each defect takes away.
    pub cuts: Vec<Cut>,
    /// Canal, loop, nasopalatine canal, lesion: what of them there is.
    pub hollows: Vec<Capsule>,
    facial: Vec<P2>,
    oral: Vec<P2>,
    pub(super) crest: Vec<P2>,
    unharmed: Vec<P2>,
    pub(super) drop: f64,
    /// w over y.
    pub(super) share: [P2; 2],
    floor: Option<Plane>,
    /// x between which each neighbour lies.
    pub(super) reach: [Option<Interval>; 2],
}

/// z = `z` + `rise` x.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Plane {
    z: f64,
    rise: f64,
}

impl Solid {
    /// Prepares a site.
    #[must_use]
    pub fn of(site: &Site) -> Self {
        let socket = Bodies::of(&site.socket);
        let map = Map::of(&site.ridge);
        let knots = |profile: &Profile| profile.knots.clone();
        let (facial, oral) = (knots(&site.ridge.facial), knots(&site.ridge.oral));
        let beside = [&site.neighbours.mesial, &site.neighbours.distal].map(Beside::of);
        let cuts = site
            .defects
            .iter()
            .filter_map(|defect| {
                let outline = defect.outline.points();
                let shadow = map.shadow(defect.wall, &outline);
                let box_ = [polygon::extent(&shadow, |p| p.x)?, polygon::extent(&shadow, |p| p.y)?];
                let plane = site.socket.plane(defect.wall);
                Some(Cut { wall: defect.wall, shadow, outline, box_, plane })
            })
            .collect();
        let Crest { knots: crest, unharmed, oral_offset } = site.ridge.crest.clone();
        Self {
            hollows: hollows(site, socket.roots().first()),
            reach: [reach(&beside[0]), reach(&beside[1])],
            share: share(polyline::value(&facial, 0.0), polyline::value(&oral, 0.0)),
            floor: site.vital.floor.as_ref().map(|f| Plane { z: f.z.get(), rise: f.rise }),
            drop: oral_offset.get(),
            socket,
            beside,
            map,
            cuts,
            facial,
            oral,
            crest,
            unharmed,
        }
    }

    /// y of an outer face at a level.
    #[must_use]
    pub fn face(&self, wall: Wall, z: f64) -> f64 {
        match wall {
            Wall::Facial => polyline::value(&self.facial, z),
            Wall::Oral => polyline::value(&self.oral, z),
        }
    }

    /// Knots of an outer face as (z, y).
    #[must_use]
    pub fn face_knots(&self, wall: Wall) -> &[P2] {
        match wall {
            Wall::Facial => &self.facial,
            Wall::Oral => &self.oral,
        }
    }

    /// Level of the crest at x on one wall, where its outer face meets the crest's surface;
    /// `Bone::Now` and `Bone::WallsWhole` are the same here.
    #[must_use]
    pub fn crest(&self, bone: Bone, wall: Wall, x: f64) -> f64 {
        let line = polyline::value(self.crest_knots(bone), x);
        let drop = if wall == Wall::Oral { self.drop } else { 0.0 };
        let mut level = line + drop;
        if self.drop == 0.0 {
            return level;
        }
        // The surface leans little and the face stands steep, so each round is several times closer.
        for _ in 0..CREST_ROUNDS {
            let met = line + self.drop * polyline::value(&self.share, self.face(wall, level));
            if (met - level).abs() < 1e-9 {
                break;
            }
            level = met;
        }
        level
    }

    fn crest_knots(&self, bone: Bone) -> &[P2] {
        if bone == Bone::Unharmed { &self.unharmed } else { &self.crest }
    }

    /// Where bone lies on the ray between the parameters `from` and `to`.
    #[must_use]
    pub fn bone(&self, bone: Bone, ray: &Ray, from: f64, to: f64) -> Intervals {
        let mut met = self.ridge(bone, ray, from, to);
        let Some((first, last)) = met.as_slice().first().zip(met.last()) else {
            return met;
        };
        let (first, last) = (first.from, last.to);
        let (a, b) = (ray.at(first).x, ray.at(last).x);
        let near = |reach: &Interval| a.min(b) <= reach.to && reach.from <= a.max(b);
        let mut cut = |holes: Intervals| {
            for hole in holes.as_slice() {
                met.cut(hole.from, hole.to);
            }
        };
        for (body, reach) in self.socket.as_slice().iter().zip(&self.socket.reach) {
            if near(reach) {
                cut(body.ray(ray));
            }
        }
        for (beside, reach) in self.beside.iter().zip(&self.reach) {
            match beside {
                _ if !reach.as_ref().is_some_and(near) => {}
                Beside::Root(root) => cut(root.ray(ray)),
                Beside::Implant(implant) => cut(implant.ray(ray)),
                Beside::Absent => {}
            }
        }
        for hollow in &self.hollows {
            if let Some((from, to)) = hollow.ray(ray) {
                met.cut(from, to);
            }
        }
        if bone == Bone::Now {
            for cut in &self.cuts {
                for hole in cut.ray(ray, first, last).as_slice() {
                    met.cut(hole.from, hole.to);
                }
            }
        }
        met
    }

    /// Where the ridge lies on the ray, as if nothing stood in it or had been lost from its walls.
    fn ridge(&self, bone: Bone, ray: &Ray, from: f64, to: f64) -> Intervals {
        let (o, d) = (ray.origin, ray.direction);
        let mut met = Intervals::empty();
        polyline::along(&self.facial, (o.z, d.z), (from, to), |t0, t1, y, slope| {
            if let Some((a, b)) = at_most_nothing(o.y - y, d.y - slope, t0, t1) {
                met.append(a, b);
            }
        });
        let mut kept = Intervals::empty();
        for part in met.as_slice() {
            polyline::along(&self.oral, (o.z, d.z), (part.from, part.to), |t0, t1, y, slope| {
                if let Some((a, b)) = at_most_nothing(y - o.y, slope - d.y, t0, t1) {
                    kept.append(a, b);
                }
            });
        }
        met = Intervals::empty();
        for part in kept.as_slice() {
            self.under_crest(bone, ray, (part.from, part.to), &mut met);
        }
        if let Some(floor) = self.floor {
            let (start, rate) = (o.z - floor.z - floor.rise * o.x, d.z - floor.rise * d.x);
            let coronal = at_most_nothing(start, rate, from, to);
            let (a, b) = coronal.unwrap_or((0.0, 0.0));
            met = met.intersection(&Intervals::one(a, b));
        }
        met
    }

    fn under_crest(&self, bone: Bone, ray: &Ray, span: (f64, f64), met: &mut Intervals) {
        let (o, d, drop) = (ray.origin, ray.direction, self.drop);
        polyline::along(self.crest_knots(bone), (o.x, d.x), span, |t0, t1, z, slope| {
            let mut keep = |t0, t1, w, w_slope| {
                let start = z + drop * w - o.z;
                let rate = slope + drop * w_slope - d.z;
                if let Some((a, b)) = at_most_nothing(start, rate, t0, t1) {
                    met.append(a, b);
                }
            };
            if drop == 0.0 {
                keep(t0, t1, 0.0, 0.0);
            } else {
                polyline::along(&self.share, (o.y, d.y), (t0, t1), keep);
            }
        });
    }

    /// Whether a point lies in bone as the site is now (on a surface, either answer).
    #[must_use]
    pub fn is_bone(&self, point: P3) -> bool {
        let P3 { x, y, z } = point;
        if y > polyline::value(&self.facial, z) || y < polyline::value(&self.oral, z) {
            return false;
        }
        let drop = if self.drop == 0.0 { 0.0 } else { self.drop * polyline::value(&self.share, y) };
        if z < polyline::value(&self.crest, x) + drop {
            return false;
        }
        if self.floor.is_some_and(|floor| z > floor.z + floor.rise * x) {
            return false;
        }
        let beside = |side: usize| {
            self.reach[side].is_some_and(|reach| reach.from <= x && x <= reach.to)
                && match &self.beside[side] {
                    Beside::Root(root) => root.contains(point),
                    Beside::Implant(cone) => cone.contains(point),
                    Beside::Absent => false,
                }
        };
        !self.socket.as_slice().iter().any(|body| body.contains(point))
            && !beside(0)
            && !beside(1)
            && !self.hollows.iter().any(|hollow| hollow.contains(point))
            && !self.cuts.iter().any(|cut| cut.contains(point))
    }

    /// Whether a point lies coronal of the floor by more than `by`, or there is none.
    pub(super) fn is_above_floor(&self, point: P3, by: f64) -> bool {
        self.floor.is_none_or(|floor| point.z < floor.z + floor.rise * point.x - by)
    }

    /// Signed distance of a body from the floor along the floor's normal, mm; negative beyond it.
    #[must_use]
    pub fn to_floor(&self, body: &Cone) -> Option<f64> {
        let floor = self.floor?;
        let normal = V3::new(floor.rise, 0.0, -1.0).unit()?;
        let at = P3::new(0.0, 0.0, floor.z) - P3::new(0.0, 0.0, 0.0);
        Some(body.least_along(normal) - at.dot(normal))
    }
}

/// w over y between the profiles at z = 0.
fn share(facial: f64, oral: f64) -> [P2; 2] {
    let facial = facial.max(oral + 1e-6);
    [P2::new(oral, 1.0), P2::new(facial, 0.0)]
}

fn reach(beside: &Beside) -> Option<Interval> {
    match beside {
        Beside::Root(root) => Some(reach_of(root, V3::DISTAL)),
        Beside::Implant(cone) => {
            Some(Interval { from: cone.support(-V3::DISTAL).x, to: cone.support(V3::DISTAL).x })
        }
        Beside::Absent => None,
    }
}

/// How far a root or trunk reaches along an axis of the site, from where to where.
pub(super) fn reach_of(body: &Stack, axis: V3) -> Interval {
    let (a, b) = (body.frusta(), body.cap());
    let along = |at: P3| (at - P3::new(0.0, 0.0, 0.0)).dot(axis);
    let from = along(a.support(-axis)).min(along(b.support(-axis)));
    let to = along(a.support(axis)).max(along(b.support(axis)));
    Interval { from, to }
}

/// A tube as a body.
#[must_use]
pub fn capsule(tube: &Tube) -> Capsule {
    Capsule { ends: [tube.from, tube.to], radius: tube.radius.get().max(0.0) }
}

fn hollows(site: &Site, root: Option<&Stack>) -> Vec<Capsule> {
    let vital = &site.vital;
    let tubes = [&vital.canal, &vital.loop_, &vital.nasopalatine];
    let mut hollows: Vec<Capsule> = tubes.into_iter().flatten().map(capsule).collect();
    let lesion = match site.lesion {
        Lesion::None => None,
        Lesion::Chronic { diameter }
        | Lesion::Abscess { diameter }
        | Lesion::Spreading { diameter } => Some(diameter),
    };
    if let (Some(diameter), Some(root)) = (lesion, root) {
        hollows.push(Capsule::ball(root.apex(), 0.5 * diameter.get()));
    }
    hollows
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind, Floor, FloorKind};
    use crate::geometry::Outline;
    use crate::rules::trial::Trial;
    use crate::units::{Deg, Mm};

    fn plain() -> Site {
        Trial::plain().case.site
    }

    fn facially(x: f64, z: f64) -> Ray {
        Ray { origin: P3::new(x, 0.0, z), direction: V3::FACIAL }
    }

    #[test]
    fn across_the_plain_socket_lie_its_two_plates() {
        let solid = Solid::of(&plain());
        // At z = 0 the plain root is 3.0 mm and the ridge 4.2 mm from the middle, either way.
        let met = solid.bone(Bone::Now, &facially(0.0, 1e-9), -40.0, 40.0);
        let ends: Vec<_> = met.as_slice().iter().map(|p| (p.from, p.to)).collect();
        let expected = [(-4.2, -3.0), (3.0, 4.2)];
        for (found, asked) in ends.iter().zip(expected) {
            assert!((found.0 - asked.0).abs() < 1e-6 && (found.1 - asked.1).abs() < 1e-6);
        }
        assert_eq!(ends.len(), 2);
    }

    #[test]
    fn a_defect_takes_its_wall_away_and_no_other() {
        let mut site = plain();
        site.defects.push(Defect {
            wall: Wall::Facial,
            kind: DefectKind::Fenestration,
            outline: Outline::new(vec![[-20, 20], [20, 20], [20, 60], [-20, 60]]).unwrap(),
        });
        let solid = Solid::of(&site);
        let plates = |bone, z| solid.bone(bone, &facially(0.0, z), -40.0, 40.0).as_slice().len();
        assert_eq!((plates(Bone::Now, 4.0), plates(Bone::WallsWhole, 4.0)), (1, 2));
        assert_eq!((plates(Bone::Now, 1.0), plates(Bone::Now, 7.0)), (2, 2));
    }

    #[test]
    fn a_floor_ends_bone_and_a_lesion_hollows_it() {
        let mut site = plain();
        let along = Ray { origin: P3::new(0.0, 0.0, 0.0), direction: V3::APICAL };
        let beyond = |site: &Site| Solid::of(site).bone(Bone::Now, &along, 0.0, 60.0);
        let whole = beyond(&site).as_slice()[0];
        assert!((whole.from - 11.0).abs() < 1e-9, "{whole:?}");
        site.vital.floor = Some(Floor { kind: FloorKind::Nose, z: Mm::new(18.0), rise: 0.0 });
        site.lesion = Lesion::Chronic { diameter: Mm::new(4.0) };
        let less = beyond(&site).as_slice()[0];
        assert!((less.from - 13.0).abs() < 1e-9 && (less.to - 18.0).abs() < 1e-9, "{less:?}");
    }

    /// Bone at a point by the definition alone.
    fn by_definition(site: &Site, p: P3) -> bool {
        let line = |knots: &[P2], at| polyline::value(knots, at);
        let (f0, o0) = (line(&site.ridge.facial.knots, 0.0), line(&site.ridge.oral.knots, 0.0));
        let w = ((f0 - p.y) / (f0 - o0)).clamp(0.0, 1.0);
        let top = line(&site.ridge.crest.knots, p.x) + site.ridge.crest.oral_offset.get() * w;
        let beside = |side: &Beside| match side {
            Beside::Root(root) => root.contains(p),
            Beside::Implant(cone) => cone.contains(p),
            Beside::Absent => false,
        };
        let solid = Solid::of(site);
        p.y <= line(&site.ridge.facial.knots, p.z)
            && p.y >= line(&site.ridge.oral.knots, p.z)
            && p.z >= top
            && !solid.socket.as_slice().iter().any(|body| body.contains(p))
            && !solid.beside.iter().any(beside)
            && !solid.hollows.iter().any(|hollow| hollow.contains(p))
            && !solid.cuts.iter().any(|cut| cut.contains(p))
    }

    #[test]
    fn rays_agree_with_the_definition_point_by_point() {
        let mut site = plain();
        site.ridge.crest.oral_offset = Mm::new(1.3);
        site.socket.only_mut().unwrap().tilt = Deg::new(9.0);
        site.lesion = Lesion::Chronic { diameter: Mm::new(3.0) };
        for (wall, outline) in [
            (Wall::Facial, vec![[-20, 0], [20, 0], [0, 80]]),
            (Wall::Oral, vec![[-20, -150], [20, -150], [20, -110], [-20, -120]]),
        ] {
            let outline = Outline::new(outline).unwrap();
            site.defects.push(Defect { wall, kind: DefectKind::DehiscenceV, outline });
        }
        let solid = Solid::of(&site);
        let (mut in_bone, mut wrong) = (0, 0);
        for i in 0..200 {
            let turn = f64::from(i);
            let origin =
                P3::new(3.0 * libm::sin(turn), 2.0 * libm::sin(1.9 * turn), turn * 0.08 - 2.0);
            let direction =
                V3::new(libm::cos(turn), libm::sin(2.7 * turn), 0.8 * libm::sin(0.6 * turn));
            let Some(direction) = direction.unit() else { continue };
            let ray = Ray { origin, direction };
            let met = solid.bone(Bone::Now, &ray, -12.0, 12.0);
            for j in 0..120 {
                let t = f64::from(j) * 0.2 - 11.9;
                let near_an_end = met
                    .as_slice()
                    .iter()
                    .any(|p| (p.from - t).abs() < 1e-6 || (p.to - t).abs() < 1e-6);
                in_bone += u32::from(met.contains(t));
                let known = by_definition(&site, ray.at(t));
                if !near_an_end && (met.contains(t) != known || solid.is_bone(ray.at(t)) != known) {
                    wrong += 1;
                }
            }
        }
        assert!(in_bone > 2000, "{in_bone}");
        assert_eq!(wrong, 0);
    }
}
