//! What a defect takes out of a wall, as a solid.
//!
//! The defect's outline lies on the map. The map is the wall unrolled, and the wall is straight
//! between the knots of its profile, so the outline's shadow along y is again a polygon once each
//! edge is given a corner where it passes a knot: the solid is exact.

use super::mesh::Mesh;
use super::polygon::between;
use super::ridge::y_at;
use crate::anatomy::{Defect, Profile, RootBody, Site, Wall};
use crate::geometry::{P2, P3, direction};

/// How far beyond y = 0 the solid reaches on its wall's side: past every ridge.
const BEYOND: f64 = 40.0;

/// How far coronally a cut that is open to the crest reaches: past every crest.
const OPEN: f64 = -30.0;

/// One outer wall unrolled: levels of z against length along the profile.
pub(super) struct Unrolled {
    /// (t, z), rising in z. t rises with z on the facial side and falls on the oral side.
    knots: Vec<P2>,
    sign: f64,
    /// t of the crest.
    crest: f64,
}

impl Unrolled {
    /// The wall of a site; `reference` is t at `level`, the z from which it runs apically.
    fn of(profile: &Profile, level: f64, reference: f64, sign: f64) -> Self {
        let far = 200.0;
        let mut levels: Vec<f64> = profile.knots.iter().map(|knot| knot.x).collect();
        levels.extend([level, level - far, level + far]);
        levels.sort_by(f64::total_cmp);
        levels.dedup_by(|a, b| *a - *b < 1e-9);
        let points: Vec<P2> = levels.iter().map(|&z| P2::new(z, y_at(profile, z))).collect();
        let mut length = 0.0;
        let mut at_level = 0.0;
        let mut knots = Vec::with_capacity(points.len());
        let mut before = points[0];
        for point in points {
            let (dz, dy) = (point.x - before.x, point.y - before.y);
            length += libm::sqrt(dz * dz + dy * dy);
            if (point.x - level).abs() < 1e-9 {
                at_level = length;
            }
            knots.push(P2::new(length, point.x));
            before = point;
        }
        for knot in &mut knots {
            knot.x = reference + sign * (knot.x - at_level);
        }
        Self { knots, sign, crest: reference }
    }

    /// The wall on which a defect lies.
    pub(super) fn wall(site: &Site, wall: Wall) -> Self {
        match wall {
            Wall::Facial => Self::of(&site.ridge.facial, 0.0, 0.0, 1.0),
            Wall::Oral => {
                let drop = site.ridge.crest.oral_offset.get();
                let (facial, oral) = (y_at(&site.ridge.facial, 0.0), y_at(&site.ridge.oral, drop));
                let across = libm::sqrt((facial - oral) * (facial - oral) + drop * drop);
                Self::of(&site.ridge.oral, drop, -across, -1.0)
            }
        }
    }

    /// z at a length along the map.
    pub(super) fn z(&self, t: f64) -> f64 {
        let rising = |knot: &P2| self.sign * knot.x;
        for pair in self.knots.windows(2) {
            if self.sign * t <= rising(&pair[1]) {
                let part = (t - pair[0].x) / (pair[1].x - pair[0].x);
                return pair[0].y + (pair[1].y - pair[0].y) * part;
            }
        }
        t
    }

    /// The stretches of t between `from` and `to` on which the wall is straight, apically.
    pub(super) fn pieces(&self, from: f64, to: f64) -> Vec<[f64; 2]> {
        let mut ends: Vec<f64> =
            self.knots.iter().map(|knot| knot.x).filter(|t| from < *t && *t < to).collect();
        ends.extend([from, to]);
        ends.sort_by(f64::total_cmp);
        ends.windows(2).map(|pair| [pair[0], pair[1]]).filter(|p| p[1] - p[0] > 1e-9).collect()
    }

    /// The outline's shadow along y, as (x, z). Only its part apical of the crest counts; edges get
    /// a corner where they pass a knot, and stretches that lie on the crest are opened coronally.
    pub(super) fn shadow(&self, outline: &[P2]) -> Vec<P2> {
        let depth = |t: f64| self.sign * (t - self.crest);
        let mut walk: Vec<P2> = Vec::new();
        for (i, &from) in outline.iter().enumerate() {
            let to = outline[(i + 1) % outline.len()];
            let mut parts: Vec<f64> = self
                .knots
                .iter()
                .map(|knot| (knot.x - from.y) / (to.y - from.y))
                .filter(|part| *part > 1e-9 && *part < 1.0 - 1e-9)
                .collect();
            parts.sort_by(f64::total_cmp);
            walk.push(from);
            walk.extend(parts.into_iter().map(|part| {
                P2::new(from.x + (to.x - from.x) * part, from.y + (to.y - from.y) * part)
            }));
        }
        // The crest is a knot, so no edge of the walk passes it.
        walk.retain(|corner| depth(corner.y) > -1e-9);
        let mut shadow = Vec::new();
        for (i, &from) in walk.iter().enumerate() {
            let to = walk[(i + 1) % walk.len()];
            shadow.push(P2::new(from.x, self.z(from.y)));
            if depth(from.y) < 1e-9 && depth(to.y) < 1e-9 && (from.x - to.x).abs() > 1e-9 {
                shadow.push(P2::new(from.x, OPEN));
                shadow.push(P2::new(to.x, OPEN));
            }
        }
        shadow
    }
}

