//! Volumes: what is empty, what is gone, what is to be laid.
//!
//! The level crest is the plane z = 0, the reference crest. A fill level stands above it (positive)
//! or below it (negative), so the space counts that lies apical of z = -fill.

use super::ground::Ground;
use super::site::{FAR, plate_at};
use super::{Measurements, mm3};
use crate::anatomy::{Bone, Solid, Wall};
use crate::geometry::quadrature::{GAUSS_4, GAUSS_8, gauss};
use crate::geometry::{Cone, Interval, Intervals, P2, Ray, Stack, V3, order, polygon};
use crate::units::Mm3;
use core::f64::consts::PI;

/// From the edge of the facial defect, on the map, to where the contour layer has fallen to nothing,
/// mm (ours).
pub const CONTOUR_FALL: f64 = 2.0;

impl Measurements<'_> {
    /// Gap volume: socket space apical of the level crest, less the implant. `None` without an implant
    /// in place. Cubic millimetres.
    #[must_use]
    pub fn gap_volume(&self) -> Option<Mm3> {
        *self.kept.gap_volume.get_or_init(|| {
            let implant = self.seated()?;
            let taken = taken_by(self.ground(), implant, 0.0);
            mm3((self.socket_volume()?.get() - taken).max(0.0))
        })
    }

    /// Volume of the contour layer as planned: on the facial profile, its full thickness over the
    /// facial defects and falling evenly to nothing 2 mm beyond their edge, never coronal of the
    /// crest. On an intact wall it lies over the socket's facial outline from the crest to half the
    /// root's length (ours). Area on the map times thickness: that the layer is a little longer
    /// outside a bend of the profile is left out. `None` where no layer was asked for. Cubic
    /// millimetres.
    #[must_use]
    pub fn contour_volume(&self) -> Option<Mm3> {
        let thickness = self.plan.graft_laid()?.contour?.get();
        mm3(thickness * contour_area(&contour_base(self)))
    }

    /// Everything to be filled: gap (socket, without an implant) to the fill level, walls, contour
    /// layer. Before a graft is chosen: to the level crest and without a contour layer. `None` while
    /// the tooth stands. Cubic millimetres.
    #[must_use]
    pub fn volume_to_graft(&self) -> Option<Mm3> {
        *self.kept.to_graft.get_or_init(|| {
            self.plan.extraction.as_ref()?;
            let level = self.plan.graft_laid().map_or(0.0, |graft| -graft.fill.get());
            let space = if level == 0.0 {
                self.gap_volume().or_else(|| self.socket_volume())?.get()
            } else {
                let ground = self.ground();
                let taken = self.seated().map_or(0.0, |implant| taken_by(ground, implant, level));
                (socket_beyond(&ground.solid, level) - taken).max(0.0)
            };
            let contour = self.contour_volume().map_or(0.0, Mm3::get);
            mm3(space + self.wall_volume()?.get() + contour)
        })
    }
}

/// Volume of the socket apical of a level z, mm3: of several roots the trunk's and what each root has
/// apical of the furcation.
pub(super) fn socket_beyond(solid: &Solid, level: f64) -> f64 {
    solid.socket.apart().map(|(body, from)| root_beyond(body, level.max(from))).sum()
}

/// A root's volume apical of z = `level`: exact slices across its axis (a segment of an ellipse where
/// the plane cuts the slice), integrated along it; the part that no slice is cut in is exact.
fn root_beyond(root: &Stack, level: f64) -> f64 {
    let frame = root.frame;
    let share = |w: f64| root.share(w);
    // z on a slice is `middle + (p cos + q sin) r` with r from 0 to 1.
    let lean = libm::hypot(root.across * frame.across.z, root.facial * frame.facial.z);
    if frame.along.z.abs() < 1e-9 {
        return root.volume_beyond(f64::MIN);
    }
    let crossing = (level - frame.origin.z) / frame.along.z;
    if lean < 1e-12 {
        return root.volume_beyond(crossing);
    }
    let half = lean / frame.along.z.abs();
    let (from, to) = (
        (crossing - half).clamp(root.first_level(), root.last_level()),
        (crossing + half).clamp(root.first_level(), root.last_level()),
    );
    let section = PI * root.across * root.facial;
    let mut slice = |w: f64| {
        let s = share(w);
        let height = ((crossing - w) * frame.along.z / (lean * s).max(1e-12)).clamp(-1.0, 1.0);
        section * s * s * (libm::acos(height) - height * libm::sqrt(1.0 - height * height)) / PI
    };
    let mut ends: Vec<f64> =
        root.knots().iter().map(|knot| knot.at).filter(|at| from < *at && *at < to).collect();
    ends.push(to);
    let mut sum = root.volume_beyond(to);
    let mut start = from;
    for end in ends {
        sum += gauss(&GAUSS_8, start, end, &mut slice);
        start = end;
    }
    sum
}

