//! The bone of the ridge as a polyhedron.
//!
//! Everything in the ridge is piecewise linear, so its mesh is exact: between two neighbouring
//! levels of x nothing changes but linearly, and each such slice is a ring of flat strips.

use super::mesh::{Mesh, Welder};
use super::polygon::triangulate;
use crate::anatomy::{Profile, Ridge};
use crate::geometry::{P2, P3};

/// The stretch of x that the mesh covers, unless the crest is drawn farther: the ridge itself has no
/// ends.
pub const WINDOW: [f64; 2] = [-12.0, 12.0];

/// Which crest the bone begins at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CrestAt {
    /// As it is now.
    Now,
    /// As it was before crestal and interproximal loss.
    Unharmed,
}

/// y of a profile at level z.
pub(super) fn y_at(profile: &Profile, z: f64) -> f64 {
    along(&profile.knots, z)
}

/// The value of a polyline at `at`; beyond its ends it goes on level.
pub(super) fn along(knots: &[P2], at: f64) -> f64 {
    let (Some(first), Some(last)) = (knots.first(), knots.last()) else { return 0.0 };
    if at <= first.x {
        return first.y;
    }
    for pair in knots.windows(2) {
        let (a, b) = (pair[0], pair[1]);
        if at <= b.x {
            return a.y + (b.y - a.y) * ((at - a.x) / (b.x - a.x));
        }
    }
    last.y
}

/// The crest's surface: z = line(x) + offset * share(y), the share rising from 0 at the facial
/// profile's y at z = 0 to 1 at the oral profile's.
struct Roof<'a> {
    line: &'a [P2],
    offset: f64,
    facial: f64,
    oral: f64,
}

impl<'a> Roof<'a> {
    fn of(ridge: &'a Ridge, crest: CrestAt) -> Self {
        let line = match crest {
            CrestAt::Now => &ridge.crest.knots,
            CrestAt::Unharmed => &ridge.crest.unharmed,
        };
        Self {
            line,
            offset: ridge.crest.oral_offset.get(),
            facial: y_at(&ridge.facial, 0.0),
            oral: y_at(&ridge.oral, 0.0),
        }
    }

    fn drop_at(&self, y: f64) -> f64 {
        let share = (self.facial - y) / (self.facial - self.oral);
        self.offset * share.clamp(0.0, 1.0)
    }

    /// Where the profile passes through the roof whose line stands at `level`: (z, y). `knots` is
    /// [`Self::bent`], so that z less the drop changes linearly between knots.
    fn meets(&self, knots: &[P2], level: f64) -> P2 {
        let height = |knot: P2| knot.x - self.drop_at(knot.y);
        for pair in knots.windows(2) {
            let (low, high) = (height(pair[0]), height(pair[1]));
            if low <= level && level <= high && low < high {
                let part = (level - low) / (high - low);
                return P2::new(
                    pair[0].x + (pair[1].x - pair[0].x) * part,
                    pair[0].y + (pair[1].y - pair[0].y) * part,
                );
            }
        }
        knots[0]
    }

    /// The profile's knots between `top` and `bottom` with those added at which it passes the
    /// bends of the roof.
    fn bent(&self, profile: &Profile, top: f64, bottom: f64) -> Vec<P2> {
        let mut levels: Vec<f64> = profile.knots.iter().map(|knot| knot.x).collect();
        for pair in profile.knots.windows(2) {
            for y in [self.facial, self.oral] {
                let part = (y - pair[0].y) / (pair[1].y - pair[0].y);
                if part > 0.0 && part < 1.0 {
                    levels.push(pair[0].x + (pair[1].x - pair[0].x) * part);
                }
            }
        }
        levels.retain(|level| top < *level && *level < bottom);
        levels.extend([top, 0.0, bottom]);
        levels.sort_by(f64::total_cmp);
        levels.dedup_by(|a, b| *a - *b < 1e-9);
        levels.into_iter().map(|z| P2::new(z, y_at(profile, z))).collect()
    }
}

