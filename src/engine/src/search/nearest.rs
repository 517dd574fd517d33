//! The sound plan that is nearest to a learner's own.
//!
//! Wanted are the fewest changes, then the smallest, after which no rule faults the plan; first within
//! the learner's own course of care, and in another course only where that one has no sound plan. The
//! search is made on the site as the learner's own events have left it.
//!
//! An upper bound comes from a plan by the book, from which everything is taken back that need not
//! differ. Then fewer changes are looked for from below: some decision that a faulty rule reads has to
//! change, so those are tried, each with its other answers, and again for what is still faulty. The
//! searched space is what [`answers`](super::answers) offers for each decision, with the answers by the book; within it
//! nothing nearer exists when [`Nearest::proven`] says so.

use super::answers::{between, others};
use super::bench::Bench;
use super::cost::{Change, Cost, changes};
use crate::chart::Case;
use crate::debrief::Verdict;
use crate::events;
use crate::geometry::order;
use crate::plan::PLACED_BY;
use crate::plan::choices::Course;
use crate::plan::{Decision, Draft, Plan, is_asked};
use crate::rules::Rule;

/// How many plans are judged in the search from below before it is given up.
const MOST_JUDGED: u32 = 2_500;
/// How many changes mend a draft at most.
const MOST_MENDS: usize = 8;
/// How many changes the search from below tries at most.
const DEEPEST: usize = 3;

/// Where else a plan is looked for that the learner's course does not hold: what still ends in an
/// implant, what waits or hands on, and what goes without.
const OTHERS: [&[Course]; 3] = [
    &[Course::PlaceToday, Course::GraftAndReturn, Course::ReturnEarly, Course::LetHeal],
    &[Course::Postpone, Course::Refer, Course::SecondOpinion, Course::KeepTooth],
    &[Course::Bridge, Course::Removable, Course::NoReplacement],
];

/// A sound plan, and how it differs from the learner's.
#[derive(Debug, Clone)]
pub struct Nearest {
    /// Its choices.
    pub draft: Draft,
    /// Its course of care.
    pub course: Course,
    /// What it changes, in the order of care.
    pub changes: Vec<Change>,
    /// The change that does most by itself; `None` where nothing has to change.
    pub first: Option<Decision>,
    /// Rules that no plan within the learner's course could keep; empty where the course was kept.
    pub forced_by: Vec<&'static Rule>,
    /// Whether nothing nearer exists in the searched space.
    pub proven: bool,
}

/// Looks for the sound plan that is nearest to this one; `None` where none is found at all, or where
/// the draft is not a whole plan.
#[must_use]
pub fn nearest(case: &Case, mine: &Draft) -> Option<Nearest> {
    let plan = Plan::from_draft(mine, case).ok()?;
    let left = events::after(case, &plan).into_owned();
    let mut bench = Bench::of(case, &left);
    let wrong = bench.faults(mine)?;
    let own = crate::plan::course(mine)?;
    if wrong.is_empty() {
        let (draft, changes) = (mine.clone(), Vec::new());
        return Some(Nearest {
            draft,
            course: own,
            changes,
            first: None,
            forced_by: Vec::new(),
            proven: true,
        });
    }
    let (mut best, forced_by) = bench.bound(mine, own, &wrong)?;
    let keep = crate::plan::course(&best)?;
    let proven = bench.improve(mine, &wrong, &mut best, keep);
    let changes = changes(case, mine, &best);
    let first = bench.telling(mine, &changes, &wrong);
    let course = crate::plan::course(&best)?;
    Some(Nearest { draft: best, course, changes, first, forced_by, proven })
}