/// Volume of what an implant takes of the socket apical of z = `level`, mm3. The implant is a bundle
/// of straight lines from its platform to its apex, one for each place of [`Ground::section`]; each
/// lies in the socket over exact intervals of depth.
pub(super) fn taken_by(ground: &Ground, implant: &Cone, level: f64) -> f64 {
    let socket = &ground.solid.socket;
    let bodies = socket.apart().zip(socket.reaches());
    let sum: f64 = bodies
        .map(|((body, from), reach)| common(ground, body, reach, implant, level.max(from)))
        .sum();
    PI * sum / ground.section.len() as f64
}

/// Squared radius of the implant, integrated over the depths at which each of its lines lies in the
/// root apical of z = `level`, summed over the lines.
fn common(ground: &Ground, root: &Stack, reach: [Interval; 2], implant: &Cone, level: f64) -> f64 {
    let several = ground.solid.socket.furcation().is_some();
    let frame = implant.frame;
    let (slope, near) = (implant.slope(), implant.near);
    let inside = |vector: V3| root.scaled(root.frame.turned(vector));
    let origin = root.scaled(root.frame.local(frame.origin));
    let (along, facial, across) = (inside(frame.along), inside(frame.facial), inside(frame.across));
    let mut sum = 0.0;
    for (f, a) in ground.section {
        let side = facial * f + across * a;
        let rate = frame.along.z + slope * (frame.facial.z * f + frame.across.z * a);
        let start = frame.origin.z + near * (frame.facial.z * f + frame.across.z * a);
        let Some((from, to)) = below(start - level, rate, implant.length) else {
            continue;
        };
        // Of several roots most lines pass most by; that is sooner seen from the box they stand in.
        if several {
            let wide = frame.facial * f + frame.across * a;
            let end =
                |depth: f64| frame.origin + frame.along * depth + wide * (near + slope * depth);
            let (p, q) = (end(from), end(to));
            let past = |at: [f64; 2], reach: Interval| {
                at[0].max(at[1]) < reach.from || at[0].min(at[1]) > reach.to
            };
            if past([p.x, q.x], reach[0]) || past([p.y, q.y], reach[1]) {
                continue;
            }
        }
        for (enters, leaves) in root.parts(origin + side * near, along + side * slope) {
            let (a, b) = (enters.max(from), leaves.min(to));
            if a < b {
                let (p, q) = (implant.radius(a), implant.radius(b));
                sum += (b - a) * (p * p + p * q + q * q) / 3.0;
            }
        }
    }
    sum
}

/// The depths from 0 to `length` at which `start + rate * depth >= 0`.
fn below(start: f64, rate: f64, length: f64) -> Option<(f64, f64)> {
    let crossing = -start / rate;
    if rate > 1e-9 {
        Some((crossing.clamp(0.0, length), length))
    } else if rate < -1e-9 {
        Some((0.0, crossing.clamp(0.0, length)))
    } else {
        (start >= 0.0).then_some((0.0, length))
    }
}

/// Volume of bone that the wall defects removed, mm3: thickness of the whole wall along y over the
/// union of each wall's shadows.
pub(super) fn removed(solid: &Solid) -> f64 {
    [Wall::Facial, Wall::Oral].into_iter().map(|wall| removed_from(solid, wall)).sum()
}

