//! A ridge without ends along x: what lies between two profiles, apical of a crest and coronal of a
//! floor. The definition is that of the site's own bone (`anatomy::solid`); here it is laid out for
//! many rays, most of which cross each face within one straight piece of it.

use super::bounds::{greater, lesser};
use super::bundle::Bundle;
use crate::geometry::{P2, P3, Ray, polyline};
use core::ops::Range;

/// One straight piece of a polyline over a coordinate: `at + slope * coordinate` from one value of it
/// to another.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Piece {
    from: f64,
    to: f64,
    at: f64,
    slope: f64,
}

/// The ridge. See the module.
#[derive(Debug, Clone, PartialEq)]
pub struct Strip {
    /// (z, y) of the facial face.
    pub facial: Vec<P2>,
    /// (z, y) of the oral face.
    pub oral: Vec<P2>,
    /// (x, z) of the crest on the facial side.
    pub crest: Vec<P2>,
    /// How much deeper it lies on the oral side.
    pub drop: f64,
    /// (y, w): which share of that drop the crest has at y.
    pub share: [P2; 2],
    /// z at x = 0 and its rise over x, where bone ends.
    pub floor: Option<[f64; 2]>,
    pieces: [Vec<Piece>; 4],
    reach: [f64; 3],
}

/// What of a ridge a bundle of rays can meet: places of the pieces of its lines, and which of its ends.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Near {
    facial: Range<usize>,
    oral: Range<usize>,
    crest: Range<usize>,
    /// Whether the crest bounds it here.
    crested: bool,
    /// Whether the floor does.
    floored: bool,
}

impl Strip {
    /// From its faces, crest, drop with its share over y, and floor.
    #[must_use]
    pub fn new(
        [facial, oral]: [Vec<P2>; 2],
        crest: Vec<P2>,
        (drop, share): (f64, [P2; 2]),
        floor: Option<[f64; 2]>,
    ) -> Self {
        let least = |knots: &[P2]| knots.iter().map(|k| k.y).fold(f64::MAX, f64::min);
        let most = |knots: &[P2]| knots.iter().map(|k| k.y).fold(f64::MIN, f64::max);
        let reach = [least(&oral), most(&facial), least(&crest) + drop.min(0.0)];
        let pieces = [pieces(&facial), pieces(&oral), pieces(&crest), pieces(&share)];
        Self { facial, oral, crest, drop, share, floor, pieces, reach }
    }

    /// Least and greatest y, and least z.
    #[must_use]
    pub const fn reach(&self) -> [f64; 3] {
        self.reach
    }

    /// Whether a point lies in it.
    #[must_use]
    pub fn contains(&self, P3 { x, y, z }: P3) -> bool {
        let crest =
            || polyline::value(&self.crest, x) + self.drop * polyline::value(&self.share, y);
        y <= polyline::value(&self.facial, z)
            && y >= polyline::value(&self.oral, z)
            && z >= crest()
            && self.floor.is_none_or(|[level, rise]| z <= level + rise * x)
    }

    /// All of it, for rays of every direction.
    #[must_use]
    pub fn whole(&self) -> Near {
        let [facial, oral, crest, _] = self.pieces.each_ref().map(|pieces| 0..pieces.len());
        Near { facial, oral, crest, crested: true, floored: self.floor.is_some() }
    }

    /// What of it the rays of a bundle can meet; none where they all pass it by.
    #[must_use]
    pub fn near(&self, bundle: &Bundle) -> Option<Near> {
        let [least, most, top] = self.reach;
        let Some([low, high]) = bundle.between([least, most]) else { return Some(self.whole()) };
        let [facial, oral, crest, _] = &self.pieces;
        let crest_of = passed(crest, [low.x, high.x]);
        let ends = |piece: &Piece| {
            [greater(piece.from, low.x), lesser(piece.to, high.x)]
                .map(|x| piece.at + piece.slope * x)
        };
        let deepest = crest[crest_of.clone()].iter().flat_map(ends).fold(f64::MIN, f64::max);
        let deeper = |[level, rise]: [f64; 2]| {
            let [a, b] = [low.x, high.x].map(|x| level + rise * x);
            (low.z - greater(a, b), high.z - lesser(a, b))
        };
        let beyond = self.floor.map_or((-1.0, -1.0), deeper);
        (high.z >= top && beyond.0 <= 0.0).then(|| Near {
            facial: passed(facial, [low.z, high.z]),
            oral: passed(oral, [low.z, high.z]),
            crest: crest_of,
            crested: low.z < deepest + greater(self.drop, 0.0),
            floored: beyond.1 > 0.0,
        })
    }

    /// Calls `put(from, to)` with every stretch of the ray that lies in it between two parameters;
    /// stretches may touch.
    pub fn each(&self, ray: &Ray, from: f64, to: f64, put: &mut impl FnMut(f64, f64)) {
        self.each_near(&self.whole(), ray, (from, to), put);
    }

