//! Who did what with which item, and who reached everything.
//!
//! An item that somebody did not reach is missing, never wrong. What each statistic does about it:
//!
//! - *Difficulty* and its interval: over everybody who reached the item. Whoever reaches a late step may
//!   be a better learner than who stopped before it, so a late item may look easier than it is.
//! - *Totals*, and so reliability, the corrected point-biserial, the upper-lower index and alpha without
//!   an item: only over those who reached every item ([`Complete`]), because a total of fewer items is no
//!   total; how many, and how many are left out, is told. Putting a number where there is none would
//!   need a model of why it is missing; against several ways of doing so, complete cases are among the
//!   least biased for discrimination (Béland, Jolani, Pichette and Renaud 2018, Tutorials in Quantitative
//!   Methods for Psychology 14(3), abstract: confirmed). An item that few reached is better left out of
//!   the table first ([`Answers::with_items`]).
//! - *Agreement*: over the pairs of cases that the same learner reached.
//! - *Components of variance*: over every answer that there is ([`super::Components`]).

use crate::parameters::{COEFFICIENTS_FROM, FIRM_FROM};

/// What became of an item for a person.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Answer {
    /// Reached, and right.
    Right,
    /// Reached, and wrong.
    Wrong,
    /// Missing: says nothing about the person or the item.
    NotReached,
}

/// What every person did with every item. It has an answer for each pair of them, so it cannot be
/// uneven.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answers {
    persons: usize,
    items: usize,
    /// Person by person.
    cells: Vec<Answer>,
}

impl Answers {
    /// A table, asked cell by cell: `answer(person, item)`, both from 0.
    #[must_use]
    pub fn of(persons: usize, items: usize, answer: &dyn Fn(usize, usize) -> Answer) -> Self {
        let row = |person| (0..items).map(move |item| answer(person, item));
        Self { persons, items, cells: (0..persons).flat_map(row).collect() }
    }

    /// How many persons.
    #[must_use]
    pub const fn persons(&self) -> usize {
        self.persons
    }

    /// How many items.
    #[must_use]
    pub const fn items(&self) -> usize {
        self.items
    }

    /// What became of an item for a person, both from 0; not reached where there is no such person or
    /// item.
    #[must_use]
    pub fn answer(&self, person: usize, item: usize) -> Answer {
        let row = self.row(person);
        row.get(item).copied().unwrap_or(Answer::NotReached)
    }

    /// The answers of one person, item by item; none where there is no such person.
    #[must_use]
    pub fn row(&self, person: usize) -> &[Answer] {
        let from = person.saturating_mul(self.items);
        self.cells.get(from..from.saturating_add(self.items)).unwrap_or_default()
    }

    /// The same persons with some of the items, in the same order.
    #[must_use]
    pub fn with_items(&self, keep: &dyn Fn(usize) -> bool) -> Self {
        let kept: Vec<usize> = (0..self.items).filter(|item| keep(*item)).collect();
        let answer = |person, place: usize| {
            kept.get(place).map_or(Answer::NotReached, |item| self.answer(person, *item))
        };
        Self::of(self.persons, kept.len(), &answer)
    }

    /// Those who reached every item.
    #[must_use]
    pub fn complete(&self) -> Complete {
        let mut found = Complete {
            persons: 0,
            left_out: 0,
            right: vec![0; self.items],
            met: vec![0; self.items],
            by_total: vec![Level { persons: 0, right: vec![0; self.items] }; self.items + 1],
        };
        for row in (0..self.persons).map(|person| self.row(person)) {
            if row.contains(&Answer::NotReached) {
                found.left_out += 1;
            } else {
                found.count(row);
            }
        }
        found
    }
}

/// All that statistics on totals need to know of those who reached every item: whole numbers, so that
/// no order of persons changes the last bit of anything. Only [`Answers::complete`] makes one, so a
/// missing answer cannot get into a total.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Complete {
    persons: usize,
    left_out: usize,
    /// For each item, how many had it right.
    pub(super) right: Vec<u64>,
    /// For each item, the totals of those who had it right, added up.
    pub(super) met: Vec<u64>,
    /// For each total from 0 to all items, who has it.
    pub(super) by_total: Vec<Level>,
}

/// Everybody of the same total.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Level {
    /// How many.
    pub(super) persons: u64,
    /// For each item, how many of them had it right.
    pub(super) right: Vec<u64>,
}

