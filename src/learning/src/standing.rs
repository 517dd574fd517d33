//! Where a learner stands with each skill.
//!
//! One memory for each skill, not for each skill in each kind of case: ten times fifty-one memories
//! would see most kinds once in a course and time nothing, and what is to be held is the skill, not
//! the case. The choice of cases varies the kinds by itself ([`crate::next`]).

use crate::called::share;
use crate::memory::{Grade, Memory};
use crate::parameters::{CALLED_FOR, FIRST_ANSWERS, FIRST_LONGEST, MASTERY, TRACING};
use crate::past::Past;
use engine::rules::Skill;

/// Milliseconds of a day.
const DAY: u64 = 24 * 60 * 60 * 1000;

/// One answer on a skill.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Answer {
    /// Which attempt, by its place in the list that was given.
    pub past: usize,
    /// When, milliseconds since 1970, universal time; nothing where nobody knows.
    pub at: Option<u64>,
    /// Whether none of its verdicts that count was a fault.
    pub right: bool,
    /// The chance that the skill is known after it, 0 to 1.
    pub mastery: f64,
}

/// Where a learner stands with a skill.
#[derive(Debug, Clone, PartialEq)]
pub struct Standing {
    /// Which.
    pub skill: Skill,
    /// The answers, in order of time.
    pub answers: Vec<Answer>,
    /// The chance that the skill is known, as after the last attempt, 0 to 1; forgetting left out.
    pub mastery: f64,
    /// What is held of it; nothing before an answer.
    pub memory: Option<Memory>,
    /// When it was last practised, milliseconds since 1970; nothing before that.
    pub last: Option<u64>,
    /// When it comes back, likewise.
    pub due: Option<u64>,
    /// The chance that what was known then is still held now, 0 to 1; 1 before an answer.
    pub held: f64,
}

impl Standing {
    /// Before any attempt.
    const fn new(skill: Skill) -> Self {
        Self {
            skill,
            answers: Vec::new(),
            mastery: TRACING.start,
            memory: None,
            last: None,
            due: None,
            held: 1.0,
        }
    }

    /// Whether it is mastered: the chance that it is known is 0.95 or more.
    #[must_use]
    pub fn is_mastered(&self) -> bool {
        self.mastery >= MASTERY
    }

    /// Whether its time has come.
    #[must_use]
    pub fn is_due(&self, now: u64) -> bool {
        self.due.is_some_and(|due| due <= now)
    }

    /// The chance that it is known and still held, 0 to 1.
    #[must_use]
    pub fn now(&self) -> f64 {
        self.mastery * self.held
    }

    /// How many of the last answers were right, in a row.
    #[must_use]
    pub fn in_a_row(&self) -> usize {
        self.answers.iter().rev().take_while(|answer| answer.right).count()
    }

    fn take(&mut self, place: usize, past: &Past) {
        let called = share(past.archetype, self.skill);
        let at = past.head.ended.or(past.head.begun);
        let Some((right, grade)) = answer(past, self.skill) else {
            // What was shown, and what is done once more, teaches without saying anything.
            if past.answer(self.skill).is_some() {
                self.mastery += (TRACING.shown(self.mastery) - self.mastery) * called;
            }
            return;
        };
        self.mastery = TRACING.after_perhaps(self.mastery, right, called);
        self.answers.push(Answer { past: place, at, right, mastery: self.mastery });
        if right && called < CALLED_FOR {
            return;
        }
        self.memory = Some(match self.memory {
            None => Memory::first(grade),
            Some(memory) => memory.after(days(self.last, at), grade),
        });
        self.last = at.or(self.last);
        let first = self.answers.len() <= FIRST_ANSWERS;
        self.due = self.last.zip(self.memory).map(|(last, memory)| {
            let days = memory.returns().min(if first { FIRST_LONGEST } else { u32::MAX });
            // Half a day early, so that an evening's case is back in the morning: see `days`.
            last.saturating_add(u64::from(days) * DAY).saturating_sub(DAY / 2)
        });
    }
}

/// Where a learner stands with every skill, in the order of care, from attempts in order of time.
/// `now`: milliseconds since 1970, universal time.
#[must_use]
pub fn of(pasts: &[Past], now: u64) -> [Standing; Skill::ALL.len()] {
    Skill::ALL.map(|skill| {
        let mut standing = Standing::new(skill);
        for (place, past) in pasts.iter().enumerate().filter(|(_, past)| past.is_over()) {
            standing.take(place, past);
        }
        if let Some(memory) = standing.memory {
            standing.held = memory.held(f64::from(days(standing.last, Some(now))));
        }
        standing
    })
}

/// What an attempt answers on a skill. What was shown is nobody's answer; the very case once more is
/// one only where it goes wrong: its right answers were told before.
fn answer(past: &Past, skill: Skill) -> Option<(bool, Grade)> {
    let right = past.answer(skill)?;
    let again = past.head.number > 1;
    if !past.is_own() || (right && again) { None } else { Some((right, Grade::of(past, skill)?)) }
}

/// Days between two times, to the nearest: whoever practises in the evening and the next morning has
/// slept between, and no time zone has to be known. None where a time is not known.
#[must_use]
pub fn days(from: Option<u64>, to: Option<u64>) -> u32 {
    let apart = from.zip(to).map_or(0, |(from, to)| to.saturating_sub(from));
    u32::try_from(apart.saturating_add(DAY / 2) / DAY).unwrap_or(u32::MAX)
}
