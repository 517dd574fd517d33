//! Shares with where they may lie in truth.

use super::{Answer, Answers};
use crate::calibration::wilson;

/// How many were right of those that were reached: of a rule, of an item or of a learner. Made of the
/// two counts, so that no more can be right than there are.
///
/// The interval takes each answer for a draw of its own. Where a share is of one item, one answer each,
/// that holds; where the same learner answers several times (a rule over several cases, a learner over
/// items that hang together) answers resemble each other, and the truth may lie further off.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Share {
    /// How many were right.
    pub right: u32,
    /// How many were wrong.
    pub wrong: u32,
}

impl Share {
    /// Of each item, over everybody who reached it.
    #[must_use]
    pub fn of_items(answers: &Answers) -> Vec<Self> {
        let mut found = vec![Self::default(); answers.items()];
        for person in 0..answers.persons() {
            found.iter_mut().zip(answers.row(person)).for_each(|(share, one)| share.count(*one));
        }
        found
    }

    /// Of each person, over every item that they reached.
    #[must_use]
    pub fn of_persons(answers: &Answers) -> Vec<Self> {
        let of = |person| {
            let mut share = Self::default();
            answers.row(person).iter().for_each(|one| share.count(*one));
            share
        };
        (0..answers.persons()).map(of).collect()
    }

    /// Takes an answer in; what was not reached leaves it as it is.
    pub const fn count(&mut self, answer: Answer) {
        match answer {
            Answer::Right => self.right = self.right.saturating_add(1),
            Answer::Wrong => self.wrong = self.wrong.saturating_add(1),
            Answer::NotReached => {}
        }
    }

    /// How many were reached.
    #[must_use]
    pub const fn all(self) -> u32 {
        self.right.saturating_add(self.wrong)
    }

    /// The share that was right, 0 to 1; nothing where nobody reached anything.
    #[must_use]
    pub fn value(self) -> Option<f64> {
        (self.all() > 0).then(|| f64::from(self.right) / f64::from(self.all()))
    }

    /// Where that share may lie in truth: Wilson's 90 % interval, as confidence has it
    /// ([`crate::calibration::Group::band`] says why). Nothing where nobody reached anything.
    #[must_use]
    pub fn band(self) -> Option<[f64; 2]> {
        (self.all() > 0).then(|| wilson(self.right, self.all()))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::class::trial::{close, table};

    #[test]
    fn shares_are_over_what_was_reached() {
        let answers = table(&["11-", "10-", "0--"]);
        let items = Share::of_items(&answers);
        assert_eq!(items[0], Share { right: 2, wrong: 1 });
        assert_eq!(items[1], Share { right: 1, wrong: 1 });
        assert_eq!((items[2].all(), items[2].value(), items[2].band()), (0, None, None));
        let persons = Share::of_persons(&answers);
        assert_eq!(persons.iter().map(|one| one.all()).collect::<Vec<_>>(), [2, 2, 1]);
        close(persons[1].value().unwrap(), 0.5);
    }

    #[test]
    fn a_band_is_wilson_s() {
        // 8 of 10 at 90 %, from the closed form by hand.
        let [low, high] = Share { right: 8, wrong: 2 }.band().unwrap();
        assert!((low - 0.541_4).abs() < 1e-3 && (high - 0.931_0).abs() < 1e-3, "{low}, {high}");
    }
}