impl Complete {
    /// How many persons.
    #[must_use]
    pub const fn persons(&self) -> usize {
        self.persons
    }

    /// How many are left out because they did not reach everything.
    #[must_use]
    pub const fn left_out(&self) -> usize {
        self.left_out
    }

    /// How many items.
    #[must_use]
    pub const fn items(&self) -> usize {
        self.right.len()
    }

    fn count(&mut self, row: &[Answer]) {
        let total = row.iter().filter(|answer| **answer == Answer::Right).count();
        self.persons += 1;
        let Some(level) = self.by_total.get_mut(total) else { return };
        level.persons += 1;
        let sums = self.right.iter_mut().zip(&mut self.met).zip(&mut level.right);
        for (answer, ((right, met), of_level)) in row.iter().zip(sums) {
            if *answer == Answer::Right {
                *right += 1;
                *met += total as u64;
                *of_level += 1;
            }
        }
    }

    /// Totals added up, and their squares.
    pub(super) fn totals(&self) -> [f64; 2] {
        let mut sums = [0.0, 0.0];
        for (total, level) in self.by_total.iter().enumerate() {
            let (total, persons) = (total as f64, level.persons as f64);
            sums[0] += persons * total;
            sums[1] += persons * total * total;
        }
        sums
    }
}

/// How much statistics of items can carry at a number of persons: shaky below 100, of some use from 30
/// on (Downing and Yudkowsky, restated: confirmed (secondary)).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Footing {
    /// Below 30: coefficients are not shown. What can be said instead is how far cases agree
    /// ([`super::Agreement`]).
    TooFew,
    /// From 30 on: shown with the word that they may be off.
    Shaky,
    /// From 100 on.
    Firm,
}

impl Footing {
    /// Of so many persons.
    #[must_use]
    pub const fn of(persons: usize) -> Self {
        match persons {
            0..COEFFICIENTS_FROM => Self::TooFew,
            COEFFICIENTS_FROM..FIRM_FROM => Self::Shaky,
            _ => Self::Firm,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::class::trial::{TEN_BY_FIVE, table};

    #[test]
    fn whoever_missed_an_item_is_left_out_of_totals_and_counted() {
        let found = table(&["11-", "101", "---", "000", "1-1"]).complete();
        assert_eq!((found.persons(), found.left_out(), found.items()), (2, 3, 3));
        assert_eq!(found.right, [1, 0, 1]);
        assert_eq!(found.totals(), [2.0, 4.0]);
    }

    #[test]
    fn the_exact_table_has_its_totals() {
        let found = table(&TEN_BY_FIVE).complete();
        assert_eq!(found.right, [8, 7, 5, 3, 2]);
        assert_eq!(found.totals(), [25.0, 85.0]);
        let by_total: Vec<u64> = found.by_total.iter().map(|level| level.persons).collect();
        assert_eq!(by_total, [1, 2, 2, 2, 2, 1]);
    }

    #[test]
    fn a_table_without_an_item_keeps_its_persons_and_may_lose_none_of_them_to_it() {
        let whole = table(&["11-", "101", "01-"]);
        let kept = whole.with_items(&|item| item != 2);
        assert_eq!(kept, table(&["11", "10", "01"]));
        assert_eq!((whole.complete().left_out(), kept.complete().left_out()), (2, 0));
        let none = whole.with_items(&|_| false).complete();
        assert_eq!((none.persons(), none.items()), (3, 0));
    }

    #[test]
    fn what_is_not_in_the_table_was_not_reached() {
        let small = table(&["1"]);
        assert_eq!(small.answer(0, 0), Answer::Right);
        assert_eq!(small.answer(0, 1), Answer::NotReached);
        assert_eq!(small.answer(1, 0), Answer::NotReached);
        assert!(small.row(usize::MAX).is_empty());
    }

    #[test]
    fn thirty_persons_carry_something_and_a_hundred_carry_coefficients() {
        let footings = [0, 29, 30, 99, 100].map(Footing::of);
        let [none, below, at, under, firm] = footings;
        assert_eq!([none, below], [Footing::TooFew; 2]);
        assert_eq!([at, under], [Footing::Shaky; 2]);
        assert_eq!(firm, Footing::Firm);
    }
}
