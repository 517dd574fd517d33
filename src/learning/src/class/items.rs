//! How hard items are, and how well each tells apart who can from who cannot.

use super::answers::Level;
use super::reliability::{alpha, scatter, scatter_of_item, within};
use super::{Answers, Complete, Footing, Share};
use crate::parameters::GROUP;
use libm::sqrt;

/// Every item of a table.
#[derive(Debug, Clone, PartialEq)]
pub struct Items {
    /// How many persons reached everything: coefficients are over them.
    pub complete: usize,
    /// How many did not.
    pub left_out: usize,
    /// What coefficients over so many can carry.
    pub footing: Footing,
    /// The items in the order of the table.
    pub each: Vec<Item>,
}

/// One item.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Item {
    /// Who got it right of those who reached it. Above 0.7 easy, below 0.3 hard (a teaching page on item
    /// analysis, confirmed).
    pub difficulty: Share,
    /// Corrected point-biserial, -1 to 1: the correlation of the item with the total of the others.
    /// Nothing where either is the same for everybody.
    pub corrected: Option<f64>,
    /// Upper-lower index, -1 to 1: the share right in the upper 27 % by total less that in the lower. At
    /// the edge of a group all who share the total belong to it in part, so that it weighs exactly 27 %
    /// and no order of persons matters. 0.40 or more very good, 0.30 good, 0.20 marginal (Ebel and
    /// Frisbie, from memory). Nothing where the item or the total is the same for everybody.
    pub upper_lower: Option<f64>,
    /// Alpha of the other items, over the same persons. Nothing where there is none.
    pub alpha_without: Option<f64>,
}

impl Items {
    /// Of a table.
    #[must_use]
    pub fn of(answers: &Answers) -> Self {
        let complete = answers.complete();
        let whole = Whole::of(&complete);
        let shares = Share::of_items(answers);
        let each = shares.into_iter().enumerate().map(|(place, share)| whole.item(place, share));
        Self {
            complete: complete.persons(),
            left_out: complete.left_out(),
            footing: Footing::of(complete.persons()),
            each: each.collect(),
        }
    }
}

/// What all items share.
struct Whole<'a> {
    of: &'a Complete,
    persons: f64,
    /// Totals added up, and their squares.
    sums: [f64; 2],
    /// The scatter of totals.
    total: f64,
    /// The scatter of each item, added up.
    within: f64,
}

impl<'a> Whole<'a> {
    fn of(of: &'a Complete) -> Self {
        let (persons, sums) = (of.persons() as f64, of.totals());
        Self { of, persons, sums, total: scatter(persons, sums[0], sums[1]), within: within(of) }
    }

    fn item(&self, place: usize, difficulty: Share) -> Item {
        let right = self.of.right.get(place).copied().unwrap_or(0);
        let met = self.of.met.get(place).copied().unwrap_or(0) as f64;
        let own = scatter_of_item(self.persons, right);
        let right = right as f64;
        // The total of the others is the total less one for those who had the item right.
        let (sum, squares) = (self.sums[0] - right, self.sums[1] - 2.0 * met + right);
        let rest = scatter(self.persons, sum, squares);
        let together = self.persons * (met - right) - right * sum;
        let varies = own > 0.0;
        Item {
            difficulty,
            corrected: (varies && rest > 0.0).then(|| together / (sqrt(own) * sqrt(rest))),
            upper_lower: (varies && self.total > 0.0).then(|| self.upper_lower(place)),
            alpha_without: alpha(self.of.items().saturating_sub(1), self.within - own, rest),
        }
    }

    fn upper_lower(&self, place: usize) -> f64 {
        let group = GROUP * self.persons;
        let levels = &self.of.by_total;
        let upper = right_in(levels.iter().rev(), group, place);
        (upper - right_in(levels.iter(), group, place)) / group
    }
}

