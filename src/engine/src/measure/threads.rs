//! The implant's lateral surface: what it stands in and what it faces.
//!
//! The surface is followed along its generators, the straight lines from platform to apex: bone on a
//! generator is a list of exact intervals of depth, and the area that belongs to a stretch of it is
//! exact too. Round the axis there are 24 generators, and more where what they find changes from one
//! to the next.

use super::ground::{AROUND, Ground};
use super::{Measurements, Threads, mm, mm2};
use crate::anatomy::Bone;
use crate::geometry::{Cone, Intervals, P3, Ray, Stack, V3};
use crate::units::Mm;
use core::f64::consts::TAU;

/// A break in the bone along a generator that is no longer than this, mm, is a graze and does not end
/// the hold (ours).
const GRAZE: f64 = 0.1;
/// How far outward the view goes, mm (ours): farther off stands no wall of this socket.
const REACH: f64 = 6.0;
/// How finely the edge between facing and exposed is found along a generator, mm.
const EDGE: f64 = 0.05;
/// Along a generator the outward view is taken at least this often, mm.
const VIEW: f64 = 1.0;
/// How closely generators are put in between others.
#[derive(Clone, Copy)]
struct Closeness {
    /// Where the area in doubt is more than this, mm2.
    doubt: f64,
    /// How often the turn between two generators is halved at most.
    halvings: usize,
}

/// For what rules read, so that many plans are judged soon.
const HOLD: Closeness = Closeness { doubt: 0.03, halvings: 4 };
/// The same beside several roots, where bone begins and ends more often round the axis.
const HOLD_OF_SEVERAL: Closeness = Closeness { doubt: 0.012, halvings: 5 };
/// For what the eye compares with a figure.
const LOOK: Closeness = Closeness { doubt: 0.01, halvings: 6 };

/// A generator and what it finds, areas being those of a full radian.
#[derive(Debug, Clone)]
struct Strip {
    /// From facial over distal, radians.
    angle: f64,
    side: V3,
    in_bone: Intervals,
    engaged: f64,
    /// First moment of the engaged area about the axis.
    moment: f64,
    exposed: f64,
}

/// Where the implant stands in bone.
#[derive(Debug)]
pub(super) struct Grip {
    /// Its generators, in rising angle.
    strips: Vec<Strip>,
    /// Area in bone, mm2.
    engaged: f64,
    /// First moment of that area about the axis, mm3.
    pub(super) moment: f64,
    /// Length of the apical end that stands in bone all round, along the axis, mm.
    all_round: f64,
    /// Depths in bone on the oral generator, mm.
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

impl Strip {
    fn at(ground: &Ground, cone: &Cone, angle: f64, turned: (f64, f64)) -> Self {
        let side = Self::side(cone, turned);
        let in_bone = ground.solid.bone(Bone::Now, &cone.generator(side), 0.0, cone.length);
        Self::of(cone, angle, side, in_bone)
    }

    fn side(cone: &Cone, (sin, cos): (f64, f64)) -> V3 {
        cone.frame.facial * cos + cone.frame.across * sin
    }

    fn of(cone: &Cone, angle: f64, side: V3, in_bone: Intervals) -> Self {
        let (mut engaged, mut moment) = (0.0, 0.0);
        for part in in_bone.as_slice() {
            let (area, arm) = radian(cone, part.from, part.to);
            engaged += area;
            moment += arm;
        }
        Self { angle, side, in_bone, engaged, moment, exposed: 0.0 }
    }