/// The bone between the profiles from the crest down to level `bottom`, without socket or defects.
///
/// Exact, watertight. `bottom` lies apical of every crest.
#[must_use]
pub fn ridge(ridge: &Ridge, crest: CrestAt, bottom: f64) -> Mesh {
    let roof = Roof::of(ridge, crest);
    let top = roof.line.iter().map(|knot| knot.y).fold(0.0, f64::min) - 1.0 + roof.offset.min(0.0);
    let facial = roof.bent(&ridge.facial, top, bottom);
    let oral = roof.bent(&ridge.oral, top, bottom);
    let levels = levels(&roof, &facial, &oral);
    let mut faces = Welder::default();
    for pair in levels.windows(2) {
        let middle = section(&roof, &facial, &oral, f64::midpoint(pair[0], pair[1]));
        let near = place(&middle, &roof, &facial, &oral, pair[0]);
        let far = place(&middle, &roof, &facial, &oral, pair[1]);
        for i in 0..near.len() {
            let j = (i + 1) % near.len();
            faces.quad(near[i], near[j], far[j], far[i]);
        }
    }
    for (x, outward) in [(levels[0], true), (levels[levels.len() - 1], false)] {
        end(&mut faces, &roof, &facial, &oral, x, outward);
    }
    faces.finish()
}

/// A corner of a section: where a profile meets the roof, where the roof bends, or a knot.
#[derive(Clone, Copy)]
enum Corner {
    FacialTop,
    OralTop,
    Bend(f64),
    Knot(P2),
}

/// Every x at which a section gains or loses a corner.
fn levels(roof: &Roof, facial: &[P2], oral: &[P2]) -> Vec<f64> {
    let line = roof.line;
    let from = line.first().map_or(WINDOW[0], |knot| knot.x.min(WINDOW[0]));
    let to = line.last().map_or(WINDOW[1], |knot| knot.x.max(WINDOW[1]));
    let mut levels = vec![from, to];
    levels.extend(line.iter().map(|knot| knot.x));
    let heights: Vec<f64> =
        facial.iter().chain(oral).map(|knot| knot.x - roof.drop_at(knot.y)).collect();
    for pair in line.windows(2) {
        for height in &heights {
            let part = (height - pair[0].y) / (pair[1].y - pair[0].y);
            if part > 0.0 && part < 1.0 {
                levels.push(pair[0].x + (pair[1].x - pair[0].x) * part);
            }
        }
    }
    levels.sort_by(f64::total_cmp);
    levels.dedup_by(|a, b| *a - *b < 1e-7);
    levels
}

/// The corners of the section at x, from the facial top apically, round the bottom, up the oral
/// side and back along the roof: anticlockwise in (y, z).
fn section(roof: &Roof, facial: &[P2], oral: &[P2], x: f64) -> Vec<Corner> {
    let level = along(roof.line, x);
    let (on_facial, on_oral) = (roof.meets(facial, level), roof.meets(oral, level));
    let below = |knots: &[P2], top: P2| -> Vec<Corner> {
        knots.iter().filter(|knot| knot.x > top.x + 1e-9).copied().map(Corner::Knot).collect()
    };
    let mut corners = vec![Corner::FacialTop];
    corners.extend(below(facial, on_facial));
    corners.extend(below(oral, on_oral).into_iter().rev());
    corners.push(Corner::OralTop);
    for bend in [roof.oral, roof.facial] {
        if on_oral.y + 1e-9 < bend && bend < on_facial.y - 1e-9 {
            corners.push(Corner::Bend(bend));
        }
    }
    corners
}

fn place(corners: &[Corner], roof: &Roof, facial: &[P2], oral: &[P2], x: f64) -> Vec<P3> {
    let level = along(roof.line, x);
    corners
        .iter()
        .map(|corner| {
            let at = match *corner {
                Corner::FacialTop => roof.meets(facial, level),
                Corner::OralTop => roof.meets(oral, level),
                Corner::Bend(y) => P2::new(level + roof.drop_at(y), y),
                Corner::Knot(knot) => knot,
            };
            P3::new(x, at.y, at.x)
        })
        .collect()
}

