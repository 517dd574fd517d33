//! Faults that came back.

use crate::past::Past;
use core::cmp::Reverse;
use engine::geometry::order;
use engine::rules::Rule;

/// A fault that was charged in more than one attempt.
#[derive(Debug, Clone, PartialEq)]
pub struct Recurring {
    /// The rule.
    pub rule: &'static Rule,
    /// Places of the attempts, the most recent first.
    pub at: Vec<usize>,
    /// In how many attempts the rule counted at all.
    pub asked: usize,
}

/// Faults as the debrief charges them: those with one cause once, to the heaviest of them. `own` are
/// the places of the attempts, the oldest first.
pub(super) fn recurring(pasts: &[Past], own: &[usize]) -> Vec<Recurring> {
    let mut found: Vec<Recurring> = Vec::new();
    for &place in own.iter().rev() {
        for one in pasts[place].observed.iter().filter(|one| one.charged) {
            match found.iter_mut().find(|other| other.rule == one.rule) {
                Some(other) => other.at.push(place),
                None => found.push(Recurring { rule: one.rule, at: vec![place], asked: 0 }),
            }
        }
    }
    found.retain(|one| one.at.len() > 1);
    for one in &mut found {
        let counts = |place: &&usize| {
            pasts[**place].observed.iter().any(|seen| seen.counts && seen.rule == one.rule)
        };
        one.asked = own.iter().filter(counts).count();
    }
    // Those of equal count stay in the order in which they last came up.
    order::sort_short_by_key(&mut found, |one| Reverse(one.at.len()));
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trial::{attempt, observed, rule};
    use engine::rules::{Skill, Zone};

    #[test]
    fn a_fault_comes_back_when_it_was_charged_twice_most_frequent_first_most_recent_first() {
        let [covering, placing, once] =
            [Skill::Covering, Skill::Placing, Skill::Grafting].map(rule);
        let mut pasts: Vec<Past> = (0..5).map(attempt).collect();
        for place in [0, 2, 3] {
            pasts[place].observed.push(observed(covering, Zone::Compromising));
        }
        for place in [1, 4] {
            pasts[place].observed.push(observed(placing, Zone::Unsafe));
        }
        pasts[1].observed.push(observed(covering, Zone::Ideal));
        pasts[4].observed.push(observed(once, Zone::Suboptimal));
        let found = recurring(&pasts, &[0, 1, 2, 3, 4]);
        assert_eq!(found.len(), 2);
        assert_eq!((found[0].rule, &*found[0].at, found[0].asked), (covering, &[3, 2, 0][..], 4));
        assert_eq!((found[1].rule, &*found[1].at, found[1].asked), (placing, &[4, 1][..], 2));
    }

    #[test]
    fn what_was_charged_to_another_fault_with_its_cause_is_not_counted_again() {
        let [first, second] = [Skill::Placing, Skill::Grafting].map(rule);
        let mut pasts: Vec<Past> = (0..3).map(attempt).collect();
        for past in &mut pasts {
            past.observed.push(observed(first, Zone::Compromising));
            let mut with_it = observed(second, Zone::Suboptimal);
            with_it.charged = false;
            past.observed.push(with_it);
        }
        let found = recurring(&pasts, &[0, 1, 2]);
        assert_eq!(found.iter().map(|one| one.rule).collect::<Vec<_>>(), [first]);
    }
}