    /// Depth from which on it stands in bone to the apex; the whole length when it does not.
    fn held_from(&self, cone: &Cone) -> f64 {
        let mut from = cone.length;
        let mut slack = 1e-9;
        for part in self.in_bone.as_slice().iter().rev() {
            if part.to < from - slack {
                break;
            }
            (from, slack) = (part.from, GRAZE);
        }
        from
    }
}

/// For how long the apical end of one generator stands in bone, along the axis, mm.
pub(super) fn held_on(ground: &Ground, cone: &Cone, turn: (f64, f64)) -> f64 {
    cone.length - Strip::at(ground, cone, 0.0, turn).held_from(cone)
}

/// Lateral area of a full radian between two depths, and its first moment about the axis.
fn radian(cone: &Cone, from: f64, to: f64) -> (f64, f64) {
    let slope = cone.slope();
    let length = libm::sqrt(1.0 + slope * slope) * (to - from);
    let (a, b) = (cone.radius(from), cone.radius(to));
    (length * f64::midpoint(a, b), length * (a * a + a * b + b * b) / 3.0)
}

/// First moment of the whole lateral surface about the axis, mm3.
pub(super) fn whole_moment(cone: &Cone) -> f64 {
    TAU * radian(cone, 0.0, cone.length).1
}

/// First moment, about the axis, of the side that stands in bone, these stretches of a line left out,
/// mm3.
pub(super) fn moment_outside(
    ground: &Ground,
    cone: &Cone,
    holes: impl Fn(&Ray) -> Intervals,
) -> f64 {
    let turn = TAU / AROUND as f64;
    let make = |angle, turned| {
        let side = Strip::side(cone, turned);
        let line = cone.generator(side);
        let in_bone = ground.solid.bone(Bone::Now, &line, 0.0, cone.length);
        Strip::of(cone, angle, side, in_bone.minus(&holes(&line)))
    };
    let around = ground.around.into_iter().enumerate();
    let mut strips: Vec<Strip> =
        around.map(|(place, turned)| make(turn * place as f64, turned)).collect();
    let between = |angle| make(angle, libm::sincos(angle));
    put_between(&mut strips, HOLD_OF_SEVERAL, |strip| strip.engaged, between);
    all_round_sum(&strips, |strip| strip.moment)
}

fn grip(ground: &Ground, cone: &Cone) -> Grip {
    let turn = TAU / AROUND as f64;
    let mut angle = 0.0;
    let mut strips = Vec::with_capacity(2 * AROUND);
    for around in ground.around {
        strips.push(Strip::at(ground, cone, angle, around));
        angle += turn;
    }
    let oral = strips[AROUND / 2].in_bone.length();
    let make = |angle| Strip::at(ground, cone, angle, libm::sincos(angle));
    let several = ground.solid.socket.furcation().is_some();
    let closeness = if several { HOLD_OF_SEVERAL } else { HOLD };
    put_between(&mut strips, closeness, |strip| strip.engaged, make);
    Grip {
        engaged: all_round_sum(&strips, |strip| strip.engaged),
        moment: all_round_sum(&strips, |strip| strip.moment),
        all_round: cone.length - last_hold(ground, cone, &strips),
        oral,
        strips,
    }
}

/// What is followed round the axis, a full radian at an angle.
trait Turned {
    fn angle(&self) -> f64;
}

impl Turned for Strip {
    fn angle(&self) -> f64 {
        self.angle
    }
}

/// Areas of a full radian of one generator, of three kinds.
struct Looked {
    angle: f64,
    areas: [f64; 3],
}

impl Turned for Looked {
    fn angle(&self) -> f64 {
        self.angle
    }
}

/// Halves the turn between generators where the trapezoids between them are in doubt: where the
/// slope of what they find changes.
fn put_between<S: Turned>(
    strips: &mut Vec<S>,
    closeness: Closeness,
    value: impl Fn(&S) -> f64,
    mut make: impl FnMut(f64) -> S,
) {
    let mut places: Vec<(f64, f64)> = Vec::new();
    for _ in 0..closeness.halvings {
        let count = strips.len();
        places.clear();
        places.extend(strips.iter().map(|strip| (strip.angle(), value(strip))));
        let gap = |i: usize| {
            let (here, next) = (places[i % count].0, places[(i + 1) % count].0);
            if next > here { next - here } else { next + TAU - here }
        };
        let slope = |i: usize| (places[(i + 1) % count].1 - places[i % count].1) / gap(i % count);
        let mut denser = Vec::with_capacity(count + 16);
        for (i, strip) in strips.drain(..).enumerate() {
            let (before, here, after) = (slope(i + count - 1), slope(i), slope(i + 1));
            let bend = (here - before).abs().max((after - here).abs());
            let width = gap(i);
            let middle = strip.angle() + 0.5 * width;
            denser.push(strip);
            if bend * width * width / 8.0 > closeness.doubt {
                denser.push(make(middle));
            }
        }
        let done = denser.len() == count;
        *strips = denser;
        if done {
            break;
        }
    }
}

/// The integral round the axis, by trapezoids.
fn all_round_sum<S: Turned>(strips: &[S], value: impl Fn(&S) -> f64) -> f64 {
    let next = strips.iter().cycle().skip(1);
    strips
        .iter()
        .zip(next)
        .map(|(here, next)| {
            let turn = next.angle() - here.angle();
            let turn = if turn > 0.0 { turn } else { turn + TAU };
            turn * f64::midpoint(value(here), value(next))
        })
        .sum()
}

/// The greatest depth at which some generator last comes into bone, mm.
///
/// Looked for twice as closely between the neighbours of the deepest generator found, again and again:
/// an apex may graze the implant's side over a few degrees only.
fn last_hold(ground: &Ground, cone: &Cone, strips: &[Strip]) -> f64 {
    const LOOKS: u32 = 3;
    let depth = |strip: &Strip| strip.held_from(cone);
    let Some(deepest) = strips.iter().max_by(|a, b| depth(a).total_cmp(&depth(b))) else {
        return cone.length;
    };
    let (mut most, mut middle) = (depth(deepest), deepest.angle);
    // All in bone, or some generator not held at all: there is no edge to look for.
    if most <= 0.0 || most >= cone.length {
        return most;
    }
    let mut reach = TAU / AROUND as f64;
    for _ in 0..3 {
        let step = reach / f64::from(LOOKS + 1);
        let centre = middle;
        for look in 1..=LOOKS {
            for angle in [centre - step * f64::from(look), centre + step * f64::from(look)] {
                let found = depth(&Strip::at(ground, cone, angle, libm::sincos(angle)));
                if found > most {
                    (most, middle) = (found, angle);
                }
            }
        }
        reach = step;
    }
    most
}

/// Areas of the side where what is looked for stands: of each generator, given as a line from platform
/// to apex with where it lies in bone, the stretches that count, of three kinds at once; generators are
/// put in between for the last of them. Square millimetres.
pub(super) fn areas_of(
    ground: &Ground,
    cone: &Cone,
    grip: &Grip,
    stretches: impl Fn(&Ray, &Intervals) -> [Intervals; 3],
) -> [f64; 3] {
    let looked = |angle: f64, side: V3, in_bone: &Intervals| {
        let areas = stretches(&cone.generator(side), in_bone).map(|parts| {
            parts.as_slice().iter().map(|part| radian(cone, part.from, part.to).0).sum()
        });
        Looked { angle, areas }
    };
    let known = grip.strips.iter();
    let mut strips: Vec<Looked> =
        known.map(|strip| looked(strip.angle, strip.side, &strip.in_bone)).collect();
    let make = |angle| {
        let strip = Strip::at(ground, cone, angle, libm::sincos(angle));
        looked(angle, strip.side, &strip.in_bone)
    };
    put_between(&mut strips, HOLD_OF_SEVERAL, |strip| strip.areas[2], make);
    [0, 1, 2].map(|kind| all_round_sum(&strips, |strip| strip.areas[kind]))
}

fn threads(ground: &Ground, cone: &Cone, grip: &Grip) -> Option<Threads> {
    let mut strips = grip.strips.clone();
    for strip in &mut strips {
        strip.exposed = exposed(ground, cone, strip);
    }
    let make = |angle| {
        let mut strip = Strip::at(ground, cone, angle, libm::sincos(angle));
        strip.exposed = exposed(ground, cone, &strip);
        strip
    };
    put_between(&mut strips, LOOK, |strip| strip.exposed, make);
    let whole = cone.lateral_area();
    let exposed = all_round_sum(&strips, |strip| strip.exposed);
    let facing = (whole - grip.engaged - exposed).max(0.0);
    Some(Threads { engaged: mm2(grip.engaged)?, facing_bone: mm2(facing)?, exposed: mm2(exposed)? })
}

/// Area of a full radian along a generator from which the radial ray meets no bone.
fn exposed(ground: &Ground, cone: &Cone, strip: &Strip) -> f64 {
    let line = cone.generator(strip.side);
    let meets = |depth: f64| meets_bone(ground, line.at(depth), strip.side);
    let mut sum = 0.0;
    for part in Intervals::one(0.0, cone.length).minus(&strip.in_bone).as_slice() {
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
            if !before {
                sum += radian(cone, from, edge).0;
            }
            if !after {
                sum += radian(cone, edge, to).0;
            }
            (from, before) = (to, after);
            left -= 1.0;
        }
    }
    sum
}

