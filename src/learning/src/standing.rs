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
    /// Whether the skill was called for: it was where it went wrong, and mostly where most cases of the
    /// kind call for it. A right answer that was not says next to nothing.
    pub called: bool,
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

    /// The answers of cases that called for it, the last first.
    pub fn called(&self) -> impl Iterator<Item = &Answer> {
        self.answers.iter().rev().filter(|answer| answer.called)
    }

    /// How many of the last of these were right, in a row.
    #[must_use]
    pub fn in_a_row(&self) -> usize {
        self.called().take_while(|answer| answer.right).count()
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
        let called = !right || called >= CALLED_FOR;
        self.answers.push(Answer { past: place, at, right, called, mastery: self.mastery });
        if !called {
            return;
        }
        self.memory = Some(match self.memory {
            None => Memory::first(grade),
            Some(memory) => memory.after(days(self.last, at), grade),
        });
        self.last = at.or(self.last);
        let first = self.called().count() <= FIRST_ANSWERS;
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Help;
    use crate::trial::{DAY, HOUR, START, attempt};
    use engine::cases::Archetype;

    const SKILL: Skill = Skill::Covering;

    fn standing(pasts: &[Past], now: u64) -> Standing {
        let all = of(pasts, now);
        all.into_iter().find(|one| one.skill == SKILL).unwrap()
    }

    #[test]
    fn before_any_attempt_nothing_is_known_but_the_start() {
        let all = of(&[], START);
        for (standing, skill) in all.iter().zip(Skill::ALL) {
            assert_eq!(*standing, Standing::new(skill));
            assert!(!standing.is_mastered() && !standing.is_due(u64::MAX));
        }
    }

    #[test]
    fn answers_trace_mastery_as_the_equations_do() {
        let pasts = [
            attempt(START).right(SKILL),
            attempt(START + HOUR).wrong(SKILL),
            attempt(START + 2 * HOUR).right(SKILL),
        ];
        let found = standing(&pasts, START + 2 * HOUR);
        let mut known = TRACING.start;
        for (answer, right) in found.answers.iter().zip([true, false, true]) {
            known = TRACING.after(known, right);
            assert_eq!((answer.right, answer.mastery), (right, known));
        }
        assert_eq!(found.mastery, known);
        assert_eq!(found.in_a_row(), 1);
        assert_eq!(found.last, Some(START + 2 * HOUR));
    }

    #[test]
    fn five_right_answers_in_a_row_master_a_skill_and_one_does_not() {
        let pasts: Vec<Past> = (0..5).map(|k| attempt(START + k * HOUR).right(SKILL)).collect();
        assert!(standing(&pasts, START).is_mastered());
        assert!(!standing(&pasts[..1], START).is_mastered());
    }

    #[test]
    fn what_was_shown_teaches_and_is_no_answer() {
        for help in [Help::Worked, Help::Begun] {
            let found = standing(&[attempt(START).right(SKILL).with(help)], START);
            assert!(found.answers.is_empty() && found.memory.is_none());
            assert_eq!(found.mastery, TRACING.shown(TRACING.start));
            let wrong = standing(&[attempt(START).wrong(SKILL).with(help)], START);
            assert_eq!(wrong.mastery, found.mastery);
        }
    }

    #[test]
    fn the_very_case_once_more_counts_only_where_it_goes_wrong() {
        let again = |mut past: Past| {
            past.head.number = 2;
            past
        };
        let right = standing(&[again(attempt(START).right(SKILL))], START);
        assert!(right.answers.is_empty() && right.mastery > TRACING.start);
        let wrong = standing(&[again(attempt(START).wrong(SKILL))], START);
        assert_eq!(wrong.answers.len(), 1);
    }

    #[test]
    fn an_attempt_that_is_not_over_says_nothing() {
        let mut open = attempt(START).wrong(SKILL);
        open.head.ended = None;
        assert_eq!(standing(&[open], START), standing(&[], START));
    }

    #[test]
    fn right_where_the_skill_was_not_called_for_says_nearly_nothing() {
        let past = |kind| attempt(START).right(SKILL).about(kind);
        let seldom = standing(&[past(Archetype::IntactThick)], START);
        assert_eq!(seldom.mastery, TRACING.start);
        assert!(seldom.memory.is_none(), "nothing was recalled");
        assert_eq!((seldom.answers.len(), seldom.in_a_row()), (1, 0));
        let called = standing(&[past(Archetype::DefectU)], START);
        assert!(called.mastery > 0.6 && called.memory.is_some());
        // A fault proves that it was.
        let wrong = attempt(START).wrong(SKILL).about(Archetype::IntactThick);
        assert!(standing(&[wrong], START).memory.is_some());
    }

    #[test]
    fn a_miss_is_back_the_next_morning_and_a_success_some_days_later() {
        let missed = standing(&[attempt(START).wrong(SKILL)], START + HOUR);
        assert!(!missed.is_due(START + 11 * HOUR) && missed.is_due(START + 13 * HOUR));
        let right = standing(&[attempt(START).right(SKILL)], START + HOUR);
        assert!(!right.is_due(START + DAY) && right.is_due(START + 2 * DAY));
    }

    #[test]
    fn the_first_intervals_end_within_two_weeks_and_later_ones_need_not() {
        let mut pasts: Vec<Past> = Vec::new();
        let (mut at, mut gaps) = (START, Vec::new());
        for _ in 0..6 {
            pasts.push(attempt(at).right(SKILL));
            let due = standing(&pasts, at).due.unwrap();
            gaps.push((due + DAY / 2 - at) / DAY);
            at = due + DAY / 2;
        }
        assert!(gaps[..3].iter().all(|days| *days <= 14), "{gaps:?}");
        assert!(gaps[3] > 14 && gaps.windows(2).all(|pair| pair[0] <= pair[1]), "{gaps:?}");
    }

    #[test]
    fn what_is_held_falls_with_time_and_rises_with_practice() {
        let one = [attempt(START).right(SKILL)];
        let held = |days| standing(&one, START + days * DAY).held;
        assert_eq!(held(0), 1.0);
        assert!(held(1) > held(3) && held(3) > held(30) && held(30) > 0.0);
        let two = [attempt(START).right(SKILL), attempt(START + 3 * DAY).right(SKILL)];
        assert!(standing(&two, START + 10 * DAY).held > held(7));
    }

    #[test]
    fn days_are_nights_slept_between_not_dates() {
        assert_eq!(days(Some(START), Some(START + 11 * HOUR)), 0);
        assert_eq!(days(Some(START + 11 * HOUR), Some(START + DAY)), 1);
        assert_eq!(days(Some(START), Some(START + 6 * DAY + HOUR)), 6);
        assert_eq!(days(None, Some(START)), 0);
        assert_eq!(days(Some(START), Some(0)), 0);
        assert_eq!(days(Some(0), Some(u64::MAX)), u32::MAX);
    }

    #[test]
    fn times_that_nobody_knows_are_taken_as_the_same_day() {
        let unknown = |mut past: Past| {
            (past.head.begun, past.head.ended) = (None, Some(0));
            past
        };
        let pasts = [unknown(attempt(START).right(SKILL)), attempt(START).right(SKILL)];
        let found = standing(&pasts, START);
        assert_eq!(found.answers.len(), 2);
        assert!(found.held > 0.0 && found.mastery > TRACING.start);
    }
}
