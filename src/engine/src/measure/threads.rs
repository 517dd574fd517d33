//! The implant's lateral surface: what it stands in and what it faces.
//!
//! The surface is followed along its generators, the straight lines from platform to apex in 24
//! directions: bone on a generator is a list of exact intervals of depth, and the area that belongs
//! to a stretch of it is exact too. Between generators the surface is summed evenly, which for a
//! closed turn is the best rule there is.

use super::ground::{AROUND, Ground};
use super::site::FAR;
use super::{Measurements, Threads, mm, mm2};
use crate::anatomy::Bone;
use crate::geometry::{Cone, Intervals, Ray, V3};
use crate::units::Mm;
use core::f64::consts::TAU;

/// How finely the edge between facing and exposed is found along a generator, mm.
const EDGE: f64 = 0.1;
/// A first look outward, mm.
const NEAR: f64 = 4.0;
/// Along a generator the outward view is taken at least this often, mm.
const VIEW: f64 = 2.0;

/// Where each generator lies in bone, and what follows from it.
#[derive(Debug)]
pub(super) struct Grip {
    /// Depths in bone for each direction.
    in_bone: Vec<Intervals>,
    /// Area in bone, mm2.
    engaged: f64,
    /// First moment of that area about the axis, mm3.
    pub(super) moment: f64,
    /// Length of the apical end that stands in bone all round, along the axis, mm.
    all_round: f64,
    /// Depths in bone on the oral generator.
    oral: f64,
}

impl Measurements<'_> {
    /// Threads by what they face. `None` without an implant in place. Square millimetres.
    #[must_use]
    pub fn threads(&self) -> Option<Threads> {
        *self.kept.threads.get_or_init(|| {
            let cone = self.seated()?;
            threads(self.ground(), cone, self.grip()?)
        })
    }

    /// Length of the implant's apical end that stands in bone all round, along its axis: beyond the
    /// socket's apex, or beyond where the implant has left the socket sideways. `None` without an
    /// implant in place. Millimetres; 0 when the apex itself does not stand in bone all round.
    #[must_use]
    pub fn anchorage_beyond_apex(&self) -> Option<Mm> {
        self.seated()?;
        mm(self.grip()?.all_round)
    }

    /// Length of the oral side of the implant that is in bone, along its axis. `None` without an
    /// implant in place. Millimetres.
    #[must_use]
    pub fn oral_engagement(&self) -> Option<Mm> {
        self.seated()?;
        mm(self.grip()?.oral)
    }

    pub(super) fn grip(&self) -> Option<&Grip> {
        let grip = self.kept.grip.get_or_init(|| Some(grip(self.ground(), self.drilled()?)));
        grip.as_ref()
    }
}

fn side(ground: &Ground, cone: &Cone, turn: usize) -> V3 {
    let (sin, cos) = ground.around[turn];
    cone.frame.facial * cos + cone.frame.across * sin
}

fn grip(ground: &Ground, cone: &Cone) -> Grip {
    let mut grip = Grip {
        in_bone: Vec::with_capacity(AROUND),
        engaged: 0.0,
        moment: 0.0,
        all_round: cone.length,
        oral: 0.0,
    };
    for turn in 0..AROUND {
        let line = cone.generator(side(ground, cone, turn));
        let met = ground.solid.bone(Bone::Now, &line, 0.0, cone.length);
        for part in met.as_slice() {
            let (area, moment) = strip(cone, part.from, part.to);
            grip.engaged += area;
            grip.moment += moment;
        }
        let held = met.last().filter(|part| part.to >= cone.length - 1e-9);
        grip.all_round = grip.all_round.min(held.map_or(0.0, |part| cone.length - part.from));
        if turn == AROUND / 2 {
            grip.oral = met.length();
        }
        grip.in_bone.push(met);
    }
    grip
}

/// Area and its first moment about the axis that one direction stands for between two depths.
fn strip(cone: &Cone, from: f64, to: f64) -> (f64, f64) {
    let slope = cone.slope();
    let width = TAU / AROUND as f64 * libm::sqrt(1.0 + slope * slope) * (to - from);
    let (a, b) = (cone.radius(from), cone.radius(to));
    (width * f64::midpoint(a, b), width * (a * a + a * b + b * b) / 3.0)
}

/// First moment of the whole lateral surface about the axis, mm3.
pub(super) fn whole_moment(cone: &Cone) -> f64 {
    strip(cone, 0.0, cone.length).1 * AROUND as f64
}

fn threads(ground: &Ground, cone: &Cone, grip: &Grip) -> Option<Threads> {
    let mut facing = 0.0;
    let mut exposed = 0.0;
    for (turn, met) in grip.in_bone.iter().enumerate() {
        let side = side(ground, cone, turn);
        let line = cone.generator(side);
        let meets = |depth: f64| {
            let ray = Ray { origin: line.at(depth), direction: side };
            let within = |reach| !ground.solid.bone(Bone::Now, &ray, 0.0, reach).is_empty();
            // Bone is mostly near, and a short look meets no neighbour.
            within(NEAR) || within(FAR)
        };
        for part in Intervals::one(0.0, cone.length).minus(met).as_slice() {
            let steps = libm::ceil((part.to - part.from) / VIEW).max(1.0);
            let step = (part.to - part.from) / steps;
            // A hair inside, so that an end that lies on bone does not decide.
            let mut from = part.from;
            let mut before = meets(from + 1e-6 * step);
            let mut left = steps;
            while left > 0.5 {
                let to = from + step;
                let after = meets(to - 1e-6 * step);
                let edge = edge_between(&meets, (from, before), (to, after));
                for (a, b, seen) in [(from, edge, before), (edge, to, after)] {
                    let area = strip(cone, a, b).0;
                    if seen { facing += area } else { exposed += area }
                }
                (from, before) = (to, after);
                left -= 1.0;
            }
        }
    }
    Some(Threads { engaged: mm2(grip.engaged)?, facing_bone: mm2(facing)?, exposed: mm2(exposed)? })
}

