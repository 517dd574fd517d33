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
