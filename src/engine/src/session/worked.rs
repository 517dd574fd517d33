//! A worked case: the sound plan of a case told step by step with the reasons for each choice, or only
//! its beginning, so that the learner ends it.
//!
//! Reasons are the verdicts of that very plan: every rule that applies to it is told once, beside the
//! first of the decisions that it reads.

use super::{Event, Session};
use crate::cases;
use crate::chart::Case;
use crate::debrief::{Verdict, judge};
use crate::geometry::order;
use crate::plan::{Decision, Draft, Plan, Step, Value, steps};
use crate::rules::Zone;
use core::cmp::Reverse;

/// How much of a case is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shown {
    /// Every step.
    Whole,
    /// All steps before graft and membrane, three fifths of them where neither is laid: the learner
    /// ends it.
    Begun,
}

/// How many reasons are told beside one decision at most.
const MOST_REASONS: usize = 2;

/// The sound plan of a case, to be told.
#[derive(Debug, Clone)]
pub struct Lesson {
    sound: Draft,
    verdicts: Vec<Verdict>,
    /// The steps that are shown.
    shown: Vec<Step>,
}

/// One decision of a worked case.
#[derive(Debug, Clone)]
pub struct Told<'a> {
    /// Which.
    pub decision: Decision,
    /// What is chosen.
    pub value: &'a Value,
    /// What the rules say of it, what weighs most first.
    pub because: Vec<&'a Verdict>,
}

impl Lesson {
    /// Of the plan that proves the case solvable; `None` where none does.
    #[must_use]
    pub fn of(case: &Case, shown: Shown) -> Option<Self> {
        let sound = cases::proof(case)?.draft;
        let plan = Plan::from_draft(&sound, case).ok()?;
        let mut course = steps(&sound);
        if shown == Shown::Begun {
            let graft = course.iter().position(|step| *step == Step::Graft);
            course.truncate(graft.unwrap_or_else(|| course.len() * 3 / 5));
        }
        Some(Self { verdicts: judge(case, &plan), shown: course, sound })
    }

    /// Whether this step is shown, or left to the learner.
    #[must_use]
    pub fn shows(&self, step: Step) -> bool {
        self.shown.contains(&step)
    }

    /// What is chosen where a session stands, decision by decision.
    #[must_use]
    pub fn told(&self, session: &Session) -> Vec<Told<'_>> {
        let Some(due) = session.due().filter(|due| self.shows(*due)) else { return Vec::new() };
        // Answers that bring in others of the same step are taken into account as they are given.
        let mut ahead = session.clone();
        let mut told: Vec<Told<'_>> = Vec::new();
        while let Some((decision, value)) = self.next(&ahead, due) {
            if ahead.apply(Event::Choose(decision, Some(value.clone()))).is_err() {
                break;
            }
            told.push(Told { decision, value, because: self.because(decision) });
        }
        told
    }

    /// The events that carry the step out as it is told.
    #[must_use]
    pub fn events(&self, session: &Session) -> Vec<Event> {
        let told = self.told(session).into_iter();
        let choices = told.map(|told| Event::Choose(told.decision, Some(told.value.clone())));
        choices.chain(session.due().map(Event::CarryOut)).collect()
    }

    /// The first decision of a step that is asked and not yet answered, with its answer.
    fn next(&self, session: &Session, due: Step) -> Option<(Decision, &Value)> {
        let open = session.draft().undecided(due, session.opened());
        let asked = open.into_iter().find(|decision| session.is_asked(*decision))?;
        Some((asked, self.sound.value(asked)?))
    }

    /// What the rules say of one decision of the sound plan.
    fn because(&self, decision: Decision) -> Vec<&Verdict> {
        let told = |verdict: &&Verdict| {
            verdict.rule.reads.first() == Some(&decision) && verdict.zone <= Zone::Debated
        };
        let mut because: Vec<&Verdict> = self.verdicts.iter().filter(told).collect();
        order::sort_short_by_key(&mut because, |verdict| Reverse(verdict.rule.cost()));
        because.truncate(MOST_REASONS);
        because
    }
}

#[cfg(test)]
mod tests {
    use super::super::Mode;
    use super::*;
    use crate::cases::{Constraints, Spread, generate_as};
    use crate::debrief::PlanWord;

    fn all_cases() -> impl Iterator<Item = Case> {
        let spreads = [Spread::Teaching, Spread::WholeMouth];
        spreads.into_iter().flat_map(|spread| {
            (1..=30).map(move |seed| generate_as(spread, seed, &Constraints::default()).unwrap())
        })
    }

    #[test]
    fn a_case_that_is_shown_whole_comes_to_its_end_and_is_sound() {
        let mut reasons = 0;
        for case in all_cases() {
            let lesson = Lesson::of(&case, Shown::Whole).unwrap();
            let mut session = Session::open(case, Mode::Study);
            let mut turns = 0;
            while session.due().is_some() {
                for told in lesson.told(&session) {
                    reasons += told.because.len();
                    assert!(told.because.len() <= MOST_REASONS);
                }
                for event in lesson.events(&session) {
                    session.apply(event).unwrap();
                }
                turns += 1;
                assert!(turns < 40, "{:?} stands still", session.opened().address);
            }
            let debrief = session.debrief(None).expect("over");
            assert_eq!(debrief.word, PlanWord::Sound, "{:?}", session.opened().address);
        }
        assert!(reasons > 1500, "{reasons}");
    }

    #[test]
    fn a_case_that_is_begun_leaves_the_last_steps_open_and_shows_the_first() {
        for case in all_cases() {
            let lesson = Lesson::of(&case, Shown::Begun).unwrap();
            let mut session = Session::open(case, Mode::Study);
            while session.due().is_some_and(|due| lesson.shows(due)) {
                for event in lesson.events(&session) {
                    session.apply(event).unwrap();
                }
            }
            let course = steps(&lesson.sound).len();
            let done = session.done().len();
            assert!(!session.is_over() && done >= 2, "{:?}", session.opened().address);
            assert!(course > done && done * 3 >= course, "{done} of {course}");
            assert!(lesson.told(&session).is_empty(), "the rest is the learner's");
        }
    }

    #[test]
    fn no_reason_is_told_twice_in_a_case() {
        for case in all_cases().take(12) {
            let lesson = Lesson::of(&case, Shown::Whole).unwrap();
            let mut session = Session::open(case, Mode::Study);
            let mut told: Vec<&str> = Vec::new();
            while session.due().is_some() {
                let reasons = lesson.told(&session).into_iter().flat_map(|told| told.because);
                told.extend(reasons.map(|verdict| verdict.rule.id));
                for event in lesson.events(&session) {
                    session.apply(event).unwrap();
                }
            }
            let once: std::collections::BTreeSet<&str> = told.iter().copied().collect();
            assert_eq!(once.len(), told.len(), "{told:?}");
        }
    }
}
