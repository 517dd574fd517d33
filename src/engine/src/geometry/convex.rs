//! Distance between convex bodies, each known only by its farthest point in a direction.
//!
//! The method of Gilbert, Johnson and Keerthi (IEEE J Robotics Automation 1988;4:193): walk over
//! simplices of the difference of both bodies towards the origin. The lower bound that it yields at
//! each step says when to stop.

use super::{P3, V3};

/// A convex body.
pub trait Convex {
    /// Its farthest point in a direction (any length but null).
    fn support(&self, towards: V3) -> P3;
}

impl Convex for P3 {
    fn support(&self, _towards: V3) -> P3 {
        *self
    }
}

/// A straight segment between two points.
impl Convex for [P3; 2] {
    fn support(&self, towards: V3) -> P3 {
        if (self[1] - self[0]).dot(towards) > 0.0 { self[1] } else { self[0] }
    }
}

/// A body moved by a vector.
#[derive(Debug, Clone, Copy)]
pub struct Moved<'a, B: Convex>(pub &'a B, pub V3);

impl<B: Convex> Convex for Moved<'_, B> {
    fn support(&self, towards: V3) -> P3 {
        self.0.support(towards) + self.1
    }
}

/// Steps after which the walk stops at what it has; smooth bodies need ten to twenty.
const MOST_STEPS: usize = 64;
/// How far the result may lie above the true distance, as a share of it.
const SLACK: f64 = 1e-7;

/// Least distance between two convex bodies, mm; 0 where they touch or overlap. Never below the true
/// distance, and above it by a ten-millionth at most.
#[must_use]
pub fn distance(a: &impl Convex, b: &impl Convex) -> f64 {
    separation(a, b).length()
}

/// The shortest vector from `b` to `a`; null where they touch or overlap.
#[must_use]
pub fn separation(a: &impl Convex, b: &impl Convex) -> V3 {
    const NULL: V3 = V3::new(0.0, 0.0, 0.0);
    let farthest = |towards: V3| a.support(towards) - b.support(-towards);
    let mut nearest = farthest(V3::DISTAL);
    let mut simplex = Simplex { corners: [nearest; 4], count: 1 };
    for _ in 0..MOST_STEPS {
        let squared = nearest.dot(nearest);
        if squared < 1e-18 {
            return NULL;
        }
        let corner = farthest(-nearest);
        if squared - nearest.dot(corner) <= SLACK * squared || simplex.has(corner) {
            break;
        }
        simplex.add(corner);
        let next = simplex.reduce();
        if simplex.count == 4 {
            return NULL;
        }
        // Rounding can only make the walk stand still or step back; then it has arrived.
        if next.dot(next) >= squared {
            break;
        }
        nearest = next;
    }
    nearest
}

/// How far `b` must move along the unit vector `away` until it no longer overlaps `a`, mm; 0 when it
/// does not overlap now. `farthest` is a move that surely parts them. By conservative advancement
/// from there.
#[must_use]
pub fn overlap_along(a: &impl Convex, b: &impl Convex, away: V3, farthest: f64) -> f64 {
    const ARRIVED: f64 = 1e-5;
    let mut moved = farthest;
    for _ in 0..MOST_STEPS {
        let gap = separation(&Moved(b, away * moved), a);
        let length = gap.length();
        let closing = gap.dot(away) / length.max(1e-12);
        if length < ARRIVED {
            break;
        }
        if closing <= 1e-6 {
            return 0.0;
        }
        moved -= length / closing;
        if moved <= 0.0 {
            return 0.0;
        }
    }
    moved
}

#[derive(Clone, Copy)]
struct Simplex {
    corners: [V3; 4],
    count: usize,
}

impl Simplex {
    fn has(&self, corner: V3) -> bool {
        self.corners[..self.count].contains(&corner)
    }

    fn add(&mut self, corner: V3) {
        self.corners[self.count] = corner;
        self.count += 1;
    }

    fn set(&mut self, corners: &[V3]) {
        self.corners[..corners.len()].copy_from_slice(corners);
        self.count = corners.len();
    }

    /// Keeps the corners of the face nearest to the origin and returns its nearest point. All four
    /// stay when the origin lies inside.
    fn reduce(&mut self) -> V3 {
        match self.count {
            2 => self.reduce_edge(),
            3 => self.reduce_face(),
            4 => self.reduce_solid(),
            _ => self.corners[0],
        }
    }

    fn reduce_edge(&mut self) -> V3 {
        let [a, b, ..] = self.corners;
        let edge = b - a;
        let way = -a.dot(edge);
        let whole = edge.dot(edge);
        if way <= 0.0 || whole <= 0.0 {
            self.set(&[a]);
            a
        } else if way >= whole {
            self.set(&[b]);
            b
        } else {
            a + edge * (way / whole)
        }
    }

