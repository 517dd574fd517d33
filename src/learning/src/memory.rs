//! How long a skill is held: FSRS-6, the published formulas in double precision, without fuzz.
//!
//! Time is whole days. The crate `fsrs` computes the same and is what the tests compare with. The page
//! does not carry it: it counts in single precision, brings 43 crates with it, imports randomness from
//! the browser, and weighs three times what is here.

use crate::parameters::{LONGEST, RETENTION, SURELY, WEIGHTS as W};
use crate::past::Past;
use crate::record::Help;
use engine::rules::Skill;
use libm::{exp, pow, rint};

/// No stability is less, days.
const LEAST: f64 = 0.001;

/// How an answer went.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Grade {
    /// Forgotten: a fault.
    Again,
    /// Right with help.
    Hard,
    /// Right.
    Good,
    /// Right, and surely so.
    Easy,
}

impl Grade {
    /// All of them, the worst first.
    pub const ALL: [Self; 4] = [Self::Again, Self::Hard, Self::Good, Self::Easy];

    /// 1 to 4.
    #[must_use]
    pub const fn number(self) -> f64 {
        match self {
            Self::Again => 1.0,
            Self::Hard => 2.0,
            Self::Good => 3.0,
            Self::Easy => 4.0,
        }
    }

    /// How an attempt went with a skill: a fault, right with help, right, or right and surely so
    /// (every answer about how sure one is of its steps is 90 % or more, and there is one); nothing
    /// where the attempt is no answer on the skill.
    #[must_use]
    pub fn of(past: &Past, skill: Skill) -> Option<Self> {
        let right = past.answer(skill)?;
        let of_skill = |step| {
            past.observed
                .iter()
                .any(|one| one.counts && one.rule.skill == skill && one.rule.step == step)
        };
        let mut sure = past.sure.iter().filter(|sure| of_skill(sure.step)).peekable();
        let asked = sure.peek().is_some();
        Some(match right {
            false => Self::Again,
            true if past.head.help.contains(&Help::Guided) => Self::Hard,
            true if asked && sure.all(|sure| sure.percent >= SURELY) => Self::Easy,
            true => Self::Good,
        })
    }
}

/// What is held of a skill.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Memory {
    /// Days until the chance that it is still held has fallen to 0.9; at least 0.001.
    pub stability: f64,
    /// How hard it is to hold, 1 to 10.
    pub difficulty: f64,
}

impl Memory {
    /// After the first answer.
    #[must_use]
    pub fn first(grade: Grade) -> Self {
        let stability = match grade {
            Grade::Again => W[0],
            Grade::Hard => W[1],
            Grade::Good => W[2],
            Grade::Easy => W[3],
        };
        Self { stability: stability.max(LEAST), difficulty: beginning(grade).clamp(1.0, 10.0) }
    }

    /// After another answer, so many whole days later. Both parts follow from the old difficulty.
    #[must_use]
    pub fn after(&self, days: u32, grade: Grade) -> Self {
        let stability = match (days, grade) {
            (0, _) => self.same_day(grade),
            (_, Grade::Again) => self.lost(days),
            _ => self.kept(days, grade),
        };
        Self { stability: stability.max(LEAST), difficulty: self.harder(grade) }
    }

    /// The chance that it is still held after so many days, 0 to 1.
    #[must_use]
    pub fn held(&self, days: f64) -> f64 {
        pow(1.0 + factor() * days / self.stability, decay())
    }

    /// The days after which the chance that it is still held has fallen to `retention` (above 0, at
    /// most 1), as they come.
    #[must_use]
    pub fn until(&self, retention: f64) -> f64 {
        self.stability / factor() * (pow(retention, 1.0 / decay()) - 1.0)
    }

    /// The same in whole days, 1 to 36,500; halves go to the even day.
    #[must_use]
    pub fn interval(&self, retention: f64) -> u32 {
        whole(rint(self.until(retention)).clamp(1.0, LONGEST))
    }

    /// Days until it comes back.
    #[must_use]
    pub fn returns(&self) -> u32 {
        self.interval(RETENTION)
    }

    fn same_day(&self, grade: Grade) -> f64 {
        let k = exp(W[17] * (grade.number() - 3.0 + W[18])) * pow(self.stability, -W[19]);
        // Of the ports' versions the later ones: *hard* on the same day never shortens.
        self.stability * if grade == Grade::Again { k } else { k.max(1.0) }
    }

    fn kept(&self, days: u32, grade: Grade) -> f64 {
        let held = self.held(f64::from(days));
        let by_grade = match grade {
            Grade::Hard => W[15],
            Grade::Easy => W[16],
            Grade::Again | Grade::Good => 1.0,
        };
        let more = exp(W[8])
            * (11.0 - self.difficulty)
            * pow(self.stability, -W[9])
            * (exp(W[10] * (1.0 - held)) - 1.0)
            * by_grade;
        self.stability * (1.0 + more)
    }

