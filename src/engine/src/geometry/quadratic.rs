//! Where a quadratic along a ray is at most nothing.

/// The stretch of `[from, to]` on which `a t^2 + 2 b t + c <= 0`, for quadratics that a convex body
/// gives along a ray, so that the stretch is one interval. `None` when it is empty.
#[must_use]
#[inline]
pub fn at_most_nothing(a: f64, b: f64, c: f64, from: f64, to: f64) -> Option<(f64, f64)> {
    let proper = from < to;
    if !proper {
        return None;
    }
    let value = |t: f64| (a * t + 2.0 * b) * t + c;
    let (starts_inside, ends_inside) = (value(from) <= 0.0, value(to) <= 0.0);
    // Between two points of a convex body there is nothing but the body.
    if starts_inside && ends_inside {
        return Some((from, to));
    }
    if a > 0.0 {
        let (first, last) = roots(a, b, c)?;
        let (first, last) = (first.max(from), last.min(to));
        return (first < last).then_some((first, last));
    }
    // The quadratic bends down (or is straight): between two points where it is above nothing it
    // stays above it.
    if !starts_inside && !ends_inside {
        return None;
    }
    let root = root_between(a, b, c, from, to);
    let (first, last) = if starts_inside { (from, root) } else { (root, to) };
    (first < last).then_some((first, last))
}

/// Both roots of `a t^2 + 2 b t + c` in rising order, for `a > 0`, without cancellation.
fn roots(a: f64, b: f64, c: f64) -> Option<(f64, f64)> {
    let discriminant = b * b - a * c;
    let crosses = discriminant > 0.0;
    if !crosses {
        return None;
    }
    // A root is rounded rightly everywhere, and in WebAssembly std's is one instruction.
    let root = discriminant.sqrt();
    if b >= 0.0 {
        let q = -b - root;
        Some((q / a, c / q))
    } else {
        let q = -b + root;
        Some((c / q, q / a))
    }
}

/// The root between two ends of different sign; the nearer end when rounding hides it.
fn root_between(a: f64, b: f64, c: f64, from: f64, to: f64) -> f64 {
    let root = (b * b - a * c).max(0.0).sqrt();
    let q = if b >= 0.0 { -b - root } else { -b + root };
    let other = if q == 0.0 { from } else { c / q };
    let one = if a == 0.0 { other } else { q / a };
    let outside = |t: f64| (from - t).max(t - to).max(0.0);
    let best = if outside(one) < outside(other) { one } else { other };
    best.clamp(from, to)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_circle_is_met_between_its_roots() {
        // (t - 3)^2 - 4 <= 0.
        assert_eq!(at_most_nothing(1.0, -3.0, 5.0, -10.0, 10.0), Some((1.0, 5.0)));
        assert_eq!(at_most_nothing(1.0, -3.0, 5.0, 2.0, 4.0), Some((2.0, 4.0)));
        assert_eq!(at_most_nothing(1.0, -3.0, 5.0, 5.0, 9.0), None);
    }

    #[test]
    fn a_straight_line_and_a_bend_down_end_at_their_root() {
        assert_eq!(at_most_nothing(0.0, 1.0, -4.0, 0.0, 10.0), Some((0.0, 2.0)));
        // 4 - t^2 <= 0 beyond 2.
        assert_eq!(at_most_nothing(-1.0, 0.0, 4.0, 0.0, 10.0), Some((2.0, 10.0)));
    }

    #[test]
    fn roots_hold_against_the_quadratic_over_a_sweep() {
        for i in 0..400 {
            let (b, c) = (f64::from(i % 20) - 10.0, f64::from(i / 20) - 15.0);
            if let Some((first, last)) = at_most_nothing(0.5, b, c, -1e6, 1e6) {
                for t in [first, last] {
                    assert!(((0.5 * t + 2.0 * b) * t + c).abs() < 1e-9 * (1.0 + t * t));
                }
                let middle = f64::midpoint(first, last);
                assert!((0.5 * middle + 2.0 * b) * middle + c <= 0.0);
            }
        }
    }
}
