//! What a learner's own attempts say about them over time: faults that come back, the mix of verdicts,
//! time per step, and at most one thing that one may not have noticed.
//!
//! Attempts that were shown are left out throughout: what was shown is nobody's answer.

mod exact;
mod mix;
mod recurring;
mod remark;
mod times;

pub use mix::{Bar, Mix, Span};
pub use recurring::Recurring;
pub use remark::{Remark, What};
pub use times::StepTime;

use crate::date::Clock;
use crate::past::Past;
use engine::geometry::order;
use engine::rules::Zone;

/// Zones from best to worst, as counts of verdicts list them.
pub const ZONES: [Zone; 6] = [
    Zone::Ideal,
    Zone::Acceptable,
    Zone::Debated,
    Zone::Suboptimal,
    Zone::Compromising,
    Zone::Unsafe,
];

/// What attempts say about a learner.
#[derive(Debug, Clone, PartialEq)]
pub struct Review {
    /// Places of the attempts that count, in the order in which they were begun; those of which nobody
    /// knows when come first.
    pub own: Vec<usize>,
    /// Faults that came back, the most frequent first.
    pub recurring: Vec<Recurring>,
    /// Verdicts by attempt, day, week or month.
    pub mix: Mix,
    /// Time by step, in the order of care.
    pub times: Vec<StepTime>,
    /// What stands out beyond chance.
    pub remark: Option<Remark>,
    /// How many comparisons had enough to go on.
    pub compared: u32,
}

impl Review {
    /// Of all attempts, at a place's clock.
    #[must_use]
    pub fn of(pasts: &[Past], clock: Clock) -> Self {
        let mut own: Vec<usize> = (0..pasts.len()).filter(|place| pasts[*place].is_own()).collect();
        order::sort_short_by_key(&mut own, |place| pasts[*place].when());
        let in_order: Vec<&Past> = own.iter().filter_map(|place| pasts.get(*place)).collect();
        let (remark, compared) = remark::remark(&in_order);
        Self {
            recurring: recurring::recurring(pasts, &own),
            mix: Mix::of(&in_order, clock),
            times: times::times(&in_order),
            remark,
            compared,
            own,
        }
    }
}

/// The middle of some numbers, or the mean of the middle two; nothing where there is none. Puts them
/// in order.
pub(crate) fn median(values: &mut [f64]) -> Option<f64> {
    order::ascend_many(values);
    let half = values.len() / 2;
    let upper = *values.get(half)?;
    Some(if values.len() % 2 == 1 { upper } else { f64::midpoint(values[half - 1], upper) })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Help;
    use crate::trial::attempt;

    #[test]
    fn attempts_stand_in_the_order_in_which_they_were_begun_and_shown_ones_are_left_out() {
        let day = 24 * 3_600_000;
        let mut pasts: Vec<Past> = [3, 1, 2].map(|at| attempt(at * day)).to_vec();
        pasts.push(attempt(4 * day));
        pasts[3].head.help = vec![Help::Worked];
        let mut unknown = attempt(0);
        unknown.head.begun = None;
        pasts.push(unknown);
        assert_eq!(Review::of(&pasts, Clock(0)).own, [4, 1, 2, 0]);
    }

    #[test]
    fn the_middle_of_an_even_count_lies_between_two() {
        assert_eq!(median(&mut []), None);
        assert_eq!(median(&mut [3.0, 1.0, 2.0]), Some(2.0));
        assert_eq!(median(&mut [4.0, 1.0, 3.0, 2.0]), Some(2.5));
    }
}
