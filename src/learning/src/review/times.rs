//! Time per step.

use super::median;
use crate::past::Past;
use engine::plan::Step;

/// How long a learner took over a step, seconds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StepTime {
    /// The step.
    pub step: Step,
    /// How often it was carried out with a known time.
    pub count: usize,
    /// The middle of the times.
    pub median: f64,
    /// The shortest and the longest.
    pub range: [f64; 2],
}

/// Every step of which a time is known, in the order of care.
pub(super) fn times(own: &[&Past]) -> Vec<StepTime> {
    let of = |step: &Step| {
        let mut all = seconds(own, *step);
        let median = median(&mut all)?;
        let range = [*all.first()?, *all.last()?];
        Some(StepTime { step: *step, count: all.len(), median, range })
    };
    Step::ALL.iter().filter_map(of).collect()
}

/// Seconds spent on a step, attempt by attempt where a time is known: no time at all means that
/// nobody looked at a clock.
fn seconds(own: &[&Past], step: Step) -> Vec<f64> {
    own.iter().filter_map(|past| seconds_of(past, step)).collect()
}

/// Seconds that an attempt spent on a step.
pub(super) fn seconds_of(past: &Past, step: Step) -> Option<f64> {
    let (_, spent) = past.spent.iter().find(|(other, spent)| *other == step && *spent > 0)?;
    #[expect(clippy::cast_precision_loss, reason = "far below 2^53 milliseconds")]
    let seconds = *spent as f64 / 1000.0;
    Some(seconds)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trial::attempt;

    #[test]
    fn the_middle_and_the_ends_of_what_was_taken_step_by_step() {
        let mut pasts: Vec<Past> = (0..4).map(attempt).collect();
        for (past, ms) in pasts.iter_mut().zip([30_000, 90_000, 60_000, 0]) {
            past.spent = vec![(Step::Flap, 5_000), (Step::Chart, ms)];
        }
        let own: Vec<&Past> = pasts.iter().collect();
        let found = times(&own);
        assert_eq!(
            found,
            [
                StepTime { step: Step::Chart, count: 3, median: 60.0, range: [30.0, 90.0] },
                StepTime { step: Step::Flap, count: 4, median: 5.0, range: [5.0, 5.0] },
            ]
        );
    }
}
