//! What every rule said of one attempt, a bit each: a class of a hundred thousand attempts has to be held
//! at once.

use super::Answer;
use core::ptr;
use engine::debrief::Verdict;
use engine::rules::{Rule, Zone, all};

/// More rules than this there are not: a test counts them.
pub const MOST_RULES: usize = 256;

/// Of each rule, in the order of the register, whether it was reached, went wrong, and can hurt somebody.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Marks {
    reached: Bits,
    wrong: Bits,
    grave: Bits,
}

impl Marks {
    /// Of the verdicts of an attempt; what does not count is not reached.
    #[must_use]
    pub fn of(verdicts: &[Verdict]) -> Self {
        let mut marks = Self::default();
        for (place, one) in placed(verdicts).filter(|(_, one)| one.counts()) {
            marks.reached.set(place);
            if one.is_fault() {
                marks.wrong.set(place);
            }
            if one.zone == Zone::Unsafe {
                marks.grave.set(place);
            }
        }
        marks
    }

    /// Both: wrong where either is.
    #[must_use]
    pub fn with(self, other: Self) -> Self {
        Self {
            reached: self.reached.or(other.reached),
            wrong: self.wrong.or(other.wrong),
            grave: self.grave.or(other.grave),
        }
    }

    /// What became of the rule at this place of the register.
    #[must_use]
    pub fn answer(self, place: usize) -> Answer {
        if !self.reached.has(place) {
            Answer::NotReached
        } else if self.wrong.has(place) {
            Answer::Wrong
        } else {
            Answer::Right
        }
    }

    /// The places of the rules whose fault can hurt somebody.
    pub fn grave(self) -> impl Iterator<Item = usize> {
        self.grave.places()
    }

    /// The places of the rules that went wrong.
    pub fn wrong(self) -> impl Iterator<Item = usize> {
        self.wrong.places()
    }
}

/// Verdicts, each with its rule's place in the register, where every rule stands once. They mostly come
/// in its order, so each is looked for from where the last was found.
pub(super) fn placed(verdicts: &[Verdict]) -> impl Iterator<Item = (usize, &Verdict)> {
    let mut rest = all().enumerate();
    verdicts.iter().filter_map(move |one| {
        let is_it = |(_, rule): &(usize, &'static Rule)| ptr::eq(*rule, one.rule);
        let found = rest.find(is_it).or_else(|| {
            rest = all().enumerate();
            rest.find(is_it)
        });
        found.map(|(place, _)| (place, one))
    })
}

/// A bit for each rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
struct Bits([u128; MOST_RULES / 128]);

impl Bits {
    fn set(&mut self, place: usize) {
        if let Some(word) = self.0.get_mut(place / 128) {
            *word |= 1 << (place % 128);
        }
    }

    fn has(self, place: usize) -> bool {
        self.0.get(place / 128).is_some_and(|word| word >> (place % 128) & 1 == 1)
    }

    fn or(self, other: Self) -> Self {
        let [low, high] = self.0;
        let [other_low, other_high] = other.0;
        Self([low | other_low, high | other_high])
    }

    fn places(self) -> impl Iterator<Item = usize> {
        (0..MOST_RULES).filter(move |place| self.has(*place))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use engine::rules::Reading;

    #[test]
    fn every_rule_has_a_bit() {
        assert!(all().count() <= MOST_RULES, "{} rules", all().count());
    }

    fn verdict(rule: &'static Rule, zone: Zone) -> Verdict {
        let reading = Reading::Number(0.0);
        Verdict { rule, reading, zone, knowledge: None, missed: None, here: None }
    }

    #[test]
    fn a_verdict_finds_its_place_in_whatever_order_they_come() {
        let rules: Vec<_> = all().collect();
        let order = [3, 4, 4, 0, 9, 1];
        let verdicts = order.map(|place| verdict(rules[place], Zone::Ideal));
        let found: Vec<_> = placed(&verdicts).map(|(place, _)| place).collect();
        assert_eq!(found, order);
    }

    #[test]
    fn what_does_not_count_is_not_reached() {
        let rules: Vec<_> = all().take(4).collect();
        let zones = [Zone::Ideal, Zone::Debated, Zone::Suboptimal, Zone::Unsafe];
        let all: Vec<_> = rules.iter().zip(zones).map(|(rule, zone)| verdict(rule, zone)).collect();
        let marks = Marks::of(&all);
        use Answer::{NotReached, Right, Wrong};
        let answers: Vec<_> = (0..5).map(|place| marks.answer(place)).collect();
        assert_eq!(answers, [Right, NotReached, Wrong, Wrong, NotReached]);
        assert_eq!(marks.grave().collect::<Vec<_>>(), [3]);
        assert_eq!(marks.wrong().collect::<Vec<_>>(), [2, 3]);
        // Taken together with one that reached other things.
        let other =
            Marks::of(&[verdict(rules[0], Zone::Suboptimal), verdict(rules[1], Zone::Ideal)]);
        let both = marks.with(other);
        assert_eq!([both.answer(0), both.answer(1)], [Wrong, Right]);
    }
}
