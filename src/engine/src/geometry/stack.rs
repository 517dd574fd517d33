//! A stack of elliptic frusta on a straight axis, closed by a half ellipsoid.
//!
//! In the body's own frame (local z along the axis) the cross-section at level w is the ellipse with
//! half-widths `across * s(w)` and `facial * s(w)`; s is a polyline over the knots and falls to
//! nothing as a quarter ellipse over the cap. Every piece is convex and the pieces are the slabs
//! between knots, so a ray meets them in order and the list of its intervals is exact.

use super::quadratic::at_most_nothing;
use super::quadrature::{GAUSS_8, gauss};
use super::{Cap, Frame, Frusta, Intervals, P3, Ray, V3, ellipse};

/// Fewest knots that make a body: one frustum.
const LEAST: usize = 2;

/// A cross-section's level along the axis and its share of the full half-widths.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Knot {
    /// Level along the axis, mm, apically positive.
    pub at: f64,
    /// Half-widths there over the body's full half-widths.
    pub share: f64,
}

/// The body. See the module.
#[derive(Debug, Clone, PartialEq)]
pub struct Stack {
    /// Its own frame.
    pub frame: Frame,
    /// Full half-width along local x, mm.
    pub across: f64,
    /// Full half-width along local y, mm.
    pub facial: f64,
    knots: Vec<Knot>,
    pieces: Vec<Piece>,
    /// Height of the closing half ellipsoid, mm.
    cap: f64,
}

/// One frustum, or the cap: between two levels the squared share is `(share + slope (w - from))^2` of
/// a frustum, `share^2 - (slope (w - from))^2` of the cap.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Piece {
    from: f64,
    to: f64,
    share: f64,
    slope: f64,
    is_cap: bool,
}

impl Stack {
    /// From rising knots whose shares fall (or stay) and bend inwards, so that the frusta together
    /// are convex, and the height of the cap. Half-widths and cap are held above nothing; a cap of no
    /// height ends the body flat.
    #[must_use]
    pub fn new(frame: Frame, across: f64, facial: f64, mut knots: Vec<Knot>, cap: f64) -> Self {
        const THINNEST: f64 = 1e-6;
        const FLAT: f64 = 1e-9;
        while knots.len() < LEAST {
            let last = knots.last().copied().unwrap_or(Knot { at: 0.0, share: 1.0 });
            knots.push(Knot { at: last.at + THINNEST, share: last.share });
        }
        let above = |value: f64| if value > THINNEST { value } else { THINNEST };
        let cap = if cap > FLAT { cap } else { FLAT };
        let mut pieces: Vec<Piece> = knots
            .windows(2)
            .map(|pair| Piece {
                from: pair[0].at,
                to: pair[1].at,
                share: pair[0].share,
                slope: (pair[1].share - pair[0].share) / (pair[1].at - pair[0].at),
                is_cap: false,
            })
            .collect();
        let Knot { at: from, share } = knots[knots.len() - 1];
        pieces.push(Piece { from, to: from + cap, share, slope: share / cap, is_cap: true });
        Self { frame, across: above(across), facial: above(facial), knots, pieces, cap }
    }

    /// The knots, from the neck apically.
    #[must_use]
    pub fn knots(&self) -> &[Knot] {
        &self.knots
    }

    pub(super) fn base(&self) -> Knot {
        self.knots[self.knots.len() - 1]
    }

    /// Level of the coronal end along the axis.
    #[must_use]
    pub fn first_level(&self) -> f64 {
        self.knots[0].at
    }

    /// Level of the apex along the axis.
    #[must_use]
    pub fn last_level(&self) -> f64 {
        self.base().at + self.cap
    }

    /// The apex: the tip of the closing half ellipsoid.
    #[must_use]
    pub fn apex(&self) -> P3 {
        self.frame.point(V3::new(0.0, 0.0, self.last_level()))
    }

