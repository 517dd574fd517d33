//! The proof that a case can be solved: a whole plan that no rule calls outside or unsafe.
//!
//! Nothing here knows what a rule says. Candidate plans are put together as care goes (what the
//! history asks for, a course, a placement, a cover); every rule judges them; a candidate with faults
//! is mended by trying the other answers of the decisions that the faulty rules read. The first
//! sound one is the proof. It is found the same way every time.

mod base;
mod cover;
mod late;
mod mend;
mod place;
mod septum;

use crate::chart::Case;
use crate::debrief::{Verdict, judge_by};
use crate::events;
use crate::geometry::order;
use crate::measure::{Ground, Measurements};
use crate::plan::choices::Course;
use crate::plan::{Decision, Draft, Plan, Step, is_asked};

/// A sound plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Proof {
    /// The choices.
    pub draft: Draft,
    /// The course of care that they end up with.
    pub course: Course,
}

/// A sound plan of the case, if one is found: the same one every time.
#[must_use]
pub fn proof(case: &Case) -> Option<Proof> {
    base::courses(case).into_iter().find_map(|course| proof_with(case, course))
}

/// A sound plan of the case that intends this course, if one is found.
#[must_use]
pub fn proof_with(case: &Case, course: Course) -> Option<Proof> {
    let base = base::draft(case, course);
    let now = left_by(case, &base);
    let site = Workshop::of(case, &now);
    let base = base::answering(&now, base);
    let mut spoilt: Vec<(u32, Draft)> = Vec::new();
    // First as they come; only what fails that way is mended, the least bad first.
    let mut sound = |draft: Draft| {
        let placed = pruned(case, &late::placed(&site, draft.clone()));
        let wrong = site.faults(&placed)?;
        if wrong.is_empty() {
            return Some(placed);
        }
        // Where nothing but the implant in the healed site is at fault, the ridge is built up first.
        if wrong.iter().all(|fault| fault.rule.step >= Step::ReEntry) {
            let built = pruned(case, &draft);
            if site.faults(&built).is_some_and(|wrong| wrong.is_empty()) {
                return Some(built);
            }
        }
        spoilt.push((badness(&wrong), placed));
        None
    };
    // Where the extraction spends a wall, what was intended is put off as an operator would.
    let found = match crate::plan::course(&base)? {
        Course::PlaceToday => place::placements(&site, &base)
            .find_map(|placed| cover::covered(&site, &placed).find_map(&mut sound)),
        Course::GraftAndReturn => cover::covered(&site, &base).find_map(&mut sound),
        _ => sound(base),
    };
    let draft = found.or_else(|| {
        order::sort_short_by_key(&mut spoilt, |(bad, _)| *bad);
        spoilt.into_iter().take(MOST_MENDED).find_map(|(_, draft)| mend::mended(&site, draft))
    })?;
    let course = crate::plan::course(&draft)?;
    Some(Proof { draft, course })
}

/// How many candidates of one course are mended.
const MOST_MENDED: usize = 2;

/// A case and what its site is whatever the plan: worked out once, used by every candidate.
pub(super) struct Workshop<'a> {
    /// As the extraction by the book leaves it.
    case: &'a Case,
    ground: Ground,
    /// As it was before, where that is another.
    before: Option<(&'a Case, Ground)>,
}

impl<'a> Workshop<'a> {
    pub(super) fn of(case: &'a Case, now: &'a Case) -> Self {
        let before = (case != now).then(|| (case, Ground::of(&case.site)));
        Self { case: now, ground: Ground::of(&now.site), before }
    }

    /// Measurements of a plan here.
    fn measured<'b>(&'b self, plan: &'b Plan) -> Measurements<'b> {
        Measurements::on(&self.ground, self.case, plan)
    }

    /// What is wrong with a draft; `None` when it cannot be carried out.
    pub(super) fn faults(&self, draft: &Draft) -> Option<Vec<Verdict>> {
        let opened = self.before.as_ref().map_or(self.case, |(case, _)| case);
        let plan = Plan::from_draft(draft, opened).ok()?;
        let now = events::after(opened, &plan);
        let before = match &self.before {
            Some((case, ground)) => Measurements::on(ground, case, &plan),
            None => self.measured(&plan),
        };
        // A draft that takes the tooth out otherwise has events of its own.
        let after = if now.broken == self.case.broken && now.site.defects == self.case.site.defects
        {
            self.measured(&plan)
        } else {
            Measurements::of(&now, &plan)
        };
        let verdicts = judge_by(&before, &after);
        Some(verdicts.into_iter().filter(Verdict::is_fault).collect())
    }
}

/// The case as this draft's extraction leaves it.
pub(super) fn left_by(case: &Case, draft: &Draft) -> Case {
    let mut plan = Plan::default();
    let due = crate::plan::steps(draft);
    for step in due.into_iter().filter(|step| *step <= Step::Extraction) {
        if plan.carry_out(step, draft, case).is_err() {
            break;
        }
    }
    events::after(case, &plan).into_owned()
}

/// How bad faults are together: unsafe weighs more than any number of what only compromises, and
/// that more than any number of what is merely suboptimal.
fn badness(faults: &[Verdict]) -> u32 {
    use crate::rules::Zone;
    faults
        .iter()
        .map(|fault| match fault.zone {
            Zone::Unsafe => 10_000,
            Zone::Compromising => 100,
            _ => 1,
        })
        .sum()
}

/// The draft without answers that nothing asks for.
pub(super) fn pruned(case: &Case, draft: &Draft) -> Draft {
    let idle: Vec<Decision> = draft
        .iter()
        .map(|(decision, _)| decision)
        .filter(|decision| !is_asked(*decision, draft, case))
        .collect();
    let mut pruned = draft.clone();
    for decision in idle {
        pruned.clear(decision);
    }
    pruned
}
