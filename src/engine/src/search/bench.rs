//! Where whole plans are tried on one site.

use super::cost::{Cost, changes};
use crate::cases::proof_with;
use crate::chart::Case;
use crate::debrief::{Verdict, judge_by};
use crate::measure::{Ground, Measurements};
use crate::plan::choices::Course;
use crate::plan::{Decision, Draft, Plan, is_asked};

/// Where plans are judged: the case as it was opened, and as the learner's events left it.
pub(super) struct Bench<'a> {
    pub(super) opened: &'a Case,
    pub(super) left: &'a Case,
    pub(super) grounds: [Ground; 2],
    pub(super) judged: u32,
    /// The plan by the book whose answers fill what a change brings in.
    pub(super) book: Draft,
}

impl<'a> Bench<'a> {
    pub(super) fn of(opened: &'a Case, left: &'a Case) -> Self {
        let grounds = [Ground::of(&opened.site), Ground::of(&left.site)];
        Self { opened, left, grounds, judged: 0, book: Draft::empty() }
    }

    /// A plan by the book in this course on the site as it was left.
    pub(super) fn book(&self, course: Course) -> Option<Draft> {
        let proof = proof_with(self.left, course)?;
        (proof.course == course).then_some(proof.draft)
    }

    /// What is wrong with a whole draft; `None` where it cannot be carried out.
    pub(super) fn faults(&mut self, draft: &Draft) -> Option<Vec<Verdict>> {
        self.judged += 1;
        let plan = Plan::from_draft(draft, self.opened).ok()?;
        let before = Measurements::on(&self.grounds[0], self.opened, &plan);
        let after = Measurements::on(&self.grounds[1], self.left, &plan);
        let verdicts = judge_by(&before, &after);
        Some(verdicts.into_iter().filter(Verdict::is_fault).collect())
    }

    pub(super) fn is_sound(&mut self, draft: &Draft) -> bool {
        self.faults(draft).is_some_and(|wrong| wrong.is_empty())
    }

    /// The draft with what it does not ask left out and what it newly asks answered by the book.
    pub(super) fn completed(&self, draft: &Draft) -> Option<Draft> {
        let mut draft = draft.clone();
        loop {
            let all = Decision::ALL.iter().map(|entry| entry.decision);
            let asked: Vec<Decision> =
                all.filter(|decision| is_asked(*decision, &draft, self.opened)).collect();
            let idle: Vec<Decision> = draft
                .iter()
                .map(|(decision, _)| decision)
                .filter(|decision| !asked.contains(decision))
                .collect();
            let missing = asked.into_iter().find(|decision| draft.value(*decision).is_none());
            let settled = idle.is_empty() && missing.is_none();
            idle.into_iter().for_each(|decision| draft.clear(decision));
            if settled {
                return Some(draft);
            }
            if let Some(missing) = missing {
                draft.choose(missing, self.book.value(missing)?.clone()).ok()?;
            }
        }
    }

    pub(super) fn cost(&self, mine: &Draft, draft: &Draft) -> Cost {
        Cost::of(&changes(self.opened, mine, draft))
    }
}