    /// Share of the full half-widths at a level; nothing outside the body.
    #[must_use]
    pub fn share(&self, level: f64) -> f64 {
        let base = self.base();
        if level < self.first_level() || level > base.at + self.cap {
            return 0.0;
        }
        if level >= base.at {
            let up = (level - base.at) / self.cap;
            return base.share * libm::sqrt((1.0 - up * up).max(0.0));
        }
        let piece = self.knots.windows(2).find(|pair| level <= pair[1].at);
        piece.map_or(base.share, |pair| {
            let way = (level - pair[0].at) / (pair[1].at - pair[0].at);
            pair[0].share + (pair[1].share - pair[0].share) * way
        })
    }

    /// Whether the point lies in the body or on its surface.
    #[must_use]
    pub fn contains(&self, point: P3) -> bool {
        let local = self.frame.local(point);
        let share = self.share(local.z);
        let (x, y) = (local.x / self.across, local.y / self.facial);
        share > 0.0 && x * x + y * y <= share * share
    }

    /// Where the line of the ray (t of either sign) lies in the body.
    #[must_use]
    pub fn ray(&self, ray: &Ray) -> Intervals {
        let from = self.scaled(self.frame.local(ray.origin));
        self.line(from, self.scaled(self.frame.turned(ray.direction)))
    }

    /// A local vector with its cross-section scaled so that the full section is a circle of radius 1.
    /// Linear, so bundles of lines are scaled once.
    #[inline]
    #[must_use]
    pub fn scaled(&self, local: V3) -> V3 {
        V3::new(local.x / self.across, local.y / self.facial, local.z)
    }

    /// Where a line that is given in scaled local coordinates lies in the body.
    #[must_use]
    pub fn line(&self, from: V3, step: V3) -> Intervals {
        let mut met = Intervals::empty();
        let parts = self.parts(from, step);
        let [(a, b), (c, d)] = if step.z < 0.0 { [parts[1], parts[0]] } else { parts };
        met.append(a, b);
        met.append(c, d);
        met
    }

    /// The same in two parts that do not overlap: where it lies in the frusta, and in the cap. A part
    /// that begins where it ends is empty.
    #[must_use]
    pub fn parts(&self, from: V3, step: V3) -> [(f64, f64); 2] {
        const NOWHERE: (f64, f64) = (0.0, 0.0);
        let Some((first, last)) = self.hull(from, step) else {
            return [NOWHERE; 2];
        };
        if step.z.abs() < 1e-12 {
            let share = self.share(from.z);
            let chord = within_circle(from, step, share, first, last);
            return [chord.unwrap_or(NOWHERE), NOWHERE];
        }
        let Some((cap, frusta)) = self.pieces.split_last() else {
            return [NOWHERE; 2];
        };
        let slowness = 1.0 / step.z;
        let pass = |piece: &Piece| piece.passed(from, slowness, first, last);
        let in_cap = pass(cap).and_then(|(t0, t1)| cap.line(from, step, t0, t1));
        let in_frusta = self.in_frusta(frusta, from, step, pass);
        [in_frusta.unwrap_or(NOWHERE), in_cap.unwrap_or(NOWHERE)]
    }

