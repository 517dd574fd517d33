//! Seating torque about its estimate: the same bed seats one implant firmer than the next.
//!
//! *Teaching model.* The spread is that of the series which the estimate is tied to, 7 Ncm about
//! 39.7 (158 implants, Turkyilmaz 2006; confirmed, `ledger: bone-density-classes`); the others gave 8
//! about 36.1 and 12 to 15 about 27 to 28. They hold the spread of density as well, so the least is
//! taken. A low torque cannot spread by more than the widest of them in proportion, 12.1 of 27.2; that
//! no draw lies past two deviations is ours.

use super::{Chance, Matter};
use crate::chart::Case;

/// Deviation of the series, Ncm.
const SPREAD: f64 = 7.0;
/// Deviation over mean where a series was widest.
const WIDEST: f64 = 12.1 / 27.2;
/// How many deviations a draw may lie off.
const FARTHEST: f64 = 2.0;

/// Which implant of a case is seated: each has a chance of its own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Turn {
    /// The first of the day.
    First,
    /// The one that was seated in its place.
    Second,
    /// The one in the healed site.
    Late,
}

/// The torque that shows, Ncm, where `estimate` is expected of this implant of the case. It rises with
/// the estimate, and is 0 where that is.
#[must_use]
pub fn shown_torque(case: &Case, estimate: f64, turn: Turn) -> f64 {
    let mut chance = Chance::of(case, Matter::Torque);
    let [first, second, late] = [0; 3].map(|_| chance.standard());
    let off = match turn {
        Turn::First => first,
        Turn::Second => second,
        Turn::Late => late,
    };
    let spread = SPREAD.min(WIDEST * estimate);
    (estimate + spread * off.clamp(-FARTHEST, FARTHEST)).max(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::rules::trial::Trial;

    fn cases() -> impl Iterator<Item = Case> {
        let case = Trial::plain().case;
        (0..2000).map(move |n| Case { title: n.to_string(), ..case.clone() })
    }

    #[test]
    fn it_spreads_as_the_series_does() {
        for turn in [Turn::First, Turn::Second, Turn::Late] {
            spreads_as_the_series(turn);
        }
    }

    fn spreads_as_the_series(turn: Turn) {
        let shown: Vec<f64> = cases().map(|case| shown_torque(&case, 39.7, turn)).collect();
        let mean = shown.iter().sum::<f64>() / 2000.0;
        let square = shown.iter().map(|one| (one - mean) * (one - mean)).sum::<f64>() / 2000.0;
        // A normal deviate clamped at two deviations keeps 0.96 of its spread.
        assert!((mean - 39.7).abs() < 0.7 && (square.sqrt() - 6.7).abs() < 0.5, "{mean} {square}");
        assert!(shown.iter().all(|one| (25.7..=53.7).contains(one)));
    }

    #[test]
    fn it_rises_with_the_estimate_and_begins_at_nothing() {
        for case in cases().take(50) {
            assert_eq!(shown_torque(&case, 0.0, Turn::First).to_bits(), 0.0_f64.to_bits());
            let rise: Vec<f64> =
                (0..60).map(|n| shown_torque(&case, f64::from(n), Turn::Second)).collect();
            assert!(rise.windows(2).all(|pair| pair[0] < pair[1]));
        }
    }

    #[test]
    fn one_in_four_of_a_weak_bed_turns_and_next_to_none_of_a_firm_one() {
        let turns =
            |estimate| cases().filter(|c| shown_torque(c, estimate, Turn::First) < 10.0).count();
        // P(z < -0.749) = 0.227 of 2000; four standard deviations of that count are 75.
        assert!(turns(15.0).abs_diff(454) < 75, "{}", turns(15.0));
        assert_eq!(turns(30.0), 0);
    }
}
