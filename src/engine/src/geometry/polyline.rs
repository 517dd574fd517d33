//! A piecewise linear function, and a ray's way over its pieces.

use super::P2;

/// The value at `x` of the polyline through knots with rising `x` (`P2::x`); beyond the ends the
/// value of the end goes on. Nothing where there is no knot.
#[must_use]
pub fn value(knots: &[P2], x: f64) -> f64 {
    let Some((first, last)) = knots.first().zip(knots.last()) else {
        return 0.0;
    };
    if x <= first.x {
        return first.y;
    }
    if x >= last.x {
        return last.y;
    }
    let piece = knots.windows(2).find(|pair| x <= pair[1].x);
    piece.map_or(last.y, |pair| on_piece(pair[0], pair[1], x))
}

fn on_piece(a: P2, b: P2, x: f64) -> f64 {
    a.y + (b.y - a.y) * ((x - a.x) / (b.x - a.x))
}

/// Walks the pieces that `x(t) = start + rate t` passes for t from `from` to `to`, in rising t, and
/// calls `visit(t0, t1, value, slope)`: between t0 and t1 the polyline's value is
/// `value + slope * t`.
pub fn along(
    knots: &[P2],
    (start, rate): (f64, f64),
    (from, to): (f64, f64),
    mut visit: impl FnMut(f64, f64, f64, f64),
) {
    let (Some(first), Some(last)) = (knots.first(), knots.last()) else {
        return;
    };
    if rate.abs() < 1e-12 {
        visit(from, to, value(knots, start), 0.0);
        return;
    }
    let slowness = 1.0 / rate;
    let time = |x: f64| (x - start) * slowness;
    let ends = [(time(first.x), first.y), (time(last.x), last.y)];
    let [(enters, before), (leaves, after)] = if rate > 0.0 { ends } else { [ends[1], ends[0]] };
    if from < enters {
        visit(from, to.min(enters), before, 0.0);
    }
    let pieces = knots.len() - 1;
    let (x0, x1) = (start + rate * from, start + rate * to);
    let (least, most) = (x0.min(x1), x0.max(x1));
    for turn in 0..pieces {
        let piece = if rate > 0.0 { turn } else { pieces - 1 - turn };
        let (a, b) = (knots[piece], knots[piece + 1]);
        // Most pieces are not passed at all; that is seen without dividing.
        if b.x < least || a.x > most {
            continue;
        }
        let (ta, tb) = (time(a.x), time(b.x));
        let (t0, t1) = (ta.min(tb).max(from), ta.max(tb).min(to));
        if t0 < t1 {
            let slope = (b.y - a.y) / (b.x - a.x);
            visit(t0, t1, a.y + slope * (start - a.x), slope * rate);
        }
    }
    if leaves < to {
        visit(leaves.max(from), to, after, 0.0);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const TENT: [P2; 3] = [P2::new(-1.0, 0.0), P2::new(0.0, 2.0), P2::new(4.0, -2.0)];

    #[test]
    fn a_value_lies_on_its_piece_and_goes_on_beyond_the_ends() {
        for (x, expected) in [(-5.0, 0.0), (-0.5, 1.0), (0.0, 2.0), (1.0, 1.0), (9.0, -2.0)] {
            assert!((value(&TENT, x) - expected).abs() < 1e-15, "{x}");
        }
    }

    #[test]
    fn the_pieces_along_a_ray_cover_it_and_give_its_values() {
        for (start, rate) in [(-3.0, 1.0), (6.0, -0.7), (0.3, 0.0), (2.0, 0.01)] {
            let mut reached = -2.0;
            along(&TENT, (start, rate), (-2.0, 11.0), |t0, t1, at, slope| {
                assert!((t0 - reached).abs() < 1e-12, "{t0} {reached}");
                reached = t1;
                for t in [t0, f64::midpoint(t0, t1), t1] {
                    let expected = value(&TENT, start + rate * t);
                    assert!((at + slope * t - expected).abs() < 1e-9, "{start} {rate} {t}");
                }
            });
            assert!((reached - 11.0).abs() < 1e-12);
        }
    }
}