    /// The same for a ray of a bundle.
    pub fn each_near(
        &self,
        near: &Near,
        ray: &Ray,
        span: (f64, f64),
        put: &mut impl FnMut(f64, f64),
    ) {
        let (o, d) = (ray.origin, ray.direction);
        let [least, most, top] = self.reach;
        // Coarse planes first: what is left of the ray is short and seldom passes a knot.
        let span = half(span, o.y - most, d.y);
        let mut span = span.and_then(|span| half(span, least - o.y, -d.y));
        if near.crested {
            span = span.and_then(|span| half(span, top - o.z, -d.z));
        }
        if let (true, Some([level, rise]), Some(whole)) = (near.floored, self.floor, span) {
            span = half(whole, o.z - level - rise * o.x, d.z - rise * d.x);
        }
        let Some(span) = span else { return };
        let [facial, oral, ..] = &self.pieces;
        over(&facial[near.facial.clone()], (o.z, d.z), span, |piece, span| {
            let facially = (o.y - piece.at - piece.slope * o.z, d.y - piece.slope * d.z);
            let Some(span) = half(span, facially.0, facially.1) else { return };
            over(&oral[near.oral.clone()], (o.z, d.z), span, |piece, span| {
                let orally = (piece.at + piece.slope * o.z - o.y, piece.slope * d.z - d.y);
                match half(span, orally.0, orally.1) {
                    Some(span) if near.crested => self.under_crest(near, ray, span, put),
                    Some((from, to)) => put(from, to),
                    None => {}
                }
            });
        });
    }

    /// What of a stretch between the faces lies apical of the crest.
    fn under_crest(
        &self,
        near: &Near,
        ray: &Ray,
        span: (f64, f64),
        put: &mut impl FnMut(f64, f64),
    ) {
        let (o, d) = (ray.origin, ray.direction);
        let [.., crest, share] = &self.pieces;
        over(&crest[near.crest.clone()], (o.x, d.x), span, |piece, span| {
            let level = (piece.at + piece.slope * o.x - o.z, piece.slope * d.x - d.z);
            if self.drop == 0.0 {
                keep(put, span, level);
                return;
            }
            over(share, (o.y, d.y), span, |piece, span| {
                let start = level.0 + self.drop * (piece.at + piece.slope * o.y);
                keep(put, span, (start, level.1 + self.drop * piece.slope * d.y));
            });
        });
    }
}

/// The places of the pieces that have something between two values of the coordinate.
fn passed(pieces: &[Piece], [low, high]: [f64; 2]) -> Range<usize> {
    let first = pieces.iter().position(|piece| low <= piece.to).unwrap_or(0);
    let count = pieces[first..].iter().take_while(|piece| piece.from <= high).count();
    first..first + count
}

fn keep(put: &mut impl FnMut(f64, f64), span: (f64, f64), (start, rate): (f64, f64)) {
    if let Some((from, to)) = half(span, start, rate) {
        put(from, to);
    }
}

/// What of a stretch lies where `start + rate t <= 0`.
#[inline]
fn half((from, to): (f64, f64), start: f64, rate: f64) -> Option<(f64, f64)> {
    let (first, last) = (start + rate * from, start + rate * to);
    if first <= 0.0 && last <= 0.0 {
        return (from < to).then_some((from, to));
    }
    if first > 0.0 && last > 0.0 {
        return None;
    }
    let crossing = greater(lesser(-start / rate, to), from);
    let (from, to) = if first <= 0.0 { (from, crossing) } else { (crossing, to) };
    (from < to).then_some((from, to))
}

/// The pieces that `start + rate t` passes within a stretch, in rising t, each with its own stretch.
#[inline]
fn over(
    pieces: &[Piece],
    (start, rate): (f64, f64),
    (from, to): (f64, f64),
    mut visit: impl FnMut(&Piece, (f64, f64)),
) {
    let (a, b) = (start + rate * from, start + rate * to);
    let (low, high) = if a < b { (a, b) } else { (b, a) };
    let first = pieces.iter().position(|piece| low <= piece.to).unwrap_or(0);
    let Some(piece) = pieces.get(first) else { return };
    if high <= piece.to || rate == 0.0 {
        visit(piece, (from, to));
        return;
    }
    let passed = pieces[first..].iter().take_while(|piece| piece.from < high).count();
    let slowness = 1.0 / rate;
    for turn in 0..passed {
        let piece = &pieces[first + if rate > 0.0 { turn } else { passed - 1 - turn }];
        let (ta, tb) = ((piece.from - start) * slowness, (piece.to - start) * slowness);
        let (ta, tb) = if ta < tb { (ta, tb) } else { (tb, ta) };
        let (t0, t1) = (greater(ta, from), lesser(tb, to));
        if t0 < t1 {
            visit(piece, (t0, t1));
        }
    }
}