    /// The regions of a triangle, by the signs of the corners' projections.
    fn reduce_face(&mut self) -> V3 {
        let [a, b, c, _] = self.corners;
        let (ab, ac) = (b - a, c - a);
        let (d1, d2) = (-ab.dot(a), -ac.dot(a));
        let (d3, d4) = (-ab.dot(b), -ac.dot(b));
        let (d5, d6) = (-ab.dot(c), -ac.dot(c));
        let (va, vb, vc) = (d3 * d6 - d5 * d4, d5 * d2 - d1 * d6, d1 * d4 - d3 * d2);
        let sum = va + vb + vc;
        let inside = va > 0.0 && vb > 0.0 && vc > 0.0;
        if inside && sum > 0.0 {
            return a + ab * (vb / sum) + ac * (vc / sum);
        }
        let mut best: Option<(Self, V3)> = None;
        for pair in [[a, b], [a, c], [b, c]] {
            let mut edge = Self { corners: self.corners, count: 0 };
            edge.set(&pair);
            let point = edge.reduce_edge();
            if best.as_ref().is_none_or(|(_, kept)| point.dot(point) < kept.dot(*kept)) {
                best = Some((edge, point));
            }
        }
        best.map_or(a, |(edge, point)| {
            *self = edge;
            point
        })
    }

    fn reduce_solid(&mut self) -> V3 {
        let [a, b, c, d] = self.corners;
        let mut best: Option<(Self, V3)> = None;
        let mut outside = false;
        for (face, across) in [([a, b, c], d), ([a, c, d], b), ([a, d, b], c), ([b, d, c], a)] {
            let normal = (face[1] - face[0]).cross(face[2] - face[0]);
            let side = -face[0].dot(normal);
            let other = (across - face[0]).dot(normal);
            if side * other > 0.0 {
                continue;
            }
            outside = true;
            let mut triangle = Self { corners: self.corners, count: 0 };
            triangle.set(&face);
            let point = triangle.reduce_face();
            if best.as_ref().is_none_or(|(_, kept)| point.dot(point) < kept.dot(*kept)) {
                best = Some((triangle, point));
            }
        }
        match best {
            Some((triangle, point)) if outside => {
                *self = triangle;
                point
            }
            _ => V3::new(0.0, 0.0, 0.0),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    struct Ball(P3, f64);
    impl Convex for Ball {
        fn support(&self, towards: V3) -> P3 {
            self.0 + towards.unit().unwrap_or(V3::APICAL) * self.1
        }
    }

    struct Box(P3, V3);
    impl Convex for Box {
        fn support(&self, d: V3) -> P3 {
            let pick = |half: f64, part: f64| if part >= 0.0 { half } else { -half };
            self.0 + V3::new(pick(self.1.x, d.x), pick(self.1.y, d.y), pick(self.1.z, d.z))
        }
    }

    #[test]
    fn two_balls_are_apart_by_their_centres_less_their_radii() {
        for i in 0..200 {
            let turn = f64::from(i);
            let (a, b) = (
                Ball(P3::new(0.0, 0.0, 0.0), 1.5),
                Ball(P3::new(4.0 * libm::cos(turn), 3.0 * libm::sin(turn), 0.02 * turn), 0.7),
            );
            let expected = ((b.0 - a.0).length() - 2.2).max(0.0);
            assert!((distance(&a, &b) - expected).abs() < 2e-6, "{i} {expected}");
        }
    }

    #[test]
    fn two_boxes_are_apart_by_their_faces_edges_or_corners() {
        let unit = V3::new(1.0, 1.0, 1.0);
        let origin = Box(P3::new(0.0, 0.0, 0.0), unit);
        for (at, expected) in [
            ((5.0, 0.5, 0.2), 3.0),
            ((5.0, 6.0, 0.2), 5.0),
            ((4.0, 4.0, 3.0), 3.0),
            ((1.5, 1.5, 1.5), 0.0),
        ] {
            let other = Box(P3::new(at.0, at.1, at.2), unit);
            assert!((distance(&origin, &other) - expected).abs() < 1e-6, "{at:?}");
        }
    }

    #[test]
    fn the_move_that_parts_two_balls_is_found() {
        let a = Ball(P3::new(0.0, 0.0, 0.0), 2.0);
        let b = Ball(P3::new(1.0, 0.0, 0.0), 1.0);
        let moved = overlap_along(&a, &b, V3::DISTAL, 20.0);
        assert!((moved - 2.0).abs() < 1e-4, "{moved}");
        let aside = overlap_along(&a, &Ball(P3::new(1.0, 1.8, 0.0), 1.0), V3::DISTAL, 20.0);
        assert!((aside - (libm::sqrt(9.0 - 3.24) - 1.0)).abs() < 1e-4, "{aside}");
    }
}