    /// Where the line lies in the frusta, which together are convex.
    fn in_frusta(
        &self,
        frusta: &[Piece],
        from: V3,
        step: V3,
        pass: impl Fn(&Piece) -> Option<(f64, f64)>,
    ) -> Option<(f64, f64)> {
        let whole = Piece { from: self.first_level(), to: self.base().at, ..*frusta.first()? };
        let (enters, leaves) = pass(&whole)?;
        let inside = |t: f64, piece: &Piece| {
            let (x, y, z) = (from.x + step.x * t, from.y + step.y * t, from.z + step.z * t);
            let share = piece.share + piece.slope * (z - piece.from);
            x * x + y * y <= share * share
        };
        let count = frusta.len();
        let apical = step.z > 0.0;
        let ordered = |turn: usize| &frusta[if apical { turn } else { count - 1 - turn }];
        // A line that begins inside stays inside until it leaves for good.
        let mut begins_inside = None;
        for turn in 0..count {
            let piece = ordered(turn);
            let Some((t0, t1)) = pass(piece) else { continue };
            if !*begins_inside.get_or_insert_with(|| inside(t0, piece)) {
                break;
            }
            if !inside(t1, piece) {
                let end = piece.line(from, step, t0, t1).map_or(t0, |(_, end)| end);
                return (enters < end).then_some((enters, end));
            }
        }
        if begins_inside == Some(true) {
            return Some((enters, leaves));
        }
        let mut met: Option<(f64, f64)> = None;
        let parts = frusta.iter().filter_map(|piece| {
            let (t0, t1) = pass(piece)?;
            piece.line(from, step, t0, t1)
        });
        for (t0, t1) in parts {
            met = Some(met.map_or((t0, t1), |(a, b)| (a.min(t0), b.max(t1))));
        }
        met
    }

    /// Where the line lies between the body's ends and, unless it runs along the axis, in the elliptic
    /// cylinder round the whole body.
    #[inline]
    fn hull(&self, from: V3, step: V3) -> Option<(f64, f64)> {
        const FAR: f64 = 1e6;
        let steep = step.z * step.z > step.x * step.x + step.y * step.y;
        let (mut first, mut last) = (-FAR, FAR);
        if !steep {
            let widest = self.knots[0].share.max(self.base().share);
            (first, last) = within_circle(from, step, widest, -FAR, FAR)?;
        }
        if step.z == 0.0 {
            let inside = self.first_level() <= from.z && from.z <= self.last_level();
            return inside.then_some((first, last));
        }
        let a = (self.first_level() - from.z) / step.z;
        let b = (self.last_level() - from.z) / step.z;
        let (first, last) = (first.max(a.min(b)), last.min(a.max(b)));
        (first < last).then_some((first, last))
    }

    /// Volume apical of a level along the axis, mm3; the whole volume from far coronally. Exact.
    #[must_use]
    pub fn volume_beyond(&self, level: f64) -> f64 {
        let section = ellipse::area(self.across, self.facial);
        let frusta: f64 = self
            .knots
            .windows(2)
            .map(|pair| {
                let from = level.clamp(pair[0].at, pair[1].at);
                let (s0, s1) = (self.share(from), pair[1].share);
                (pair[1].at - from) * (s0 * s0 + s0 * s1 + s1 * s1) / 3.0
            })
            .sum();
        let base = self.base();
        let up = ((level - base.at) / self.cap).clamp(0.0, 1.0);
        let cap = base.share * base.share * self.cap * (2.0 / 3.0 - up + up * up * up / 3.0);
        section * (frusta + cap)
    }

    /// Lateral area apical of a level along the axis, the cap included, mm2. The frusta exactly (the
    /// integral round separates and is a complete elliptic one), the cap by a Gauss rule.
    #[must_use]
    pub fn area_beyond(&self, level: f64) -> f64 {
        let (a, b) = (self.across, self.facial);
        let frusta: f64 = self
            .knots
            .windows(2)
            .map(|pair| {
                let from = level.clamp(pair[0].at, pair[1].at);
                let slope = (pair[1].share - pair[0].share) / (pair[1].at - pair[0].at);
                let lean = a * b * slope;
                let round = ellipse::root_of_squares(b * b + lean * lean, a * a + lean * lean);
                let mean = f64::midpoint(self.share(from), pair[1].share);
                round * mean * (pair[1].at - from)
            })
            .sum();
        let up = ((level - self.base().at) / self.cap).clamp(0.0, 1.0);
        frusta + self.cap_area(libm::asin(up))
    }

