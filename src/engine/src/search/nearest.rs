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
use super::cost::{Change, Cost, changes};
use super::placement::PLACED_BY;
use crate::cases::proof_with;
use crate::chart::Case;
use crate::debrief::{Verdict, judge_by};
use crate::events;
use crate::measure::{Ground, Measurements};
use crate::plan::choices::{Alternative, Course};
use crate::plan::{Decision, Draft, Plan, is_asked};
use crate::rules::Rule;
use std::collections::BTreeSet;

/// How many plans are judged in the search from below before it is given up.
const MOST_JUDGED: u32 = 2_500;
/// How many changes the search from below tries at most.
const DEEPEST: usize = 3;

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
    let within = bench.book(own).and_then(|book| bench.bounded(mine, book));
    let (mut best, forced_by) = match within {
        Some(found) => (found, Vec::new()),
        None => (bench.elsewhere(mine, own)?, bench.forcing(mine, own, &wrong)),
    };
    let keep = crate::plan::course(&best)?;
    let proven = bench.improve(mine, &wrong, &mut best, keep);
    let changes = changes(case, mine, &best);
    let first = bench.telling(mine, &changes, &wrong);
    let course = crate::plan::course(&best)?;
    Some(Nearest { draft: best, course, changes, first, forced_by, proven })
}

/// Where plans are judged: the case as it was opened, and as the learner's events left it.
struct Bench<'a> {
    opened: &'a Case,
    left: &'a Case,
    grounds: [Ground; 2],
    judged: u32,
    /// The plan by the book whose answers fill what a change brings in.
    book: Draft,
}

impl<'a> Bench<'a> {
    fn of(opened: &'a Case, left: &'a Case) -> Self {
        let grounds = [Ground::of(&opened.site), Ground::of(&left.site)];
        Self { opened, left, grounds, judged: 0, book: Draft::empty() }
    }

    /// A plan by the book in this course on the site as it was left.
    fn book(&self, course: Course) -> Option<Draft> {
        let proof = proof_with(self.left, course)?;
        (proof.course == course).then_some(proof.draft)
    }

    /// What is wrong with a whole draft; `None` where it cannot be carried out.
    fn faults(&mut self, draft: &Draft) -> Option<Vec<Verdict>> {
        self.judged += 1;
        let plan = Plan::from_draft(draft, self.opened).ok()?;
        let before = Measurements::on(&self.grounds[0], self.opened, &plan);
        let after = Measurements::on(&self.grounds[1], self.left, &plan);
        let verdicts = judge_by(&before, &after);
        Some(verdicts.into_iter().filter(Verdict::is_fault).collect())
    }

    fn is_sound(&mut self, draft: &Draft) -> bool {
        self.faults(draft).is_some_and(|wrong| wrong.is_empty())
    }

    /// The draft with what it does not ask left out and what it newly asks answered by the book.
    fn completed(&self, draft: &Draft) -> Option<Draft> {
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

    fn cost(&self, mine: &Draft, draft: &Draft) -> Cost {
        Cost::of(&changes(self.opened, mine, draft))
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
        let steps: BTreeSet<_> = differing.iter().map(|decision| decision.step()).collect();
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

    /// The nearest in any other course.
    fn elsewhere(&mut self, mine: &Draft, own: Course) -> Option<Draft> {
        let mut found: Option<(Cost, Draft)> = None;
        for course in Course::ALL.iter().copied().filter(|course| *course != own) {
            let Some(book) = self.book(course) else { continue };
            let Some(draft) = self.bounded(mine, book) else { continue };
            let cost = self.cost(mine, &draft);
            if found.as_ref().is_none_or(|(least, _)| cost < *least) {
                found = Some((cost, draft));
            }
        }
        let (_, draft) = found?;
        // What is filled in from now on is of that course.
        if let Some(book) = crate::plan::course(&draft).and_then(|course| self.book(course)) {
            self.book = book;
        }
        Some(draft)
    }

    /// Rules that stay faulty however the decisions that they read are answered within this course.
    fn forcing(&mut self, mine: &Draft, own: Course, wrong: &[Verdict]) -> Vec<&'static Rule> {
        let mut forcing = Vec::new();
        for fault in wrong {
            let cures = fault.rule.reads.iter().copied().any(|decision| {
                others(decision, mine, &self.book).into_iter().any(|value| {
                    let mut tried = mine.clone();
                    if tried.choose(decision, value).is_err() {
                        return false;
                    }
                    let Some(tried) = self.completed(&tried) else { return false };
                    crate::plan::course(&tried) == Some(own)
                        && self
                            .faults(&tried)
                            .is_some_and(|left| left.iter().all(|still| still.rule != fault.rule))
                })
            });
            if !cures {
                forcing.push(fault.rule);
            }
        }
        forcing
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
        let weigh = |wrong: &[Verdict]| -> u32 {
            wrong.iter().map(|fault| 100 * fault.weight_of_fault() + 1).sum()
        };
        let mut found: Option<(u32, Decision)> = None;
        for change in changes {
            let mut tried = mine.clone();
            if tried.choose(change.decision, change.to.clone()).is_err() {
                continue;
            }
            let left = self
                .completed(&tried)
                .and_then(|tried| self.faults(&tried))
                .map_or_else(|| weigh(wrong), |left| weigh(&left));
            if found.is_none_or(|(least, _)| left < least) {
                found = Some((left, change.decision));
            }
        }
        found.map(|(_, decision)| decision)
    }
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
    use crate::cases::generate;
    use crate::plan::Value;
    use crate::units::Mm;

    #[test]
    #[ignore = "a look"]
    fn look() {
        for seed in 1..40_u64 {
            let case = generate(seed).unwrap();
            let Some(proof) = proof_with(&case, Course::PlaceToday) else { continue };
            let mut mine = proof.draft.clone();
            let _ = mine.choose(
                Decision::OffsetFacial,
                Value::Number(mine.number(Decision::OffsetFacial).unwrap() + 15),
            );
            let _ = mine.choose(Decision::AntisepticDays, Value::Number(1));
            let _ = mine.choose(Decision::Examinations, Value::Many(1));
            let Some(mine) = Bench::of(&case, &case).also(&proof.draft).completed(&mine) else {
                continue;
            };
            let start = std::time::Instant::now();
            let Some(found) = nearest(&case, &mine) else {
                println!("{seed} none");
                continue;
            };
            let took = start.elapsed();
            println!(
                "{seed} {took:?} {:?} proven {} first {:?}",
                Cost::of(&found.changes),
                found.proven,
                found.first
            );
            for change in &found.changes {
                println!(
                    "   {} {:?} -> {:?} ({})",
                    change.decision.key(),
                    change.from,
                    change.to,
                    change.steps
                );
            }
        }
        let _ = Mm::new(1.0);
    }

    impl Bench<'_> {
        fn also(mut self, book: &Draft) -> Self {
            self.book = book.clone();
            self
        }
    }
}