/// The same of one wall.
pub(super) fn removed_from(solid: &Solid, wall: Wall) -> f64 {
    let shadows: Vec<&[P2]> =
        solid.cuts.iter().filter(|cut| cut.wall == wall).map(|cut| cut.shadow.as_slice()).collect();
    let mut columns: Vec<f64> = shadows.iter().flat_map(|s| s.iter().map(|p| p.x)).collect();
    for body in solid.socket.as_slice() {
        let middle = body.frame.origin.x;
        columns.extend([-1.0, -0.9, -0.7, 0.0, 0.7, 0.9, 1.0].map(|w| middle + w * body.across));
    }
    order::ascend_once(&mut columns);
    let Some(reach) = shadows
        .iter()
        .filter_map(|s| polygon::extent(s, |p| p.x))
        .reduce(|a, b| Interval { from: a.from.min(b.from), to: a.to.max(b.to) })
    else {
        return 0.0;
    };
    columns.retain(|x| reach.from <= *x && *x <= reach.to);
    let column = |x: f64| {
        let gone = shadows
            .iter()
            .map(|s| polygon::line_within(s, P2::new(x, 0.0), P2::new(0.0, 1.0)))
            .fold(Intervals::empty(), |all, one| all.union(&one));
        gone.as_slice().iter().map(|part| column_of(solid, wall, x, *part)).sum()
    };
    columns.windows(2).map(|pair| gauss(&GAUSS_4, pair[0], pair[1], column)).sum()
}

/// Thickness of the whole wall along y, integrated down one stretch of a column.
fn column_of(solid: &Solid, wall: Wall, x: f64, part: Interval) -> f64 {
    let top = solid.crest(Bone::WallsWhole, Wall::Facial, x);
    let oral_top = solid.crest(Bone::WallsWhole, Wall::Oral, x);
    let mut levels: Vec<f64> = solid.face_knots(wall).iter().map(|knot| knot.x).collect();
    for body in solid.socket.as_slice() {
        let along = body.frame.along.z;
        levels.extend(body.knots().iter().map(|knot| body.frame.origin.z + knot.at * along));
        levels.push(body.apex().z);
    }
    levels.extend([top, oral_top, part.from, part.to]);
    order::ascend_once(&mut levels);
    let from = part.from.max(top.min(oral_top));
    levels.retain(|z| from <= *z && *z <= part.to);
    levels
        .windows(2)
        .map(|pair| {
            gauss(&GAUSS_4, pair[0], pair[1], |z| plate_at(solid, Bone::WallsWhole, wall, x, z))
        })
        .sum()
}

/// The outlines that a contour layer covers at full thickness, apical of the crest.
fn contour_base(m: &Measurements<'_>) -> Vec<Vec<P2>> {
    let solid = &m.ground().solid;
    let apical = |outline: &[P2]| polygon::clipped(outline, |p| p.y);
    let mut base: Vec<Vec<P2>> = solid
        .cuts
        .iter()
        .filter(|cut| cut.wall == Wall::Facial)
        .map(|cut| apical(&cut.outline))
        .filter(|outline| outline.len() > 2)
        .collect();
    if base.is_empty() {
        base.push(solid.socket.facial_outline(&solid.map));
    }
    base
}

/// Area of the base, plus that of the margin round it weighted by its share of the full thickness,
/// apical of t = 0, mm2.
///
/// With A(d) the area within d of the base, the weighted area is the mean of A over d from 0 to the
/// width of the fall. A(d) of one convex base is exact, by Green's theorem round its edge; of several,
/// or one that bends inwards, it is summed over a grid.
fn contour_area(base: &[Vec<P2>]) -> f64 {
    match base {
        [] => 0.0,
        [one] if polygon::is_convex(one) => {
            gauss(&GAUSS_4, 0.0, CONTOUR_FALL, |d| area_within(one, d)) / CONTOUR_FALL
        }
        _ => area_by_grid(base),
    }
}

/// Area apical of t = 0 within `d` of a convex anticlockwise polygon.
fn area_within(base: &[P2], d: f64) -> f64 {
    let count = base.len();
    let normal = |i: usize| {
        let (a, b) = (base[i % count], base[(i + 1) % count]);
        let length = libm::hypot(b.x - a.x, b.y - a.y).max(1e-12);
        P2::new((b.y - a.y) / length, (a.x - b.x) / length)
    };
    // Area = - integral of max(t, 0) ds round the edge.
    let mut sum = 0.0;
    for i in 0..count {
        let (a, b, n) = (base[i], base[(i + 1) % count], normal(i));
        let (ta, tb) = (a.y + d * n.y, b.y + d * n.y);
        sum -= mean_above(ta, tb) * (b.x - a.x);
        let next = normal(i + 1);
        let turn = libm::atan2(n.x * next.y - n.y * next.x, n.x * next.x + n.y * next.y);
        let start = libm::atan2(n.y, n.x);
        if turn > 0.0 {
            sum -= gauss(&GAUSS_8, start, start + turn, |angle| {
                let sin = libm::sin(angle);
                -d * sin * (b.y + d * sin).max(0.0)
            });
        }
    }
    sum
}