    /// Area of the half ellipsoid from a latitude (0 at its base) to its tip.
    fn cap_area(&self, from: f64) -> f64 {
        let share = self.base().share;
        let (a, b, c) = (self.across * share, self.facial * share, self.cap);
        // Surface element at latitude f: cos f * sqrt((ab sin f)^2 + cos^2 f ((bc cos)^2 + (ac sin)^2)).
        gauss(&GAUSS_8, from, core::f64::consts::FRAC_PI_2, |latitude| {
            let (sin, cos) = libm::sincos(latitude);
            let lid = a * b * sin * (a * b * sin);
            let (p, q) = (b * c * cos, a * c * cos);
            cos * ellipse::root_of_squares(lid + p * p, lid + q * q)
        })
    }

    /// The half-width of the section at the knot `i` in site coordinates: its distal-most and
    /// facial-most radii as vectors.
    #[must_use]
    pub fn radii(&self, share: f64) -> [V3; 2] {
        [self.frame.across * (self.across * share), self.frame.facial * (self.facial * share)]
    }

    /// The frusta as one convex body.
    #[must_use]
    pub const fn frusta(&self) -> Frusta<'_> {
        Frusta(self)
    }

    /// The closing half ellipsoid as a convex body.
    #[must_use]
    pub const fn cap(&self) -> Cap<'_> {
        Cap(self)
    }
}

impl Piece {
    /// The parameters at which a line passes the piece's levels, within two others.
    #[inline]
    fn passed(&self, from: V3, slowness: f64, first: f64, last: f64) -> Option<(f64, f64)> {
        let (a, b) = ((self.from - from.z) * slowness, (self.to - from.z) * slowness);
        let (a, b) = if a < b { (a, b) } else { (b, a) };
        let (enters, leaves) = (if a > first { a } else { first }, if b < last { b } else { last });
        (enters < leaves).then_some((enters, leaves))
    }

    /// Where a scaled line lies in the piece, between the parameters at which it passes its levels.
    fn line(&self, from: V3, step: V3, enters: f64, leaves: f64) -> Option<(f64, f64)> {
        let a = step.x * step.x + step.y * step.y;
        let b = from.x * step.x + from.y * step.y;
        let c = from.x * from.x + from.y * from.y;
        let (up, rise) = (self.slope * (from.z - self.from), self.slope * step.z);
        if self.is_cap {
            let c = c + up * up - self.share * self.share;
            return at_most_nothing(a + rise * rise, b + up * rise, c, enters, leaves);
        }
        let start = self.share + up;
        at_most_nothing(a - rise * rise, b - start * rise, c - start * start, enters, leaves)
    }
}

