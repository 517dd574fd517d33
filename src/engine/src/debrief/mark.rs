//! The word for the whole plan, and the mark with its parts.

use super::group::Group;
use super::verdict::Verdict;
use crate::rules::{Skill, Zone};

/// The word for the whole plan. The mark never overrides it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum PlanWord {
    /// No fault.
    Sound,
    /// Only suboptimal faults.
    Workable,
    /// A fault that is likely to compromise the outcome.
    Compromised,
    /// A fault that can hurt the patient.
    Unsafe,
}

impl PlanWord {
    /// From the verdicts that count.
    #[must_use]
    pub fn of(verdicts: &[Verdict]) -> Self {
        let faults = verdicts.iter().filter(|verdict| verdict.is_fault());
        Self::worst(faults.map(|verdict| verdict.zone).max())
    }

    /// From the worst zone of its faults, where there are any.
    #[must_use]
    pub const fn worst(fault: Option<Zone>) -> Self {
        match fault {
            Some(Zone::Unsafe) => Self::Unsafe,
            Some(Zone::Compromising) => Self::Compromised,
            Some(Zone::Suboptimal) => Self::Workable,
            _ => Self::Sound,
        }
    }

    /// The word.
    #[must_use]
    pub const fn word(self) -> &'static str {
        match self {
            Self::Sound => "sound",
            Self::Workable => "workable",
            Self::Compromised => "compromised",
            Self::Unsafe => "unsafe",
        }
    }

    /// What it means, in one sentence.
    #[must_use]
    pub const fn meaning(self) -> &'static str {
        match self {
            Self::Sound => "Nothing in this plan lies outside what the sources recommend.",
            Self::Workable => "It would work; something in it could have been better.",
            Self::Compromised => "Something in it is likely to compromise the outcome.",
            Self::Unsafe => "Something in it can hurt the patient.",
        }
    }
}

/// Why weight was lost.
#[derive(Debug, Clone, PartialEq)]
pub enum Lost {
    /// A rule was kept within the acceptable, not the ideal: a fifth of its weight.
    Acceptable(&'static str),
    /// A group of faults with one cause, once; by its place in the list of groups.
    Group(usize),
    /// A rule of the case was never reached, because a step was left out.
    NotReached(&'static str),
}

/// The mark: 100 x (full weight - set aside - lost) / (full weight - set aside), not below nothing.
///
/// It is the sum of weight x credit (ideal 1, acceptable 0.8, otherwise 0) over the case's fixed
/// full weight, with two things said: a group of faults with one cause costs once, and what is
/// debated or could not be known is taken out of both sides, so that it neither earns nor costs.
#[derive(Debug, Clone, PartialEq)]
pub struct Mark {
    /// What the case's rules weigh.
    pub full: f64,
    /// Of it, what is not marked in this plan: debated, unknowable, or rightly not reached.
    pub set_aside: f64,
    /// What was lost, and why.
    pub lost: Vec<(Lost, f64)>,
}

impl Mark {
    /// 0 to 100; `None` when nothing was left to mark.
    #[must_use]
    pub fn percent(&self) -> Option<f64> {
        let marked = self.full - self.set_aside;
        (marked > 0.0).then(|| (100.0 * (marked - self.lost_weight()) / marked).max(0.0))
    }

    /// The sum of what was lost.
    #[must_use]
    pub fn lost_weight(&self) -> f64 {
        // From a written zero: the sum of nothing would be minus zero, and would be shown so.
        self.lost.iter().fold(0.0, |sum, (_, weight)| sum + weight)
    }
}

/// Weighs verdicts against the case's full weight.
pub(super) fn mark(verdicts: &[Verdict], groups: &[Group], full: Option<&[Verdict]>) -> Mark {
    let full: Vec<&Verdict> =
        full.unwrap_or(verdicts).iter().filter(|verdict| verdict.counts()).collect();
    let weight = |verdict: &Verdict| f64::from(verdict.weight());
    let sum = full.iter().map(|verdict| weight(verdict)).sum();
    let mut mark = Mark { full: sum, set_aside: 0.0, lost: Vec::new() };
    let course_was_right =
        !verdicts.iter().any(|verdict| verdict.is_fault() && verdict.rule.skill == Skill::Course);
    for asked in full {
        let id = asked.rule.id;
        match verdicts.iter().find(|verdict| verdict.rule.id == id) {
            None if course_was_right => mark.set_aside += weight(asked),
            None => mark.lost.push((Lost::NotReached(id), weight(asked))),
            Some(verdict) if !verdict.counts() => mark.set_aside += weight(asked),
            Some(verdict) if verdict.zone == Zone::Acceptable => {
                mark.lost.push((Lost::Acceptable(id), 0.2 * weight(asked)));
            }
            Some(_) => {}
        }
    }
    for (place, group) in groups.iter().enumerate() {
        mark.lost.push((Lost::Group(place), f64::from(group.cost)));
    }
    mark.lost.retain(|(_, weight)| *weight > 0.0);
    mark
}