/// The pieces of a polyline, the ends going on level.
fn pieces(knots: &[P2]) -> Vec<Piece> {
    const FAR: f64 = 1e9;
    let level = |from, to, at| Piece { from, to, at, slope: 0.0 };
    let (Some(first), Some(last)) = (knots.first(), knots.last()) else {
        return vec![level(-FAR, FAR, 0.0)];
    };
    let mut pieces = vec![level(-FAR, first.x, first.y)];
    pieces.extend(knots.windows(2).filter(|pair| pair[0].x < pair[1].x).map(|pair| {
        let slope = (pair[1].y - pair[0].y) / (pair[1].x - pair[0].x);
        Piece { from: pair[0].x, to: pair[1].x, at: pair[0].y - slope * pair[0].x, slope }
    }));
    pieces.push(level(last.x, FAR, last.y));
    pieces
}

#[cfg(test)]
mod tests {
    use super::super::shape::gathered;
    use super::*;
    use crate::geometry::V3;

    fn strip() -> Strip {
        let points = |list: &[(f64, f64)]| list.iter().map(|&(x, y)| P2::new(x, y)).collect();
        Strip::new(
            [
                points(&[(-8.0, 4.2), (0.0, 4.2), (5.5, 3.1), (11.0, 2.2), (30.0, 6.0)]),
                points(&[(-8.0, -4.0), (0.0, -4.2), (5.5, -6.2), (30.0, -12.0)]),
            ],
            points(&[(-12.0, 0.0), (-5.0, -2.5), (0.0, 0.0), (5.0, -2.5), (12.0, 0.4)]),
            (1.3, [P2::new(-4.2, 1.0), P2::new(4.2, 0.0)]),
            Some([18.0, 0.1]),
        )
    }

    #[test]
    fn rays_of_every_direction_lie_in_it_where_their_points_do() {
        let strip = strip();
        let (mut inside, mut wrong) = (0, 0);
        for i in 0..500 {
            let turn = f64::from(i);
            let origin = P3::new(9.0 * libm::sin(turn), 3.0 * libm::sin(1.9 * turn), turn * 0.04);
            let direction = match i % 5 {
                0 => V3::FACIAL,
                1 => V3::DISTAL,
                2 => -V3::APICAL,
                _ => V3::new(libm::cos(turn), libm::sin(2.7 * turn), 0.8 * libm::sin(0.6 * turn)),
            };
            let Some(direction) = direction.unit() else { continue };
            let ray = Ray { origin, direction };
            let met = gathered(|mut put| strip.each(&ray, -30.0, 30.0, &mut put));
            for j in 0..300 {
                let t = 0.2 * f64::from(j) - 29.93;
                let edge = met
                    .as_slice()
                    .iter()
                    .any(|p| (p.from - t).abs() < 1e-6 || (p.to - t).abs() < 1e-6);
                inside += u32::from(met.contains(t));
                wrong += u32::from(!edge && met.contains(t) != strip.contains(ray.at(t)));
            }
        }
        assert!(inside > 8000, "{inside}");
        assert_eq!(wrong, 0);
    }

    #[test]
    fn what_a_bundle_can_meet_of_it_is_all_that_its_rays_meet() {
        let strip = strip();
        let (mut met, mut narrowed, mut missed) = (0, 0, 0);
        for i in 0..400 {
            let turn = f64::from(i);
            let origin = P3::new(60.0 * libm::sin(turn), 190.0, 40.0 * libm::sin(2.3 * turn));
            let middle =
                P3::new(11.0 * libm::sin(1.7 * turn), 0.0, 9.0 + 13.0 * libm::sin(0.9 * turn));
            let towards =
                |x: f64, z: f64| Ray { origin, direction: middle + V3::new(x, 0.0, z) - origin };
            let corners = [(-1.0, -1.0), (1.0, -1.0), (-1.0, 1.0), (1.0, 1.0)];
            let near = strip.near(&Bundle::new(corners.map(|(x, z)| towards(x, z))));
            narrowed += u32::from(near.as_ref().is_some_and(|near| !near.crested));
            missed += u32::from(near.is_none());
            for part in 0..9 {
                let share = |part: i32| f64::from(part) - 1.0;
                let ray = towards(share(part % 3), share(part / 3));
                let stretches = |near: Option<&Near>| {
                    gathered(|mut put| {
                        if let Some(near) = near {
                            strip.each_near(near, &ray, (0.5, 1.5), &mut put);
                        }
                    })
                };
                let (all, some) = (stretches(Some(&strip.whole())), stretches(near.as_ref()));
                assert_eq!(all.as_slice().len(), some.as_slice().len(), "{i} {part}");
                for (a, b) in all.as_slice().iter().zip(some.as_slice()) {
                    assert!((a.from - b.from).abs() < 1e-9 && (a.to - b.to).abs() < 1e-9, "{i}");
                    met += 1;
                }
            }
        }
        assert!(met > 1500 && narrowed > 50 && missed > 20, "{met} {narrowed} {missed}");
    }
}