/// Where a scaled line lies in a circle about the axis.
#[inline]
fn within_circle(from: V3, step: V3, radius: f64, enters: f64, leaves: f64) -> Option<(f64, f64)> {
    let a = step.x * step.x + step.y * step.y;
    let b = from.x * step.x + from.y * step.y;
    let c = from.x * from.x + from.y * from.y - radius * radius;
    if a < 1e-24 {
        return (c <= 0.0).then_some((enters, leaves));
    }
    at_most_nothing(a, b, c, enters, leaves)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::convex::Convex;
    use crate::units::Deg;
    use core::f64::consts::PI;

    fn cone() -> Stack {
        let knots = vec![
            Knot { at: -2.0, share: 1.0 },
            Knot { at: 0.0, share: 1.0 },
            Knot { at: 6.0, share: 0.8 },
            Knot { at: 9.0, share: 0.5 },
        ];
        let frame = Frame::leaning(P3::new(0.5, -0.3, 0.0), Deg::new(14.0), Deg::new(-6.0));
        Stack::new(frame, 3.2, 2.6, knots, 1.0)
    }

    fn upright_cylinder() -> Stack {
        let knots = vec![Knot { at: 0.0, share: 1.0 }, Knot { at: 5.0, share: 1.0 }];
        let frame = Frame::on_axis(P3::new(0.0, 0.0, 0.0), V3::APICAL);
        Stack::new(frame, 2.0, 2.0, knots, 2.0)
    }

    #[test]
    fn a_cylinder_with_half_a_ball_on_it_is_known_by_heart() {
        let body = upright_cylinder();
        assert!((body.volume_beyond(-9.0) - (20.0 * PI + 16.0 * PI / 3.0)).abs() < 1e-12);
        assert!((body.area_beyond(-9.0) - (20.0 * PI + 8.0 * PI)).abs() < 1e-9);
        let along = Ray { origin: P3::new(0.0, 0.0, -1.0), direction: V3::APICAL };
        assert_eq!(body.ray(&along).as_slice().len(), 1);
        assert!((body.ray(&along).length() - 7.0).abs() < 1e-12);
    }

    #[test]
    fn the_ends_of_a_ray_lie_on_the_surface_and_its_middle_inside() {
        let body = cone();
        let mut met = 0;
        for i in 0..2000 {
            let turn = f64::from(i);
            let origin = P3::new(
                5.0 * libm::sin(turn * 0.7),
                5.0 * libm::cos(turn * 1.3),
                -3.0 + 14.0 * libm::fmod(turn * 0.618, 1.0),
            );
            let direction = V3::new(libm::cos(turn), libm::sin(turn * 2.1), libm::sin(turn * 0.3));
            let Some(direction) = direction.unit() else { continue };
            let ray = Ray { origin, direction };
            for part in body.ray(&ray).as_slice() {
                met += 1;
                assert!(body.contains(ray.at(f64::midpoint(part.from, part.to))));
                assert!(!body.contains(ray.at(part.from - 1e-6)), "{i}");
                assert!(!body.contains(ray.at(part.to + 1e-6)), "{i}");
            }
        }
        assert!(met > 500, "{met}");
    }

    #[test]
    fn volume_by_rays_agrees_with_the_closed_form() {
        let body = cone();
        let mut sum = 0.0;
        let step = 0.05;
        for i in -120..120 {
            for j in -80..280 {
                let origin = P3::new(f64::from(i) * step, 0.0, f64::from(j) * step);
                sum += body.ray(&Ray { origin, direction: V3::FACIAL }).length();
            }
        }
        let exact = body.volume_beyond(-9.0);
        assert!((sum * step * step / exact - 1.0).abs() < 2e-3, "{} {exact}", sum * step * step);
        let apical = body.volume_beyond(0.0);
        assert!((exact - apical - ellipse::area(3.2, 2.6) * 2.0).abs() < 1e-9);
    }

    #[test]
    fn the_area_of_a_tapering_stack_agrees_with_the_rate_at_which_its_volume_grows() {
        // Thickening the body by h adds area * h to first order (the flat coronal end apart).
        let body = upright_cylinder();
        let area_round = body.area_beyond(0.0);
        let h = 1e-5;
        let knots = vec![Knot { at: 0.0, share: 1.0 }, Knot { at: 5.0, share: 1.0 }];
        let thick = Stack::new(body.frame, 2.0 + h, 2.0 + h, knots, 2.0 + h);
        let growth = (thick.volume_beyond(0.0) - body.volume_beyond(0.0)) / h;
        assert!((growth - area_round).abs() < 1e-3, "{growth} {area_round}");
    }

    #[test]
    fn a_support_point_is_on_the_body_and_none_lies_farther() {
        let body = cone();
        for i in 0..300 {
            let turn = f64::from(i);
            let d = V3::new(libm::cos(turn), libm::sin(1.7 * turn), libm::sin(0.37 * turn));
            let far = [body.frusta().support(d), body.cap().support(d)];
            let reach =
                (far[0] - body.frame.origin).dot(d).max((far[1] - body.frame.origin).dot(d));
            for level in 0..120 {
                let level = -2.0 + f64::from(level) * 0.1;
                let share = body.share(level);
                let [x, y] = body.radii(share);
                for j in 0..12 {
                    let (sin, cos) = libm::sincos(f64::from(j) * PI / 6.0);
                    let point = body.frame.point(V3::new(0.0, 0.0, level)) + x * cos + y * sin;
                    assert!((point - body.frame.origin).dot(d) <= reach + 1e-9);
                }
            }
        }
    }
}