impl Bench<'_> {
    /// A sound draft near to the learner's, in its own course where that has one; and the rules that
    /// force another, which nothing within the course keeps.
    fn bound(
        &mut self,
        mine: &Draft,
        own: Course,
        wrong: &[Verdict],
    ) -> Option<(Draft, Vec<&'static Rule>)> {
        if let Some(found) = self.book(own).and_then(|book| self.bounded(mine, book)) {
            return Some((found, Vec::new()));
        }
        let (mended, still) = self.mended(mine, own, wrong.to_vec());
        if still.is_empty() {
            return Some((self.bounded(mine, mended)?, Vec::new()));
        }
        let forced_by = still.into_iter().map(|fault| fault.rule).collect();
        Some((self.elsewhere(mine, own)?, forced_by))
    }

    /// A sound draft near to the learner's: the book with everything taken back that can be.
    fn bounded(&mut self, mine: &Draft, book: Draft) -> Option<Draft> {
        self.book = book.clone();
        let mut best = self.completed(&book).filter(|draft| self.is_sound(draft))?;
        loop {
            let before = self.cost(mine, &best);
            self.take_back(mine, &mut best);
            self.draw_near(mine, &mut best);
            if self.cost(mine, &best) >= before {
                return Some(best);
            }
        }
    }

    /// Gives decisions their old answer wherever the plan stays sound: whole steps first, then the
    /// placement, then one by one.
    fn take_back(&mut self, mine: &Draft, best: &mut Draft) {
        let differing = changes(self.opened, mine, best);
        let differing: Vec<Decision> = differing.iter().map(|change| change.decision).collect();
        let steps = order::set_of(differing.iter().map(|decision| decision.step()));
        let of_step = |step| differing.iter().copied().filter(|one| one.step() == step).collect();
        let mut groups: Vec<Vec<Decision>> = steps.into_iter().map(of_step).collect();
        groups.push(differing.iter().copied().filter(|one| PLACED_BY.contains(one)).collect());
        groups.extend(differing.iter().map(|one| vec![*one]));
        for group in groups.into_iter().filter(|group| !group.is_empty()) {
            let mut tried = best.clone();
            for decision in group {
                match mine.value(decision) {
                    Some(value) => drop(tried.choose(decision, value.clone())),
                    None => tried.clear(decision),
                }
            }
            self.keep_if_nearer(mine, tried, best);
        }
    }

    /// Moves answers that have to differ as near to the old ones as the plan stays sound.
    fn draw_near(&mut self, mine: &Draft, best: &mut Draft) {
        for change in changes(self.opened, mine, best) {
            let decision = change.decision;
            let (Some(from), Some(to)) = (mine.value(decision), best.value(decision)) else {
                continue;
            };
            for value in between(decision, from, to) {
                let mut tried = best.clone();
                let fits = tried.choose(decision, value).is_ok();
                if fits && self.keep_if_nearer(mine, tried, best) {
                    break;
                }
            }
        }
    }

    fn keep_if_nearer(&mut self, mine: &Draft, tried: Draft, best: &mut Draft) -> bool {
        let Some(tried) = self.completed(&tried) else { return false };
        let same_course = crate::plan::course(&tried) == crate::plan::course(best);
        let nearer = same_course && self.cost(mine, &tried) < self.cost(mine, best);
        let keep = nearer && self.is_sound(&tried);
        if keep {
            *best = tried;
        }
        keep
    }

    /// The nearest in another course: one that still ends in an implant before one that waits, and that
    /// before one without.
    fn elsewhere(&mut self, mine: &Draft, own: Course) -> Option<Draft> {
        let draft = OTHERS.iter().find_map(|tier| self.nearest_of(mine, own, tier))?;
        // What is filled in from now on is of that course.
        if let Some(book) = crate::plan::course(&draft).and_then(|course| self.book(course)) {
            self.book = book;
        }
        Some(draft)
    }

    /// The nearest in these courses but the learner's own.
    fn nearest_of(&mut self, mine: &Draft, own: Course, courses: &[Course]) -> Option<Draft> {
        let mut found: Option<(Cost, Draft)> = None;
        for course in courses.iter().copied().filter(|course| *course != own) {
            let Some(book) = self.book(course) else { continue };
            let Some(draft) = self.bounded(mine, book) else { continue };
            let cost = self.cost(mine, &draft);
            if found.as_ref().is_none_or(|(least, _)| cost < *least) {
                found = Some((cost, draft));
            }
        }
        found.map(|(_, draft)| draft)
    }

    /// The learner's draft mended within its course as far as it goes, one change after the other, each
    /// the one that leaves least wrong; and what is still wrong then.
    fn mended(&mut self, mine: &Draft, own: Course, wrong: Vec<Verdict>) -> (Draft, Vec<Verdict>) {
        let (mut draft, mut wrong) = (mine.clone(), wrong);
        for _ in 0..MOST_MENDS {
            let mut best: Option<(Draft, Vec<Verdict>)> = None;
            let reads = order::set_of(wrong.iter().flat_map(|fault| fault.rule.reads).copied());
            for decision in reads {
                for value in others(decision, &draft, &self.book) {
                    let mut tried = draft.clone();
                    if tried.choose(decision, value).is_err() {
                        continue;
                    }
                    let Some(tried) = self.completed(&tried) else { continue };
                    if crate::plan::course(&tried) != Some(own) {
                        continue;
                    }
                    let Some(left) = self.faults(&tried) else { continue };
                    if badness(&left) < badness(best.as_ref().map_or(&wrong, |(_, wrong)| wrong)) {
                        best = Some((tried, left));
                    }
                }
            }
            let Some((better, left)) = best else { break };
            (draft, wrong) = (better, left);
        }
        (draft, wrong)
    }

    /// Looks for a sound plan of lesser cost from below; whether the space was searched through.
    fn improve(
        &mut self,
        mine: &Draft,
        wrong: &[Verdict],
        best: &mut Draft,
        course: Course,
    ) -> bool {
        let limit = self.judged + MOST_JUDGED;
        let most = changes(self.opened, mine, best).len();
        for depth in 1..most.min(DEEPEST + 1) {
            let mut path = Vec::new();
            let mut looking = Looking { mine, best, course, limit };
            self.deeper(&mut looking, mine, wrong, &mut path, depth);
            if self.judged >= limit {
                return false;
            }
            if changes(self.opened, mine, looking.best).len() <= depth {
                return true;
            }
        }
        most <= DEEPEST + 1
    }

    fn deeper(
        &mut self,
        looking: &mut Looking<'_>,
        draft: &Draft,
        wrong: &[Verdict],
        path: &mut Vec<Decision>,
        left: usize,
    ) {
        // Some decision that a faulty rule reads has to change: of the rule with the fewest of them.
        let open = |fault: &Verdict| {
            let reads = fault.rule.reads.iter().copied();
            reads.filter(|one| !path.contains(one) && is_asked(*one, draft, self.opened)).collect()
        };
        let reads: Option<Vec<Decision>> = wrong.iter().map(open).min_by_key(Vec::len);
        for decision in reads.into_iter().flatten() {
            path.push(decision);
            for value in others(decision, draft, &self.book) {
                if self.judged >= looking.limit {
                    break;
                }
                let mut tried = draft.clone();
                if tried.choose(decision, value).is_err() {
                    continue;
                }
                let Some(tried) = self.completed(&tried) else { continue };
                self.judge_one(looking, &tried, path, left);
            }
            path.pop();
        }
    }

    fn judge_one(
        &mut self,
        looking: &mut Looking<'_>,
        tried: &Draft,
        path: &mut Vec<Decision>,
        left: usize,
    ) {
        if crate::plan::course(tried) != Some(looking.course) {
            return;
        }
        let cost = self.cost(looking.mine, tried);
        if cost >= self.cost(looking.mine, looking.best) {
            return;
        }
        let Some(wrong) = self.faults(tried) else { return };
        if wrong.is_empty() {
            *looking.best = tried.clone();
        } else if left > 1 {
            self.deeper(looking, tried, &wrong, path, left - 1);
        }
    }

    /// The change that by itself rids the learner's plan of most: the heaviest faults first.
    fn telling(&mut self, mine: &Draft, changes: &[Change], wrong: &[Verdict]) -> Option<Decision> {
        let mut found: Option<(u32, Decision)> = None;
        for change in changes {
            let mut tried = mine.clone();
            if tried.choose(change.decision, change.to.clone()).is_err() {
                continue;
            }
            let left = self
                .completed(&tried)
                .and_then(|tried| self.faults(&tried))
                .map_or_else(|| badness(wrong), |left| badness(&left));
            if found.is_none_or(|(least, _)| left < least) {
                found = Some((left, change.decision));
            }
        }
        found.map(|(_, decision)| decision)
    }
}

