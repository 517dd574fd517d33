//! Lengths and areas of ellipses.

use core::f64::consts::{FRAC_PI_2, PI};

/// The area of an ellipse from its half-widths, mm2.
#[must_use]
pub const fn area(a: f64, b: f64) -> f64 {
    PI * a * b
}

/// The whole way round an ellipse, mm.
#[must_use]
pub fn perimeter(a: f64, b: f64) -> f64 {
    root_of_squares(a * a, b * b)
}

/// The integral over a full turn of `sqrt(p cos^2 + q sin^2)`, for p, q >= 0: a complete elliptic
/// integral of the second kind, by the arithmetic-geometric mean (Abramowitz and Stegun 17.6).
#[must_use]
pub fn root_of_squares(p: f64, q: f64) -> f64 {
    let (large, small) = if p < q { (q, p) } else { (p, q) };
    if large <= 0.0 {
        return 0.0;
    }
    if small <= 0.0 {
        return 4.0 * libm::sqrt(large);
    }
    let (mut a, mut g) = (1.0, libm::sqrt(small / large));
    let mut difference = 0.5 * (1.0 - small / large);
    let mut power = 0.5;
    // Each step doubles the digits; seven are more than a double holds.
    for _ in 0..7 {
        let (mean, half) = (f64::midpoint(a, g), 0.5 * (a - g));
        power *= 2.0;
        difference += power * half * half;
        g = libm::sqrt(a * g);
        a = mean;
    }
    4.0 * libm::sqrt(large) * (FRAC_PI_2 / a) * (1.0 - difference)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_circle_and_a_flat_ellipse_are_plain() {
        assert!((perimeter(2.0, 2.0) - 4.0 * PI).abs() < 1e-12);
        assert!((perimeter(3.0, 0.0) - 12.0).abs() < 1e-12);
        assert!((area(2.0, 3.0) - 6.0 * PI).abs() < 1e-12);
    }

    #[test]
    fn the_perimeter_agrees_with_a_sum_of_chords() {
        for (a, b) in [(3.2, 3.0), (1.0, 4.0), (2.35, 2.9)] {
            let point = |i: u32| {
                let (sin, cos) = libm::sincos(2.0 * PI * f64::from(i) / 20_000.0);
                (a * cos, b * sin)
            };
            let chords: f64 = (0..20_000)
                .map(|i| {
                    let ((x0, y0), (x1, y1)) = (point(i), point(i + 1));
                    libm::sqrt((x1 - x0) * (x1 - x0) + (y1 - y0) * (y1 - y0))
                })
                .sum();
            assert!((perimeter(a, b) - chords).abs() < 1e-5, "{a} {b}");
        }
    }
}
