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
