//! A stack's convex parts, for distances: its frusta, and its cap.

use super::convex::Convex;
use super::stack::{Knot, Stack};
use super::{P3, V3};

/// The frusta of a stack without its cap. Convex where the shares bend inwards.
#[derive(Debug, Clone, Copy)]
pub struct Frusta<'a>(pub(super) &'a Stack);

/// The cap of a stack.
#[derive(Debug, Clone, Copy)]
pub struct Cap<'a>(pub(super) &'a Stack);

impl Stack {
    /// A bound of how far what lies apical of the site's level `z` reaches along a unit vector that is
    /// square to z; minus infinity where nothing does. Never less than the truth. Millimetres.
    #[must_use]
    pub fn reach_apical_of(&self, z: f64, towards: V3) -> f64 {
        let frame = &self.frame;
        let d = frame.turned(towards);
        let upright = frame.along.z;
        let widest = self.knots().iter().map(|knot| knot.share).fold(0.0, f64::max);
        let widest = widest * self.across.max(self.facial);
        // A section leans, so a part of it lies apical of its middle.
        let leans = widest * libm::sqrt((1.0 - upright * upright).max(0.0));
        let level = (z - leans - frame.origin.z) / upright.max(0.1);
        let level = if upright < 0.1 { f64::NEG_INFINITY } else { level.max(self.first_level()) };
        if level > self.last_level() {
            return f64::NEG_INFINITY;
        }
        let start = (frame.origin - P3::new(0.0, 0.0, 0.0)).dot(towards);
        let round = libm::sqrt(
            self.across * self.across * d.x * d.x + self.facial * self.facial * d.y * d.y,
        );
        let section = |at: f64, share: f64| start + at * d.z + share * round;
        let beyond = self.knots().iter().filter(|knot| knot.at >= level);
        let knots = beyond.map(|knot| section(knot.at, knot.share));
        let first = self.share(level.max(self.first_level()));
        let here = section(level.max(self.first_level()), first);
        let cap = section(self.last_level(), first.min(self.base().share));
        knots.fold(here.max(cap), f64::max)
    }
}

impl Convex for Frusta<'_> {
    fn support(&self, towards: V3) -> P3 {
        let stack = self.0;
        let d = stack.frame.turned(towards);
        let (p, q) = (stack.across * d.x, stack.facial * d.y);
        let reach = libm::sqrt(p * p + q * q);
        let score = |knot: &Knot| knot.share * reach + knot.at * d.z;
        let mut best = stack.base();
        let mut most = score(&best);
        for knot in stack.knots() {
            let here = score(knot);
            if here > most {
                (best, most) = (*knot, here);
            }
        }
        let side = if reach > 0.0 { best.share / reach } else { 0.0 };
        stack.frame.point(V3::new(stack.across * p * side, stack.facial * q * side, best.at))
    }
}

impl Convex for Cap<'_> {
    fn support(&self, towards: V3) -> P3 {
        let stack = self.0;
        let base = stack.base();
        let d = stack.frame.turned(towards);
        let (a, b) = (stack.across * base.share, stack.facial * base.share);
        let cap = stack.last_level() - base.at;
        let up = d.z.max(0.0) * cap;
        let (p, q) = (a * d.x, b * d.y);
        let reach = libm::sqrt(p * p + q * q + up * up);
        let side = if reach > 0.0 { 1.0 / reach } else { 0.0 };
        let lift = base.at + cap * up * side;
        stack.frame.point(V3::new(a * p * side, b * q * side, lift))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::{Frame, Ray};
    use crate::units::Deg;

    #[test]
    fn nothing_apical_of_a_level_reaches_farther_than_is_said_and_it_is_said_closely() {
        let frame = Frame::leaning(P3::new(0.4, -0.7, 1.0), Deg::new(14.0), Deg::new(-9.0));
        let knot = |at, share| Knot { at, share };
        let knots = vec![knot(-2.0, 1.0), knot(3.0, 0.95), knot(8.0, 0.7), knot(12.0, 0.45)];
        let root = Stack::new(frame, 3.2, 3.6, knots, 1.5);
        for towards in [V3::FACIAL, -V3::FACIAL] {
            for i in 0..14 {
                let from = f64::from(i);
                let said = root.reach_apical_of(from, towards);
                let mut most = f64::NEG_INFINITY;
                for j in 0..200 {
                    for k in 0..60 {
                        let (z, x) = (from + f64::from(j) * 0.08, f64::from(k) * 0.15 - 4.5);
                        let ray = Ray { origin: P3::new(x, 0.0, z), direction: towards };
                        most = root.ray(&ray).last().map_or(most, |part| most.max(part.to));
                    }
                }
                assert!(most <= said + 1e-9, "{i} {most} {said}");
                assert!(most < -10.0 || said - most < 1.6, "{i} {most} {said}");
            }
        }
    }
}