    fn lost(&self, days: u32) -> f64 {
        let held = self.held(f64::from(days));
        let left = W[11]
            * pow(self.difficulty, -W[12])
            * (pow(self.stability + 1.0, W[13]) - 1.0)
            * exp(W[14] * (1.0 - held));
        left.min(self.stability / exp(W[17] * W[18]))
    }

    fn harder(&self, grade: Grade) -> f64 {
        let by = -W[6] * (grade.number() - 3.0);
        let damped = self.difficulty + by * (10.0 - self.difficulty) / 9.0;
        (W[7] * beginning(Grade::Easy) + (1.0 - W[7]) * damped).clamp(1.0, 10.0)
    }
}

/// Difficulty after a first answer, before it is kept within 1 to 10.
fn beginning(grade: Grade) -> f64 {
    W[4] - exp(W[5] * (grade.number() - 1.0)) + 1.0
}

fn decay() -> f64 {
    -W[20]
}

/// Makes the chance 0.9 after `stability` days.
fn factor() -> f64 {
    pow(0.9, 1.0 / decay()) - 1.0
}

/// A number of days that is whole and within 1 to 36,500.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped before")]
const fn whole(days: f64) -> u32 {
    days as u32
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::past::Sure;
    use crate::trial::{START, attempt, rule};

    const SKILL: Skill = Skill::Covering;

    #[test]
    fn the_chance_is_nine_in_ten_once_the_stability_is_over() {
        for stability in [0.001, 0.5, 3.0, 10.0, 400.0, 30_000.0] {
            let memory = Memory { stability, difficulty: 5.0 };
            assert!((memory.held(stability) - 0.9).abs() < 1e-12);
            assert_eq!(memory.held(0.0), 1.0);
            assert!((memory.held(memory.until(0.8)) - 0.8).abs() < 1e-12);
        }
    }

    #[test]
    fn a_better_answer_is_never_held_for_less_long_and_never_harder_to_hold() {
        for stability in [0.01, 1.0, 10.0, 300.0] {
            for difficulty in [1.0, 4.0, 10.0] {
                for days in [0, 1, 7, 60, 2000] {
                    let before = Memory { stability, difficulty };
                    let after = Grade::ALL.map(|grade| before.after(days, grade));
                    for pair in after.windows(2) {
                        assert!(pair[0].stability <= pair[1].stability, "{before:?}, {days}");
                        assert!(pair[0].difficulty >= pair[1].difficulty, "{before:?}, {days}");
                    }
                    assert!(after[1].stability >= stability, "a right answer shortens nothing");
                    let bounds = |one: &Memory| {
                        one.stability >= LEAST && (1.0..=10.0).contains(&one.difficulty)
                    };
                    assert!(after.iter().all(bounds));
                }
            }
        }
    }

    #[test]
    fn the_longer_the_gap_the_more_a_right_answer_adds() {
        let before = Memory { stability: 10.0, difficulty: 5.0 };
        let gaps = [1, 5, 10, 30, 90].map(|days| before.after(days, Grade::Good).stability);
        assert!(gaps.windows(2).all(|pair| pair[0] < pair[1]), "{gaps:?}");
    }

    #[test]
    fn a_grade_follows_from_faults_help_and_how_sure_one_was() {
        let step = rule(SKILL).step;
        let sure = |percent| Sure { step, percent, right: true };
        let right = || attempt(START).right(SKILL);
        let of = |past: &Past| Grade::of(past, SKILL);
        assert_eq!(of(&attempt(START)), None);
        assert_eq!(of(&attempt(START).wrong(SKILL).right(SKILL)), Some(Grade::Again));
        assert_eq!(of(&right()), Some(Grade::Good));
        assert_eq!(of(&right().with(Help::Guided)), Some(Grade::Hard));
        let with = |all: &[u8]| {
            let mut past = right();
            past.sure = all.iter().map(|percent| sure(*percent)).collect();
            past
        };
        assert_eq!(of(&with(&[90, 100])), Some(Grade::Easy));
        assert_eq!(of(&with(&[75, 100])), Some(Grade::Good));
        // How sure one was of another step says nothing here.
        let mut other = with(&[100]);
        other.sure[0].step = rule(Skill::Patient).step;
        assert_ne!(other.sure[0].step, step);
        assert_eq!(of(&other), Some(Grade::Good));
        assert_eq!(of(&with(&[100]).with(Help::Guided)), Some(Grade::Hard));
        assert_eq!(of(&with(&[100]).wrong(SKILL)), Some(Grade::Again));
    }
}
