//! Lesser and greater of two numbers, by a comparison: `f64::min` and `f64::max` weigh numbers that are
//! none, which in WebAssembly costs a call each, and rays ask by the million. And boxes.

use crate::geometry::{P3, Ray};

/// The lesser; the second where one is no number.
#[inline]
#[must_use]
pub const fn lesser(a: f64, b: f64) -> f64 {
    if a < b { a } else { b }
}

/// The greater; the second where one is no number.
#[inline]
#[must_use]
pub const fn greater(a: f64, b: f64) -> f64 {
    if a > b { a } else { b }
}

/// Least and greatest corner.
pub type Bounds = [P3; 2];

/// A box round two boxes.
#[must_use]
pub const fn joined([a, b]: Bounds, [c, d]: Bounds) -> Bounds {
    [
        P3::new(lesser(a.x, c.x), lesser(a.y, c.y), lesser(a.z, c.z)),
        P3::new(greater(b.x, d.x), greater(b.y, d.y), greater(b.z, d.z)),
    ]
}

/// Whether two boxes have nothing in common.
#[inline]
#[must_use]
pub const fn apart([a, b]: &Bounds, [c, d]: &Bounds) -> bool {
    a.x > d.x || b.x < c.x || a.z > d.z || b.z < c.z || a.y > d.y || b.y < c.y
}

/// What of a stretch of the ray lies in a box.
#[inline]
#[must_use]
pub fn clip([low, high]: Bounds, ray: &Ray, from: f64, to: f64) -> Option<(f64, f64)> {
    let (o, d) = (ray.origin, ray.direction);
    let (mut from, mut to) = (from, to);
    for (start, rate, low, high) in
        [(o.x, d.x, low.x, high.x), (o.y, d.y, low.y, high.y), (o.z, d.z, low.z, high.z)]
    {
        if rate.abs() < 1e-12 {
            if start < low || start > high {
                return None;
            }
            continue;
        }
        let slowness = 1.0 / rate;
        let (a, b) = ((low - start) * slowness, (high - start) * slowness);
        let (first, last) = if a < b { (a, b) } else { (b, a) };
        (from, to) = (greater(from, first), lesser(to, last));
    }
    (from < to).then_some((from, to))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::V3;

    const UNIT: Bounds = [P3::new(0.0, 0.0, 0.0), P3::new(1.0, 1.0, 1.0)];

    #[test]
    fn a_ray_is_clipped_to_the_box_that_it_passes() {
        let through = Ray { origin: P3::new(-1.0, 0.5, 0.5), direction: V3::DISTAL };
        assert_eq!(clip(UNIT, &through, 0.0, 9.0), Some((1.0, 2.0)));
        assert_eq!(clip(UNIT, &through, 1.5, 9.0), Some((1.5, 2.0)));
        let beside = Ray { origin: P3::new(-1.0, 1.5, 0.5), direction: V3::DISTAL };
        assert_eq!(clip(UNIT, &beside, 0.0, 9.0), None);
    }

    #[test]
    fn boxes_are_joined_and_told_apart() {
        let other = [P3::new(2.0, 0.0, 0.0), P3::new(3.0, 0.5, 4.0)];
        assert!(apart(&UNIT, &other));
        let both = joined(UNIT, other);
        assert_eq!(both, [P3::new(0.0, 0.0, 0.0), P3::new(3.0, 1.0, 4.0)]);
        assert!(!apart(&both, &other) && !apart(&UNIT, &both));
    }
}