/// How many had an item right in a group of so many persons, levels taken from its end on and the last
/// one in part.
fn right_in<'a>(levels: impl Iterator<Item = &'a Level>, group: f64, place: usize) -> f64 {
    let (mut left, mut found) = (group, 0.0);
    for level in levels.filter(|level| level.persons > 0) {
        let persons = level.persons as f64;
        let part = (left / persons).min(1.0);
        found += part * level.right.get(place).copied().unwrap_or(0) as f64;
        left -= part * persons;
        if part < 1.0 {
            break;
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::class::trial::{TEN_BY_FIVE, chance, close, doubled, shuffled, table};

    #[test]
    fn the_exact_table_has_its_items() {
        let found = Items::of(&table(&TEN_BY_FIVE));
        assert_eq!((found.complete, found.left_out, found.footing), (10, 0, Footing::TooFew));
        // Corrected r of the first: 10 * 17 - 8 * 17 over the roots of 16 and 10 * 43 - 17 * 17 ...
        let expected = [0.472_866_2, 0.419_313_6, 0.507_092_6, 0.419_313_6, 0.472_866_2];
        for (item, corrected) in found.each.iter().zip(expected) {
            assert!((item.corrected.unwrap() - corrected).abs() < 1e-6, "{item:?}");
        }
        // 2.7 persons: A, B, C in part by 1.7/2 each; 1.85/2.7 = 0.685185 for all but the third.
        for (place, item) in found.each.iter().enumerate() {
            let expected = if place == 2 { 1.0 } else { 1.85 / 2.7 };
            close(item.upper_lower.unwrap(), expected);
        }
    }

    #[test]
    fn the_order_of_persons_changes_not_a_bit() {
        for seed in 0..60 {
            let answers = chance(seed, 2 + seed as usize, 1 + seed as usize % 7, seed % 6);
            assert_eq!(Items::of(&answers), Items::of(&shuffled(&answers)), "seed {seed}");
        }
    }

    #[test]
    fn each_person_twice_changes_no_coefficient() {
        for seed in 0..60 {
            let answers = chance(seed, 2 + seed as usize, 2 + seed as usize % 7, seed % 6);
            let (once, twice) = (Items::of(&answers), Items::of(&doubled(&answers)));
            for (one, other) in once.each.iter().zip(&twice.each) {
                assert_eq!(one.difficulty.value(), other.difficulty.value());
                assert_eq!(one.alpha_without, other.alpha_without);
                for (one, other) in
                    [(one.corrected, other.corrected), (one.upper_lower, other.upper_lower)]
                {
                    assert_eq!(one.is_some(), other.is_some());
                    close(one.unwrap_or(0.0), other.unwrap_or(0.0));
                }
            }
        }
    }

    #[test]
    fn an_item_that_everybody_passes_or_nobody_does_tells_nobody_apart() {
        let found = Items::of(&table(&["1010", "1000", "1011", "1001"]));
        for (place, share) in [(0, 1.0), (1, 0.0)] {
            let item = found.each[place];
            close(item.difficulty.value().unwrap(), share);
            assert_eq!((item.corrected, item.upper_lower), (None, None));
            assert!(item.alpha_without.is_some());
        }
        assert!(found.each[2].upper_lower.is_some());
    }

    #[test]
    fn nothing_is_said_where_totals_do_not_differ_or_nobody_reached_everything() {
        let same_totals = Items::of(&table(&["10", "01"]));
        assert!(same_totals.each.iter().all(|item| item.upper_lower.is_none()));
        let nobody = Items::of(&table(&["1-", "-0"]));
        assert_eq!((nobody.complete, nobody.left_out), (0, 2));
        let expected = Item {
            difficulty: Share { right: 1, wrong: 0 },
            corrected: None,
            upper_lower: None,
            alpha_without: None,
        };
        assert_eq!(nobody.each[0], expected);
        assert!(Items::of(&table(&[])).each.is_empty());
    }

    #[test]
    fn a_single_item_has_no_rest_to_go_with() {
        let found = Items::of(&table(&["1", "0", "1"]));
        assert_eq!((found.each[0].corrected, found.each[0].alpha_without), (None, None));
        // By its own total it parts everybody.
        close(found.each[0].upper_lower.unwrap(), 1.0);
    }

    #[test]
    fn difficulty_is_over_all_who_reached_it_while_coefficients_are_over_those_who_reached_all() {
        let mut rows = TEN_BY_FIVE.to_vec();
        rows.extend(["1----", "1----"]);
        let (found, whole) = (Items::of(&table(&rows)), Items::of(&table(&TEN_BY_FIVE)));
        assert_eq!(found.each[0].difficulty, Share { right: 10, wrong: 2 });
        assert_eq!(found.left_out, 2);
        for (found, whole) in found.each.iter().zip(&whole.each) {
            assert_eq!(found.corrected, whole.corrected);
            assert_eq!(found.upper_lower, whole.upper_lower);
        }
    }
}
