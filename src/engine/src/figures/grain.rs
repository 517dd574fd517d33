//! Dots and grains, strewn evenly and always the same.
//!
//! Places come from the additive recurrence on the plastic number (Roberts, *The unreasonable
//! effectiveness of quasirandom sequences*, 2018): no generator, no seed, and no clumps, which is
//! what a stippler's hand aims for.

use super::curve::Region;
use crate::geometry::P2;

/// 1 / plastic number, and its square.
const STEPS: [f64; 2] = [0.754_877_666_246_692_8, 0.569_840_290_998_053_2];

/// The `k`th place in the unit square.
fn place(k: u32) -> P2 {
    let part = |step: f64| (0.5 + f64::from(k) * step) % 1.0;
    P2::new(part(STEPS[0]), part(STEPS[1]))
}

/// Dots within an area. `density` gives dots for a square millimetre at a place and is nowhere
/// greater than `densest`.
pub(super) fn stipple(rings: &[Vec<P2>], densest: f64, density: impl Fn(P2) -> f64) -> Vec<P2> {
    const MOST: f64 = 6000.0;
    let Some(region) = Region::of(rings) else {
        return Vec::new();
    };
    let (least, most) = (region.least, region.most);
    // The pattern is fixed to the plane, in tiles, so that dots stay put when an outline moves.
    const TILE: f64 = 8.0;
    let in_tile = (densest * TILE * TILE).clamp(0.0, MOST);
    let (from_x, from_y) = (libm::floor(least.x / TILE), libm::floor(least.y / TILE));
    let (to_x, to_y) = (libm::ceil(most.x / TILE), libm::ceil(most.y / TILE));
    let mut dots = Vec::new();
    let mut row = from_y;
    while row < to_y {
        let mut column = from_x;
        while column < to_x {
            let mut k = 0;
            while f64::from(k) < in_tile {
                let unit = place(k);
                let at = P2::new((column + unit.x) * TILE, (row + unit.y) * TILE);
                // The threshold follows the count, so a thinner place keeps an even subset.
                if region.holds(at) && f64::from(k) < density(at) * TILE * TILE {
                    dots.push(at);
                }
                k += 1;
            }
            column += 1.0;
        }
        row += 1.0;
    }
    dots
}

/// Grains of graft at true size, between `least` and `most` millimetres across, packed until no
/// further one finds room. Each is a ring of five to seven corners and lies in the region, save where
/// `is_taken` says that something else is there.
pub(super) fn grains(
    region: &Region,
    [least, most]: [f64; 2],
    is_taken: impl Fn(P2) -> bool,
) -> Vec<Vec<P2>> {
    const TRIES: f64 = 2200.0;
    let (low, high) = (region.least, region.most);
    let span = P2::new(high.x - low.x, high.y - low.y);
    let mean = 0.5 * (least + most);
    let tries = (6.0 * span.x * span.y / (mean * mean)).clamp(40.0, TRIES);
    let mut placed: Vec<(P2, f64)> = Vec::new();
    let mut k = 0;
    while f64::from(k) < tries {
        let unit = place(k);
        let at = P2::new(low.x + unit.x * span.x, low.y + unit.y * span.y);
        // Big grains first, then what fits between them.
        let share = 1.0 - f64::from(k) / tries;
        let wobble = (f64::from(k) * 0.618_033_988_749_894_9) % 1.0;
        let radius = 0.5 * (least + (most - least) * (0.65 * share + 0.35 * wobble));
        let free = |at: P2| region.holds(at) && !is_taken(at);
        let clear = |(other, r): &(P2, f64)| {
            let (x, y, apart) = (other.x - at.x, other.y - at.y, 0.97 * (radius + r));
            x * x + y * y >= apart * apart
        };
        if free(at) && placed.iter().all(clear) && rim(at, radius).all(free) {
            placed.push((at, radius));
        }
        k += 1;
    }
    placed.into_iter().enumerate().map(|(n, (at, radius))| chip(at, radius, n)).collect()
}

fn rim(at: P2, radius: f64) -> impl Iterator<Item = P2> {
    (0..8).map(move |k| {
        let angle = core::f64::consts::TAU * f64::from(k) / 8.0;
        P2::new(at.x + 0.85 * radius * libm::cos(angle), at.y + 0.85 * radius * libm::sin(angle))
    })
}

/// A chip of bone: its corners lie on the circle of its size or a little within.
fn chip(at: P2, radius: f64, number: usize) -> Vec<P2> {
    let number = u32::try_from(number % 9973).unwrap_or(0);
    let corners = 5 + number % 3;
    let turn = (f64::from(number) * 0.618_033_988_749_894_9) % 1.0 * core::f64::consts::TAU;
    (0..corners)
        .map(|k| {
            let uneven = (f64::from(number * 7 + k * 3) * STEPS[0]) % 1.0;
            let angle =
                turn + core::f64::consts::TAU * (f64::from(k) + 0.35 * uneven) / f64::from(corners);
            let reach = radius * (0.78 + 0.22 * uneven);
            P2::new(at.x + reach * libm::cos(angle), at.y + reach * libm::sin(angle))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn square(side: f64) -> Vec<Vec<P2>> {
        vec![
            [(0.0, 0.0), (side, 0.0), (side, side), (0.0, side)]
                .map(|(x, y)| P2::new(x, y))
                .to_vec(),
        ]
    }

    #[test]
    fn as_many_dots_as_asked_fall_on_a_square_millimetre() {
        let dots = stipple(&square(16.0), 5.0, |_| 5.0);
        let found = dots.len() as f64 / 256.0;
        assert!((found - 5.0).abs() < 0.1, "{found}");
    }

    #[test]
    fn a_dot_stays_put_when_the_outline_grows() {
        let small = stipple(&square(6.0), 4.0, |_| 4.0);
        let large = stipple(&square(7.0), 4.0, |_| 4.0);
        assert!(small.iter().all(|dot| large.contains(dot)));
        assert!(large.len() > small.len());
    }

    #[test]
    fn grains_keep_their_size_and_do_not_overlap() {
        let chips = grains(&Region::of(&square(5.0)).unwrap(), [0.25, 1.0], |_| false);
        assert!(chips.len() > 20, "{}", chips.len());
        for chip in &chips {
            let across = chip
                .iter()
                .flat_map(|a| chip.iter().map(move |b| libm::hypot(a.x - b.x, a.y - b.y)))
                .fold(0.0, f64::max);
            assert!((0.15..=1.0).contains(&across), "{across}");
        }
    }

    #[test]
    fn no_grain_lies_where_nothing_may_lie() {
        let chips = grains(&Region::of(&square(5.0)).unwrap(), [0.25, 1.0], |at| at.x <= 2.5);
        assert!(chips.iter().flatten().all(|corner| corner.x > 2.3));
    }
}