/// Mean of max(t, 0) while t runs evenly from a to b.
fn mean_above(a: f64, b: f64) -> f64 {
    let (low, high) = (a.min(b), a.max(b));
    if low >= 0.0 {
        return f64::midpoint(a, b);
    }
    if high <= 0.0 {
        return 0.0;
    }
    0.5 * high * high / (high - low)
}

fn area_by_grid(base: &[Vec<P2>]) -> f64 {
    const STEP: f64 = 0.1;
    let all: Vec<P2> = base.iter().flatten().copied().collect();
    let (Some(s), Some(t)) = (polygon::extent(&all, |p| p.x), polygon::extent(&all, |p| p.y))
    else {
        return 0.0;
    };
    let (mut sum, mut at) = (0.0, P2::new(s.from - CONTOUR_FALL + 0.5 * STEP, 0.0));
    while at.x < s.to + CONTOUR_FALL {
        at.y = 0.5 * STEP;
        while at.y < t.to + CONTOUR_FALL {
            let near = base.iter().map(|one| polygon::signed_distance(one, at));
            let within = near.fold(f64::MIN, f64::max).min(0.0);
            sum += (1.0 + within / CONTOUR_FALL).max(0.0);
            at.y += STEP;
        }
        at.x += STEP;
    }
    sum * STEP * STEP
}

/// Thickness of the contour layer at a place of the map, mm; nothing where none was asked for.
pub(super) fn contour_at(m: &Measurements<'_>, at: P2) -> f64 {
    let thickness = m.plan.graft_laid().and_then(|graft| graft.contour).map_or(0.0, |t| t.get());
    if thickness <= 0.0 || at.y < 0.0 {
        return 0.0;
    }
    let base = contour_base(m);
    let near = base.iter().map(|one| polygon::signed_distance(one, at));
    let within = near.fold(f64::MIN, f64::max).min(0.0);
    thickness * (1.0 + within / CONTOUR_FALL).max(0.0)
}

