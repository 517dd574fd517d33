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

/// The torque that shows, Ncm, where `estimate` is expected: of the first implant of this case, or of
/// the one that was seated in its place. It rises with the estimate, and is 0 where that is.
#[must_use]
pub fn shown_torque(case: &Case, estimate: f64, second: bool) -> f64 {
    let mut chance = Chance::of(case, Matter::Torque);
    let [first, again] = [chance.standard(), chance.standard()];
    let off = if second { again } else { first };
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
        let shown: Vec<f64> = cases().map(|case| shown_torque(&case, 39.7, false)).collect();
        let mean = shown.iter().sum::<f64>() / 2000.0;
        let square = shown.iter().map(|one| (one - mean) * (one - mean)).sum::<f64>() / 2000.0;
        // A normal deviate clamped at two deviations keeps 0.96 of its spread.
        assert!((mean - 39.7).abs() < 0.7 && (square.sqrt() - 6.7).abs() < 0.5, "{mean} {square}");
        assert!(shown.iter().all(|one| (25.7..=53.7).contains(one)));
    }

    #[test]
    fn it_rises_with_the_estimate_and_begins_at_nothing() {
        for case in cases().take(50) {
            assert_eq!(shown_torque(&case, 0.0, false).to_bits(), 0.0_f64.to_bits());
            let rise: Vec<f64> = (0..60).map(|n| shown_torque(&case, f64::from(n), true)).collect();
            assert!(rise.windows(2).all(|pair| pair[0] < pair[1]));
        }
    }

    #[test]
    fn one_in_four_of_a_weak_bed_turns_and_next_to_none_of_a_firm_one() {
        let turns = |estimate| cases().filter(|c| shown_torque(c, estimate, false) < 10.0).count();
        // P(z < -0.749) = 0.227 of 2000; four standard deviations of that count are 75.
        assert!(turns(15.0).abs_diff(454) < 75, "{}", turns(15.0));
        assert_eq!(turns(30.0), 0);
    }
}