fn end(faces: &mut Welder, roof: &Roof, facial: &[P2], oral: &[P2], x: f64, mesial: bool) {
    let corners = place(&section(roof, facial, oral, x), roof, facial, oral, x);
    let mut flat: Vec<P2> = corners.iter().map(|corner| P2::new(corner.y, corner.z)).collect();
    let same = |a: P2, b: P2| (a.x - b.x).abs() < 1e-6 && (a.y - b.y).abs() < 1e-6;
    flat.dedup_by(|a, b| same(*a, *b));
    if flat.len() > 1 && same(flat[0], flat[flat.len() - 1]) {
        flat.pop();
    }
    for [a, b, c] in triangulate(&flat) {
        let at = |i: usize| P3::new(x, flat[i].x, flat[i].y);
        // The walk is anticlockwise in (y, z), so it faces +x.
        if mesial {
            faces.triangle(at(c), at(b), at(a));
        } else {
            faces.triangle(at(a), at(b), at(c));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Crest;
    use crate::units::Mm;

    fn profile(knots: &[(f64, f64)]) -> Profile {
        Profile { knots: knots.iter().map(|&(z, y)| P2::new(z, y)).collect() }
    }

    fn site(offset: f64, crest: &[(f64, f64)]) -> Ridge {
        let knots: Vec<P2> = crest.iter().map(|&(x, z)| P2::new(x, z)).collect();
        Ridge {
            facial: profile(&[(-8.0, 3.0), (-1.0, 4.4), (0.5, 4.2), (9.0, 2.6), (30.0, 6.0)]),
            oral: profile(&[(-8.0, -3.5), (0.0, -4.2), (5.5, -6.2), (30.0, -12.0)]),
            crest: Crest { unharmed: knots.clone(), knots, oral_offset: Mm::new(offset) },
        }
    }

    /// The volume by summing columns over a fine grid in (x, y).
    fn by_columns(ridge: &Ridge, bottom: f64) -> f64 {
        let roof = Roof::of(ridge, CrestAt::Now);
        let (steps_x, step_z) = (480, 0.01);
        let mut sum = 0.0;
        for i in 0..steps_x {
            let x = -12.0 + (f64::from(i) + 0.5) * 24.0 / f64::from(steps_x);
            let level = along(roof.line, x);
            let mut z = -12.0 + step_z / 2.0;
            while z < bottom {
                // At one level bone reaches from the oral to the facial face where the roof is above.
                let (mut from, mut to) = (y_at(&ridge.oral, z), y_at(&ridge.facial, z));
                // The roof is level outside the bends and slopes between them.
                if roof.offset != 0.0 {
                    let share = ((z - level) / roof.offset).clamp(-1.0, 2.0);
                    let edge = roof.facial - share * (roof.facial - roof.oral);
                    let bare = |drop: f64| level + drop > z;
                    if bare(0.0) && bare(roof.offset) {
                        to = from;
                    } else if roof.offset > 0.0 && bare(roof.offset) {
                        from = from.max(edge);
                    } else if roof.offset < 0.0 && bare(0.0) {
                        to = to.min(edge);
                    }
                } else if level > z {
                    to = from;
                }
                sum += (to - from).max(0.0) * step_z * 24.0 / f64::from(steps_x);
                z += step_z;
            }
        }
        sum
    }

    const PEAKS: &[(f64, f64)] =
        &[(-12.0, 0.0), (-4.3, -2.5), (0.0, 0.0), (3.9, -2.1), (12.0, 0.3)];

    #[test]
    fn the_ridge_is_closed_whatever_the_crest_does() {
        for offset in [-1.7, 0.0, 0.4, 1.3] {
            for crest in
                [PEAKS, &[(-12.0, 1.0), (0.0, 4.0), (12.0, 0.5)], &[(-9.0, -0.3), (9.0, -0.3)]]
            {
                let mesh = ridge(&site(offset, crest), CrestAt::Now, 30.0);
                assert_eq!(mesh.closed(), Ok(()), "offset {offset}, crest {crest:?}");
            }
        }
    }

    #[test]
    fn the_ridge_has_the_volume_of_its_columns() {
        for offset in [-1.7, 0.0, 1.3] {
            let ridge_ = site(offset, PEAKS);
            let (mesh, columns) =
                (ridge(&ridge_, CrestAt::Now, 20.0).volume(), by_columns(&ridge_, 20.0));
            assert!((mesh / columns - 1.0).abs() < 5e-4, "{offset}: {mesh} and {columns}");
        }
    }
}
