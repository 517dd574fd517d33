//! The proof that a case can be solved: a whole plan that no rule calls outside or unsafe.
//!
//! Nothing here knows what a rule says. Candidate plans are put together as care goes (what the
//! history asks for, a course, a placement, a cover); every rule judges them; a candidate with faults
//! is mended by trying the other answers of the decisions that the faulty rules read. The first
//! sound one is the proof. It is found the same way every time.

mod base;
mod cover;
mod mend;
mod place;
mod septum;

use crate::chart::Case;
use crate::debrief::{Verdict, judge_by};
use crate::measure::{Ground, Measurements};
use crate::plan::choices::Course;
use crate::plan::{Decision, Draft, Plan, is_asked};

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
    let site = Workshop { case, ground: Ground::of(&case.site) };
    let base = base::draft(case, course);
    let mut spoilt: Vec<(u32, Draft)> = Vec::new();
    // First as they come; only what fails that way is mended, the least bad first.
    let mut sound = |draft: Draft| {
        let draft = pruned(case, &draft);
        let wrong = site.faults(&draft)?;
        if wrong.is_empty() {
            return Some(draft);
        }
        spoilt.push((badness(&wrong), draft));
        None
    };
    let found = match course {
        Course::PlaceToday => place::placements(&site, &base)
            .find_map(|placed| cover::covered(&site, &placed).find_map(&mut sound)),
        Course::GraftAndReturn => cover::covered(&site, &base).find_map(&mut sound),
        _ => sound(base),
    };
    let draft = found.or_else(|| {
        spoilt.sort_by_key(|(bad, _)| *bad);
        spoilt.into_iter().take(MOST_MENDED).find_map(|(_, draft)| mend::mended(&site, draft))
    })?;
    let course = crate::plan::course(&draft)?;
    Some(Proof { draft, course })
}

/// How many candidates of one course are mended.
const MOST_MENDED: usize = 2;

/// A case and what its site is whatever the plan: worked out once, used by every candidate.
struct Workshop<'a> {
    case: &'a Case,
    ground: Ground,
}

impl Workshop<'_> {
    /// Measurements of a plan here.
    fn measured<'b>(&'b self, plan: &'b Plan) -> Measurements<'b> {
        Measurements::on(&self.ground, self.case, plan)
    }

    /// What is wrong with a draft; `None` when it cannot be carried out.
    fn faults(&self, draft: &Draft) -> Option<Vec<Verdict>> {
        let plan = Plan::from_draft(draft, self.case).ok()?;
        let verdicts = judge_by(&self.measured(&plan));
        Some(verdicts.into_iter().filter(Verdict::is_fault).collect())
    }
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
fn pruned(case: &Case, draft: &Draft) -> Draft {
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