/// How bad faults are together: what weighs most first, then how many there are.
fn badness(wrong: &[Verdict]) -> u32 {
    wrong.iter().map(|fault| 100 * fault.weight_of_fault() + 1).sum()
}

/// What the search from below is looking for.
struct Looking<'a> {
    mine: &'a Draft,
    best: &'a mut Draft,
    course: Course,
    limit: u32,
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cases::{generate, proof_with};
    use crate::plan::Value;

    /// Cases with a sound plan that places an implant today.
    fn placed(count: usize) -> impl Iterator<Item = (Case, Draft)> {
        let one = |seed| {
            let case = generate(seed).ok()?;
            let draft = proof_with(&case, Course::PlaceToday)?.draft;
            (crate::plan::course(&draft) == Some(Course::PlaceToday)).then_some((case, draft))
        };
        (1..).filter_map(one).take(count)
    }

    fn moved(draft: &Draft, decision: Decision, by: i32) -> Option<Draft> {
        let mut moved = draft.clone();
        moved.choose(decision, Value::Number(draft.number(decision)? + by)).ok()?;
        Some(moved)
    }

    #[test]
    fn a_sound_plan_is_nearest_to_itself() {
        for (case, draft) in placed(4) {
            let found = nearest(&case, &draft).unwrap();
            assert_eq!((found.draft, found.changes.len(), found.first), (draft, 0, None));
        }
    }

    #[test]
    fn one_planted_fault_is_mended_by_one_change_and_it_is_named_first() {
        for (case, draft) in placed(12) {
            for (decision, by) in [(Decision::OffsetFacial, 15), (Decision::SuturesOut, 15)] {
                let Some(mine) = moved(&draft, decision, by) else { continue };
                let found = nearest(&case, &mine).unwrap();
                if found.changes.is_empty() {
                    continue;
                }
                assert!(found.proven, "{:?}", case.address);
                assert_eq!(found.changes.len(), 1, "{:?} {:?}", case.address, found.changes);
                assert_eq!(found.first, Some(found.changes[0].decision));
                assert!(found.forced_by.is_empty());
            }
        }
    }

    /// The least cost of all sound plans that differ in one answer, or in two among the decisions that
    /// faulty rules read; by trying every one.
    fn exhaustive(bench: &mut Bench<'_>, mine: &Draft, wrong: &[Verdict]) -> Option<Cost> {
        let own = crate::plan::course(mine);
        let all = |draft: &Draft, bench: &Bench<'_>| -> Vec<Draft> {
            let asked = Decision::ALL.iter().map(|entry| entry.decision);
            let asked = asked.filter(|decision| is_asked(*decision, draft, bench.opened));
            let read = |one: &Decision| wrong.iter().any(|fault| fault.rule.reads.contains(one));
            let answers = asked.filter(read).flat_map(|decision| {
                others(decision, draft, &bench.book).into_iter().map(move |value| (decision, value))
            });
            let change = |(decision, value)| {
                let mut changed = draft.clone();
                changed.choose(decision, value).ok()?;
                bench.completed(&changed)
            };
            let drafts: Vec<Draft> = answers.filter_map(change).collect();
            drafts
        };
        let mut least: Option<Cost> = None;
        for one in all(mine, bench) {
            for two in std::iter::once(one.clone()).chain(all(&one, bench)) {
                let cost = bench.cost(mine, &two);
                let nearer = least.is_none_or(|kept| cost < kept);
                if nearer && crate::plan::course(&two) == own && bench.is_sound(&two) {
                    least = Some(cost);
                }
            }
        }
        least
    }

    #[test]
    fn nothing_nearer_is_found_by_trying_every_pair_of_answers() {
        let mut compared = 0;
        for (case, draft) in placed(6) {
            let planted = moved(&draft, Decision::SuturesOut, 18)
                .and_then(|draft| moved(&draft, Decision::RestoreAfter, -8).or(Some(draft)));
            let Some(mine) = planted else { continue };
            let Some(found) = nearest(&case, &mine).filter(|found| !found.changes.is_empty())
            else {
                continue;
            };
            let plan = Plan::from_draft(&mine, &case).unwrap();
            let left = events::after(&case, &plan).into_owned();
            let mut bench = Bench::of(&case, &left);
            bench.book = draft;
            let wrong = bench.faults(&mine).unwrap();
            let least = exhaustive(&mut bench, &mine, &wrong);
            compared += u32::from(least.is_some());
            assert!(
                least.is_none_or(|least| Cost::of(&found.changes) <= least),
                "{:?}: {least:?} {:?}",
                case.address,
                found.changes
            );
        }
        assert!(compared >= 3, "{compared}");
    }

    #[test]
    fn a_site_that_allows_no_implant_today_leads_to_another_course_and_names_what_forces_it() {
        let mut seen = 0;
        for seed in 1..60 {
            let case = generate(seed).unwrap();
            if proof_with(&case, Course::PlaceToday)
                .is_some_and(|one| one.course == Course::PlaceToday)
            {
                continue;
            }
            // A whole plan of another case that places today, tried here.
            let Some((_, mine)) = placed(1).next() else { continue };
            if Plan::from_draft(&mine, &case).is_err() {
                continue;
            }
            let Some(found) = nearest(&case, &mine) else { continue };
            seen += u32::from(found.course != Course::PlaceToday);
            // What is by the book is not all that is sound: one may be found within the course.
            let kept = found.course == Course::PlaceToday;
            assert_eq!(kept, found.forced_by.is_empty(), "{:?}", case.address);
            let plan = Plan::from_draft(&found.draft, &case).unwrap();
            let left = crate::debrief::judge(&case, &plan);
            assert!(!left.iter().any(Verdict::is_fault), "{:?}", case.address);
        }
        assert!(seen >= 3, "{seen}");
    }
}