/// Whether a ray from a point of the implant's surface meets bone within reach. Mostly it does where it leaves the
/// socket, which is soon seen.
fn meets_bone(ground: &Ground, from: P3, side: V3) -> bool {
    const HAIR: f64 = 1e-6;
    let solid = &ground.solid;
    let ray = Ray { origin: from, direction: side };
    let soon = |body: &Stack| {
        body.ray(&ray).first_beyond(0.0).is_some_and(|part| {
            part.from <= 0.0 && part.to < REACH && solid.is_bone(ray.at(part.to + HAIR))
        })
    };
    if solid.socket.as_slice().iter().any(soon) {
        return true;
    }
    !solid.bone(Bone::Now, &ray, 0.0, REACH).is_empty()
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
        let root = trial.case.site.socket.only_mut().unwrap();
        (root.length, root.half_md, root.half_fo) = (Mm::new(2.0), Mm::new(0.5), Mm::new(0.5));
        trial.number(Decision::Depth, 40).number(Decision::OffsetFacial, -10);
        trial.number(Decision::Diameter, 30).number(Decision::Length, 80);
        let (threads, area, anchorage) = with(&trial, |m| {
            let area = m.seated().unwrap().lateral_area();
            (m.threads().unwrap(), area, m.anchorage_beyond_apex().unwrap())
        });
        assert!((threads.engaged.get() - area).abs() < 1e-9, "{threads:?} {area}");
        assert!(threads.facing_bone.get() < 1e-9 && threads.exposed.get() < 1e-9, "{threads:?}");
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
                    let met = solid.bone(Bone::Now, &ray, 0.0, REACH);
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