/// Where a ray along y lies in the socket, for marching outward from an implant.
pub(super) fn socket_on(solid: &Solid, ray: &Ray) -> Intervals {
    debug_assert!(ray.direction.cross(V3::FACIAL).length() < 1e-9);
    let bodies = solid.socket.as_slice().iter();
    bodies
        .map(|body| body.ray(ray).intersection(&Intervals::one(-FAR, FAR)))
        .fold(Intervals::empty(), |all, one| all.union(&one))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind};
    use crate::geometry::{Outline, P3};
    use crate::plan::Decision;
    use crate::rules::trial::Trial;
    use crate::units::Deg;

    /// Common volume by a fine grid of rays along y.
    fn by_grid(trial: &Trial, level: f64) -> (f64, f64) {
        let plan = trial.plan();
        let m = Measurements::of(&trial.case, &plan);
        let (root, cone) = (m.ground().solid.socket.coronal().unwrap(), m.seated().unwrap());
        let step = 0.04;
        let (mut socket, mut taken) = (0.0, 0.0);
        for i in -100..100 {
            for j in 0..300 {
                let z = level + (f64::from(j) + 0.5) * step;
                let origin = P3::new((f64::from(i) + 0.5) * step, 0.0, z);
                let ray = Ray { origin, direction: V3::FACIAL };
                let met = root.ray(&ray);
                socket += met.length() * step * step;
                taken += met.intersection(&cone.ray(&ray)).length() * step * step;
            }
        }
        (socket, taken)
    }

    #[test]
    fn the_gap_is_the_socket_less_the_implant_over_a_sweep_of_placements() {
        let mut trial = Trial::plain();
        for (tilt, facial, depth, root_tilt, level) in [
            (0, 0, 0, 0.0, 0.0),
            (-8, -12, 10, 0.0, 0.0),
            (-25, -10, 20, 12.0, 0.0),
            (20, 5, -10, 18.0, -0.7),
            (-15, -20, 30, -9.0, 1.5),
        ] {
            trial.number(Decision::Tilt, tilt);
            trial.number(Decision::OffsetFacial, facial);
            trial.number(Decision::Depth, depth);
            trial.case.site.socket.only_mut().unwrap().tilt = Deg::new(root_tilt);
            let plan = trial.plan();
            let m = Measurements::of(&trial.case, &plan);
            let (socket, taken) = by_grid(&trial, level);
            let ours = (
                socket_beyond(&m.ground().solid, level),
                taken_by(m.ground(), m.seated().unwrap(), level),
            );
            assert!((ours.0 / socket - 1.0).abs() < 0.002, "{tilt} {ours:?} {socket} {taken}");
            assert!((ours.1 - taken).abs() < 0.003 * socket, "{tilt} {ours:?} {socket} {taken}");
        }
    }

    fn with_defect(outlines: &[(Wall, &[[i32; 2]])]) -> Trial {
        let mut trial = Trial::plain();
        for (wall, outline) in outlines {
            trial.case.site.defects.push(Defect {
                wall: *wall,
                kind: DefectKind::DehiscenceU,
                outline: Outline::new(outline.to_vec()).unwrap(),
            });
        }
        trial
    }

    #[test]
    fn removed_bone_agrees_with_the_difference_of_bone_with_and_without_walls() {
        for outlines in [
            &[(Wall::Facial, &[[-25, 0], [25, 0], [15, 60], [-15, 60]][..])][..],
            &[
                (Wall::Facial, &[[-35, -30], [35, -30], [35, 70], [-35, 80]][..]),
                (Wall::Oral, &[[-15, -150], [15, -150], [15, -110], [-15, -110]][..]),
            ],
            &[
                (Wall::Facial, &[[-20, 30], [20, 30], [0, 90]][..]),
                (Wall::Facial, &[[-10, 0], [10, 0], [10, 50], [-10, 50]][..]),
            ],
        ] {
            let trial = with_defect(outlines);
            let solid = Solid::of(&trial.case.site);
            let step = 0.04;
            let mut expected = 0.0;
            for i in -100..100 {
                for j in -80..260 {
                    let x = (f64::from(i) + 0.5) * step;
                    let origin = P3::new(x, 0.0, (f64::from(j) + 0.5) * step);
                    let ray = Ray { origin, direction: V3::FACIAL };
                    let whole = solid.bone(Bone::WallsWhole, &ray, -FAR, FAR).length();
                    let now = solid.bone(Bone::Now, &ray, -FAR, FAR).length();
                    expected += (whole - now) * step * step;
                }
            }
            let ours = removed(&solid);
            assert!((ours / expected - 1.0).abs() < 0.005, "{ours} {expected}");
        }
    }

    #[test]
    fn a_layer_over_a_square_follows_the_formula_for_thickened_squares() {
        // A 4 x 4 square far from the crest: mean over d in [0, 2] of 16 + 16 d + pi d^2.
        let square = [(-2.0, 10.0), (2.0, 10.0), (2.0, 14.0), (-2.0, 14.0)];
        let square = vec![square.map(|(s, t)| P2::new(s, t)).to_vec()];
        let expected = 16.0 + 16.0 + PI * 4.0 / 3.0;
        assert!((contour_area(&square) - expected).abs() < 1e-9);
        assert!((area_by_grid(&square) / expected - 1.0).abs() < 0.005);
    }

    #[test]
    fn a_layer_ends_at_the_crest_by_either_way_of_summing() {
        for outline in [
            [(-2.0, 0.0), (2.0, 0.0), (2.0, 5.0), (-2.0, 5.0)],
            [(-2.0, 0.7), (2.0, 1.2), (1.0, 5.0), (-2.0, 4.0)],
            [(-1.0, 0.0), (3.0, 0.0), (1.0, 5.0), (0.5, 5.0)],
        ] {
            let base = vec![outline.map(|(s, t)| P2::new(s, t)).to_vec()];
            let (exact, grid) = (contour_area(&base), area_by_grid(&base));
            assert!((exact / grid - 1.0).abs() < 0.005, "{exact} {grid}");
        }
    }

    #[test]
    fn what_is_to_be_grafted_grows_with_the_fill_level_by_the_socket_less_the_implant() {
        let mut trial = Trial::plain();
        let mut last = 0.0;
        for fill in [-20, -10, 0, 10] {
            trial.number(Decision::FillLevel, fill);
            let plan = trial.plan();
            let volume = Measurements::of(&trial.case, &plan).volume_to_graft().unwrap().get();
            assert!(volume > last, "{fill} {volume}");
            last = volume;
        }
        // From the crest to 1 mm above it the implant (1 mm below the crest) takes nothing.
        trial.number(Decision::FillLevel, 0);
        let plan = trial.plan();
        let level = Measurements::of(&trial.case, &plan).volume_to_graft().unwrap().get();
        assert!((last - level - PI * 3.2 * 3.0).abs() < 0.3, "{last} {level}");
    }
}