/// The depth at which the view changes between two depths; the second where it does not.
fn edge_between(
    meets: &impl Fn(f64) -> bool,
    (mut from, before): (f64, bool),
    (mut to, after): (f64, bool),
) -> f64 {
    if before == after {
        return to;
    }
    while to - from > EDGE {
        let middle = f64::midpoint(from, to);
        if meets(middle) == before { from = middle } else { to = middle }
    }
    f64::midpoint(from, to)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::{Defect, DefectKind, Wall};
    use crate::geometry::Outline;
    use crate::plan::Decision;
    use crate::rules::trial::Trial;

    fn with<T>(trial: &Trial, read: impl Fn(&Measurements<'_>) -> T) -> T {
        let plan = trial.plan();
        read(&Measurements::of(&trial.case, &plan))
    }

    #[test]
    fn an_implant_deep_in_bone_is_engaged_all_over() {
        let mut trial = Trial::plain();
        trial.case.site.socket.roots[0].length = Mm::new(2.0);
        trial.case.site.socket.roots[0].half_md = Mm::new(0.5);
        trial.case.site.socket.roots[0].half_fo = Mm::new(0.5);
        trial.number(Decision::Depth, 40).number(Decision::OffsetFacial, -10);
        trial.number(Decision::Diameter, 30).number(Decision::Length, 80);
        let (threads, area, anchorage) = with(&trial, |m| {
            let area = m.seated().unwrap().lateral_area();
            (m.threads().unwrap(), area, m.anchorage_beyond_apex().unwrap())
        });
        assert!((threads.engaged.get() - area).abs() < 1e-9, "{threads:?} {area}");
        assert_eq!((threads.facing_bone.get(), threads.exposed.get()), (0.0, 0.0));
        assert!((anchorage.get() - 8.0).abs() < 1e-9);
    }

    #[test]
    fn the_parts_sum_to_the_lateral_surface_over_a_sweep() {
        let mut trial = Trial::plain();
        for i in 0..40 {
            trial.number(Decision::OffsetFacial, i * 3 - 60);
            trial.number(Decision::Tilt, (i * 7) % 71 - 35);
            trial.number(Decision::Depth, (i * 11) % 121 - 60);
            let (t, area) =
                with(&trial, |m| (m.threads().unwrap(), m.seated().unwrap().lateral_area()));
            let sum = t.engaged.get() + t.facing_bone.get() + t.exposed.get();
            assert!((sum - area).abs() < 1e-9, "{i} {sum} {area}");
        }
    }

    #[test]
    fn generators_agree_with_a_fine_grid_of_points() {
        let mut trial = Trial::plain();
        trial.case.site.defects.push(Defect {
            wall: Wall::Facial,
            kind: DefectKind::DehiscenceU,
            outline: Outline::new(vec![[-25, 0], [25, 0], [15, 60], [-15, 60]]).unwrap(),
        });
        for (facial, tilt) in [(-12, -8), (5, 0), (-25, -20)] {
            trial.number(Decision::OffsetFacial, facial).number(Decision::Tilt, tilt);
            let plan = trial.plan();
            let m = Measurements::of(&trial.case, &plan);
            let (cone, solid) = (m.seated().unwrap(), &m.ground().solid);
            let (mut engaged, mut exposed) = (0.0, 0.0);
            let (turns, steps) = (180, 130);
            for turn in 0..turns {
                let out = cone.frame.radial(crate::units::Deg::new(f64::from(turn) * 2.0 + 1.0));
                let line = cone.generator(out);
                for step in 0..steps {
                    let depth = cone.length * (f64::from(step) + 0.5) / f64::from(steps);
                    let area = cone.lateral_area_within(
                        cone.length * f64::from(step) / f64::from(steps),
                        cone.length * f64::from(step + 1) / f64::from(steps),
                    ) / f64::from(turns);
                    let ray = Ray { origin: line.at(depth), direction: out };
                    let met = solid.bone(Bone::Now, &ray, 0.0, FAR);
                    match met.as_slice().first() {
                        None => exposed += area,
                        Some(part) if part.from <= 1e-9 => engaged += area,
                        Some(_) => {}
                    }
                }
            }
            let threads = m.threads().unwrap();
            let share = |a: f64, b: f64| (a - b).abs() / cone.lateral_area();
            assert!(share(threads.engaged.get(), engaged) < 0.01, "{threads:?} {engaged}");
            assert!(share(threads.exposed.get(), exposed) < 0.015, "{threads:?} {exposed}");
        }
    }
}
