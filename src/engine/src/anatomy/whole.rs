//! Where nothing but socket stands between a line and an outer face.

use super::Wall;
use super::solid::Solid;
use crate::geometry::{Interval, P3, polyline};

/// What lies nearer than this is taken to stand in the way, mm: far above rounding.
const CLEAR: f64 = 1e-3;

impl Solid {
    /// How far outward hollows reach on the lines along y that run from points between `a` and `b` to the
    /// face of a wall, as y with that face's sign; minus infinity where none does. Beyond that, and
    /// between the hollows, the lines run through bone or socket from end to end. `None` where something
    /// else may stand or be missing on the way: asked cautiously, `None` may be said of a way that is
    /// whole, never the other way round.
    #[must_use]
    pub fn hollow_beside(&self, wall: Wall, a: P3, b: P3) -> Option<f64> {
        let x = Interval { from: a.x.min(b.x) - CLEAR, to: a.x.max(b.x) + CLEAR };
        let z = Interval { from: a.z.min(b.z) - CLEAR, to: a.z.max(b.z) + CLEAR };
        let over = |one: &Interval, from: f64, to: f64| one.from <= to && from <= one.to;
        let beside = self.reach.iter().flatten().any(|reach| over(&x, reach.from, reach.to));
        // What a defect of the other wall takes lies beyond its plane.
        let cut = self.cuts.iter().any(|cut| {
            let [across, level] = cut.extent();
            let behind = |p: P3| cut.is_behind(p, CLEAR);
            over(&x, across.from, across.to)
                && over(&z, level.from, level.to)
                && (cut.wall == wall || !(behind(a) && behind(b)))
        });
        let other = if wall == Wall::Facial { Wall::Oral } else { Wall::Facial };
        let stands = !beside
            && !cut
            && self.is_under_crest(wall, a, b)
            && [a, b].into_iter().all(|p| self.is_above_floor(p, CLEAR))
            && self.least_inside(other, a, b) > CLEAR;
        let side = if wall == Wall::Facial { 1.0 } else { -1.0 };
        let inmost = (side * a.y).min(side * b.y) - CLEAR;
        let outmost = self.hollows.iter().filter_map(|hollow| {
            let [p, q] = hollow.ends;
            let r = hollow.radius;
            let outmost = (side * p.y).max(side * q.y) + r;
            // What lies on the other side of the stretch is not on the way.
            let on_the_way = outmost > inmost
                && over(&x, p.x.min(q.x) - r, p.x.max(q.x) + r)
                && over(&z, p.z.min(q.z) - r, p.z.max(q.z) + r);
            on_the_way.then_some(outmost)
        });
        stands.then(|| outmost.fold(f64::NEG_INFINITY, f64::max))
    }

    /// The least y of a face between two levels, with that face's sign.
    #[must_use]
    pub fn least_face(&self, wall: Wall, [a, b]: [f64; 2]) -> f64 {
        let side = if wall == Wall::Facial { 1.0 } else { -1.0 };
        let knots = self.face_knots(wall).iter();
        let knots = knots.filter(|knot| a.min(b) < knot.x && knot.x < a.max(b));
        let ends = [a, b].map(|z| side * self.face(wall, z));
        knots.map(|knot| side * knot.y).chain(ends).fold(f64::INFINITY, f64::min)
    }

    /// How far the straight stretch between two points stays within a face, at the least, along y; less
    /// than 0 outside.
    #[must_use]
    pub fn least_inside(&self, wall: Wall, a: P3, b: P3) -> f64 {
        let side = if wall == Wall::Facial { 1.0 } else { -1.0 };
        let inside = |p: P3| side * (self.face(wall, p.z) - p.y);
        let run = b.z - a.z;
        let share = |level: f64| (level - a.z) / run;
        let bends = self.face_knots(wall).iter().filter(|_| run.abs() > 1e-9);
        let bends = bends.map(|knot| share(knot.x)).filter(|share| 0.0 < *share && *share < 1.0);
        bends.map(|share| inside(a + (b - a) * share)).fold(inside(a).min(inside(b)), f64::min)
    }

    /// Whether the way from the stretch to the face lies apical of the crest's surface.
    fn is_under_crest(&self, wall: Wall, a: P3, b: P3) -> bool {
        let (from, to) = (a.x.min(b.x), a.x.max(b.x));
        let within = self.crest.iter().filter(|knot| from < knot.x && knot.x < to);
        let ends = [from, to].map(|x| polyline::value(&self.crest, x));
        let line = within.map(|knot| knot.y).chain(ends).fold(f64::NEG_INFINITY, f64::max);
        let [p, q] = [a, b].map(|p| self.drop * polyline::value(&self.share, p.y));
        let outer = if wall == Wall::Oral { self.drop } else { 0.0 };
        a.z.min(b.z) >= line + p.max(q).max(outer) + CLEAR
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Bone;
    use crate::cases::generate;
    use crate::geometry::{Intervals, Ray, V3};
    use rand::{Rng, SeedableRng};
    use rand_chacha::ChaCha8Rng;

    #[test]
    fn a_way_is_bone_or_socket_from_end_to_end_but_for_the_hollows_that_are_told() {
        let mut random = ChaCha8Rng::seed_from_u64(11);
        let mut between = |from: f64, to: f64| {
            from + (to - from) * (random.next_u64() >> 11) as f64 / (1_u64 << 53) as f64
        };
        let (mut whole, mut hollow, mut asked) = (0, 0, 0);
        for case in (1..60).filter_map(|seed| generate(seed).ok()) {
            let solid = Solid::of(&case.site);
            for _ in 0..40 {
                let a = P3::new(between(-3.0, 3.0), between(-4.0, 3.0), between(-1.0, 12.0));
                let b = a + V3::new(between(-0.5, 0.5), between(-2.0, 2.0), between(1.0, 9.0));
                for wall in [Wall::Facial, Wall::Oral] {
                    asked += 1;
                    let inside = solid.least_inside(wall, a, b) > 0.0;
                    let Some(outmost) = solid.hollow_beside(wall, a, b).filter(|_| inside) else {
                        continue;
                    };
                    if outmost > f64::NEG_INFINITY {
                        hollow += 1
                    } else {
                        whole += 1
                    }
                    let said = Said { wall, outmost, face: solid.least_face(wall, [a.z, b.z]) };
                    for k in 0..=20 {
                        said.check(&solid, a + (b - a) * (f64::from(k) / 20.0));
                    }
                }
            }
        }
        assert!(whole > 300 && hollow > 20 && whole + hollow < asked, "{whole} {hollow} {asked}");
    }

    /// What is said of a stretch.
    struct Said {
        wall: Wall,
        outmost: f64,
        face: f64,
    }

    impl Said {
        /// Holds it to the line from one point of the stretch.
        fn check(&self, solid: &Solid, start: P3) {
            let side = if self.wall == Wall::Facial { 1.0 } else { -1.0 };
            let face = side * solid.face(self.wall, start.z);
            assert!(face >= self.face - 1e-9);
            let room = face - side * start.y;
            let ray = Ray { origin: start, direction: V3::FACIAL * side };
            let bodies = solid.socket.as_slice().iter().map(|body| body.ray(&ray));
            let socket = bodies.fold(Intervals::empty(), |all, one| all.union(&one));
            let met = solid.bone(Bone::Now, &ray, 0.0, room).union(&socket);
            let from = (self.outmost - side * start.y).clamp(0.0, room);
            let beyond = met.length_within(from, room);
            assert!((beyond - (room - from)).abs() < 1e-6, "{:?} {beyond} {room}", self.wall);
        }
    }
}