/// The solid that a defect takes out of the ridge, less the socket: everything under its outline,
/// along y, from the plane through the root's axis (parallel to x; of several roots the mean of those
/// against the wall) out past the wall. An outline that
/// reaches the crest takes everything coronal of that stretch as well. `None` when all of the outline
/// lies across the crest.
#[must_use]
pub fn cut(site: &Site, defect: &Defect) -> Option<Mesh> {
    let wall = Unrolled::wall(site, defect.wall);
    let mut shadow = wall.shadow(&defect.outline.points());
    if shadow.len() < 3 {
        return None;
    }
    if twice_area(&shadow) < 0.0 {
        shadow.reverse();
    }
    let inner = |p: P2| P3::new(p.x, inner_y(site, defect.wall, p.y), p.y);
    Some(match defect.wall {
        Wall::Facial => between(&shadow, inner, |p| P3::new(p.x, BEYOND, p.y)),
        Wall::Oral => between(&shadow, |p| P3::new(p.x, -BEYOND, p.y), inner),
    })
}

fn twice_area(points: &[P2]) -> f64 {
    (0..points.len())
        .map(|i| {
            let (p, q) = (points[i], points[(i + 1) % points.len()]);
            p.x * q.y - q.x * p.y
        })
        .sum()
}

/// y of the plane parallel to x through the root's axis; of several roots through the middle of the
/// axes of those against the wall.
fn inner_y(site: &Site, wall: Wall, z: f64) -> f64 {
    let against = &site.socket.roots()[site.socket.against(wall)];
    let at = |(from, root): &(f64, RootBody)| {
        let axis = direction(root.tilt, root.tip);
        root.y.get() + axis.y / axis.z * (z - from)
    };
    let sum: f64 = against.iter().map(at).sum();
    #[allow(clippy::cast_precision_loss)] // three at most
    let count = against.len() as f64;
    sum / count
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::DefectKind;
    use crate::geometry::Outline;
    use crate::rules::trial::Trial;

    #[test]
    fn a_length_along_the_facial_wall_gives_the_level_it_was_measured_to() {
        let site = Trial::plain().case.site;
        let wall = Unrolled::wall(&site, Wall::Facial);
        // The plain wall runs straight from (0, 4.2) to (5.5, 3.5).
        let length = libm::sqrt(5.5 * 5.5 + 0.7 * 0.7);
        assert!((wall.z(length) - 5.5).abs() < 1e-12);
        assert!((wall.z(length / 2.0) - 2.75).abs() < 1e-12);
        assert!((wall.z(-1.5) + 1.5).abs() < 1e-12);
    }

    #[test]
    fn on_the_oral_wall_lengths_begin_across_the_crest() {
        let site = Trial::plain().case.site;
        let wall = Unrolled::wall(&site, Wall::Oral);
        assert!(wall.z(-8.4).abs() < 1e-12);
        let length = libm::sqrt(5.5 * 5.5 + 2.0 * 2.0);
        assert!((wall.z(-8.4 - length) - 5.5).abs() < 1e-12);
    }

    #[test]
    fn a_cut_is_closed_and_as_large_as_its_shadow_times_its_depth() {
        let mut site = Trial::plain().case.site;
        for (wall, outline) in [
            (Wall::Facial, vec![[-20, 0], [20, 0], [10, 80], [-10, 90]]),
            (Wall::Oral, vec![[-20, -84], [20, -84], [10, -160], [-10, -170]]),
        ] {
            let outline = Outline::new(outline).unwrap();
            let defect = Defect { wall, kind: DefectKind::DehiscenceU, outline };
            site.defects = vec![defect.clone()];
            let mesh = cut(&site, &defect).unwrap();
            let shadow = Unrolled::wall(&site, wall).shadow(&defect.outline.points());
            assert_eq!(mesh.closed(), Ok(()));
            // The plain root stands upright at y = 0.
            let expected = twice_area(&shadow).abs() / 2.0 * BEYOND;
            assert!((mesh.volume() - expected).abs() < 1e-9, "{} {expected}", mesh.volume());
        }
    }
}
