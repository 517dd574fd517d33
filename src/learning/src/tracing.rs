//! Bayesian knowledge tracing: the chance that a skill is known, from right and wrong answers.
//!
//! Corbett and Anderson 1995, User Model User-Adapt Interact 4:253-278; equations (a) to (e), confirmed
//! in an encyclopedia article and a model handbook. No forgetting: that is [`crate::memory`]'s.

/// The four parameters of a skill, each a probability.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Tracing {
    /// That it is known before any answer.
    pub start: f64,
    /// That it is learnt at an opportunity.
    pub learn: f64,
    /// That an answer is wrong though it is known.
    pub slip: f64,
    /// That an answer is right though it is not known.
    pub guess: f64,
}

impl Tracing {
    /// The chance of a right answer, from the chance that the skill is known.
    #[must_use]
    pub fn correct(&self, known: f64) -> f64 {
        known * (1.0 - self.slip) + (1.0 - known) * self.guess
    }

    /// The chance that the skill was known, given the answer. An answer that cannot occur says nothing.
    #[must_use]
    pub fn given(&self, known: f64, right: bool) -> f64 {
        let (with, without) = if right {
            (known * (1.0 - self.slip), (1.0 - known) * self.guess)
        } else {
            (known * self.slip, (1.0 - known) * (1.0 - self.guess))
        };
        let all = with + without;
        if all > 0.0 { with / all } else { known }
    }

    /// The chance that it is known after an opportunity without an answer: what is shown teaches.
    #[must_use]
    pub fn shown(&self, known: f64) -> f64 {
        known + (1.0 - known) * self.learn
    }

    /// The chance that it is known after an answer.
    #[must_use]
    pub fn after(&self, known: f64, right: bool) -> f64 {
        self.shown(self.given(known, right))
    }

    /// The same where nobody knows whether the case called for the skill, only how likely that was
    /// (0 to 1): a fault proves that it did; a right answer counts by how likely it is, given that
    /// everything is right in a case that does not. Ours; with 1 it is [`Tracing::after`].
    #[must_use]
    pub fn after_perhaps(&self, known: f64, right: bool, called_for: f64) -> f64 {
        let did = if right {
            let earned = called_for * self.correct(known);
            let all = earned + (1.0 - called_for);
            if all > 0.0 { earned / all } else { called_for }
        } else {
            1.0
        };
        did * self.after(known, right) + (1.0 - did) * known
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::parameters::TRACING;

    const ANSWERS: [bool; 5] = [true, false, true, true, true];

    fn traced(tracing: Tracing) -> Vec<[f64; 4]> {
        let mut known = tracing.start;
        let rows = ANSWERS.map(|right| {
            let row = [known, tracing.correct(known), tracing.given(known, right)];
            known = tracing.after(known, right);
            [row[0], row[1], row[2], known]
        });
        rows.to_vec()
    }

    fn close(found: f64, expected: f64) {
        assert!((found - expected).abs() < 5.1e-7, "{found}, expected {expected}");
    }

    #[test]
    fn the_worked_example_comes_out_to_six_digits() {
        let tracing = Tracing { start: 0.30, learn: 0.10, slip: 0.10, guess: 0.20 };
        let expected = [
            [0.300_000, 0.410_000, 0.658_537, 0.692_683],
            [0.692_683, 0.684_878, 0.219_814, 0.297_833],
            [0.297_833, 0.408_483, 0.656_207, 0.690_587],
            [0.690_587, 0.683_411, 0.909_450, 0.918_505],
            [0.918_505, 0.842_954, 0.980_664, 0.982_598],
        ];
        for (found, expected) in traced(tracing).iter().zip(expected) {
            found.iter().zip(expected).for_each(|(found, expected)| close(*found, expected));
        }
    }

    #[test]
    fn the_second_and_the_third_example_come_out_to_six_digits() {
        let second = traced(Tracing { start: 0.25, learn: 0.15, slip: 0.10, guess: 0.25 });
        let next = [0.613_636, 0.298_544, 0.664_321, 0.895_379, 0.973_279];
        let correct = [0.412_500, 0.648_864, 0.444_053, 0.681_809, 0.831_996];
        for (row, (next, correct)) in second.iter().zip(next.into_iter().zip(correct)) {
            close(row[3], next);
            close(row[1], correct);
        }
        let third = traced(Tracing { start: 0.40, learn: 0.05, slip: 0.299, guess: 0.299 });
        let next = [0.629_339, 0.449_021, 0.673_611, 0.837_290, 0.927_284];
        third.iter().zip(next).for_each(|(row, next)| close(row[3], next));
    }

    /// Many sets of parameters that can be told apart, and many chances.
    fn sweep(mut each: impl FnMut(Tracing, f64)) {
        let parts = [0.0, 0.05, 0.1, 0.3, 0.49];
        for learn in [0.0, 0.1, 0.5, 1.0] {
            for slip in parts {
                for guess in parts {
                    for known in [0.0, 0.1, 0.5, 0.9, 1.0] {
                        each(Tracing { start: known, learn, slip, guess }, known);
                    }
                }
            }
        }
    }

    #[test]
    fn right_answers_never_lower_what_is_known_and_it_stays_a_chance() {
        sweep(|tracing, known| {
            let (right, wrong) = (tracing.after(known, true), tracing.after(known, false));
            assert!(right >= known - 1e-15, "{tracing:?}, {known}: {right}");
            assert!(wrong <= right + 1e-15, "{tracing:?}, {known}: {wrong}");
            assert!((0.0..=1.0).contains(&right) && (0.0..=1.0).contains(&wrong));
        });
    }

    #[test]
    fn without_learning_the_order_of_answers_does_not_matter() {
        sweep(|tracing, known| {
            let tracing = Tracing { learn: 0.0, ..tracing };
            let of = |answers: [bool; 3]| {
                answers.iter().fold(known, |known, right| tracing.after(known, *right))
            };
            let [a, b] = [of([true, false, true]), of([false, true, true])];
            // A slip or a guess that cannot occur settles the matter at once.
            if tracing.slip > 0.0 && tracing.guess > 0.0 {
                assert!((a - b).abs() < 1e-12, "{tracing:?}, {known}: {a}, {b}");
            }
        });
    }

    #[test]
    fn without_slip_and_guess_one_right_answer_settles_it() {
        let sure = Tracing { start: 0.3, learn: 0.1, slip: 0.0, guess: 0.0 };
        assert_eq!(sure.after(0.3, true), 1.0);
        // And an answer that cannot occur says nothing.
        assert_eq!(sure.given(1.0, false), 1.0);
    }

    #[test]
    fn an_answer_that_was_perhaps_not_called_for_counts_as_far_as_it_was_likely() {
        sweep(|tracing, known| {
            assert_eq!(tracing.after_perhaps(known, true, 1.0), tracing.after(known, true));
            assert_eq!(tracing.after_perhaps(known, false, 0.2), tracing.after(known, false));
            assert_eq!(tracing.after_perhaps(known, true, 0.0), known);
        });
        let some = TRACING.after_perhaps(0.3, true, 0.5);
        assert!(0.3 < some && some < TRACING.after(0.3, true));
    }

    #[test]
    fn our_parameters_keep_within_the_bounds_that_keep_their_meaning() {
        const { assert!(TRACING.slip <= 0.10 && TRACING.guess <= 0.30) };
        const { assert!(1.0 - TRACING.slip > TRACING.guess) };
    }
}
