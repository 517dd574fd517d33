//! How far the total of a test would come out the same again.

use super::Complete;
use libm::sqrt;

/// Kuder and Richardson's formula 20, which is Cronbach's alpha for right and wrong; population
/// variances on both sides (mixed divisors inflate it). Formulas from memory, checked on published tables
/// and against an outside library.
///
/// No interval: Feldt's needs quantiles of F, which nothing else here does.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Reliability {
    /// Over how many persons, those who reached everything.
    pub persons: usize,
    /// How many did not, and are left out.
    pub left_out: usize,
    /// Over how many items.
    pub items: usize,
    /// Alpha, at most 1. Below 0 where items pull against each other; shown as it is. For use in a class
    /// 0.70 or more, where much hangs on it 0.90 or more (from memory).
    pub alpha: f64,
    /// Standard deviation of totals, items.
    pub spread: f64,
    /// Standard error of measurement of a total, items: how far somebody's total would scatter from one
    /// such test to the next.
    pub error: f64,
}

impl Reliability {
    /// Of those who reached everything; nothing for a single item, or where all totals are the same.
    #[must_use]
    pub fn of(complete: &Complete) -> Option<Self> {
        let persons = complete.persons() as f64;
        let [sum, squares] = complete.totals();
        let total = scatter(persons, sum, squares);
        let alpha = alpha(complete.items(), within(complete), total)?;
        let spread = sqrt(total) / persons;
        Some(Self {
            persons: complete.persons(),
            left_out: complete.left_out(),
            items: complete.items(),
            alpha,
            spread,
            // Never below 0 but for the last bit.
            error: spread * sqrt((1.0 - alpha).max(0.0)),
        })
    }
}

/// Variance times the square of how many there are: whole numbers, exact, and 0 only where all values
/// are the same.
pub(super) fn scatter(count: f64, sum: f64, squares: f64) -> f64 {
    count * squares - sum * sum
}

/// The scatter of each item, added up.
pub(super) fn within(complete: &Complete) -> f64 {
    let persons = complete.persons() as f64;
    complete.right.iter().map(|right| scatter_of_item(persons, *right)).sum()
}

/// The scatter of one item: of 0 and 1 the squares add up to the sum.
pub(super) fn scatter_of_item(persons: f64, right: u64) -> f64 {
    scatter(persons, right as f64, right as f64)
}

/// Alpha of so many items with their scatter added up and the scatter of their total.
pub(super) fn alpha(items: usize, within: f64, total: f64) -> Option<f64> {
    let items = items as f64;
    (items > 1.0 && total > 0.0).then(|| items / (items - 1.0) * (1.0 - within / total))
}

/// What reliability would be with so many times the items of the same kind (Spearman and Brown 1910).
/// Nothing where there is no such test: times not above 0, or a reliability so negative that the formula
/// leaves its ground.
#[must_use]
pub fn spearman_brown(reliability: f64, times: f64) -> Option<f64> {
    let below = 1.0 + (times - 1.0) * reliability;
    let asked = times > 0.0 && times.is_finite() && reliability <= 1.0;
    (asked && below > 0.0).then(|| times * reliability / below)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::class::trial::{TEN_BY_FIVE, chance, close, doubled, shuffled, table};

    #[test]
    fn the_exact_table_has_its_exact_reliability() {
        let found = Reliability::of(&table(&TEN_BY_FIVE).complete()).unwrap();
        close(found.alpha, 0.7);
        close(found.spread, 1.5);
        close(found.error, 1.5 * 0.3_f64.sqrt());
        assert_eq!((found.persons, found.left_out, found.items), (10, 0, 5));
        // Twice the test, 1.4 / 1.7.
        close(spearman_brown(found.alpha, 2.0).unwrap(), 14.0 / 17.0);
    }

    #[test]
    fn the_order_of_persons_and_each_of_them_twice_change_nothing() {
        for seed in 0..50 {
            let answers = chance(seed, 3 + seed as usize, 2 + seed as usize % 9, seed % 8);
            let found = Reliability::of(&answers.complete());
            assert_eq!(found, Reliability::of(&shuffled(&answers).complete()));
            let twice = Reliability::of(&doubled(&answers).complete());
            assert_eq!(found.map(|one| one.alpha), twice.map(|one| one.alpha));
        }
    }

    #[test]
    fn a_single_item_has_no_alpha_and_neither_have_totals_that_do_not_differ() {
        for rows in [&["1", "0", "1"][..], &["10", "01"], &["111"], &["1-", "-1"], &[]] {
            assert_eq!(Reliability::of(&table(rows).complete()), None, "{rows:?}");
        }
    }

    #[test]
    fn items_that_are_all_the_same_are_as_reliable_as_can_be_and_opposed_ones_fall_below_nothing() {
        let same = Reliability::of(&table(&["111", "000", "111"]).complete()).unwrap();
        assert_eq!((same.alpha, same.error), (1.0, 0.0));
        let opposed = Reliability::of(&table(&["110", "001", "110", "010"]).complete()).unwrap();
        assert!(opposed.alpha < 0.0 && opposed.error > opposed.spread);
    }

    #[test]
    fn a_longer_test_is_more_reliable_and_the_way_back_leads_back() {
        let longer = spearman_brown(0.4, 3.0).unwrap();
        assert!(longer > 0.4);
        close(spearman_brown(longer, 1.0 / 3.0).unwrap(), 0.4);
        assert_eq!(spearman_brown(0.4, 1.0), Some(0.4));
        for times in [0.0, -1.0, f64::NAN, f64::INFINITY] {
            assert_eq!(spearman_brown(0.4, times), None);
        }
        assert_eq!(spearman_brown(-0.5, 3.0), None);
        assert_eq!(spearman_brown(f64::NAN, 2.0), None);
    }
}
