//! Two cases that differ in one thing, just across an edge: what is right in the one has to change in
//! the other.
//!
//! What is right in the first is the plan that proves it solvable; it belongs to the case alone, so a
//! pair follows from the second case's address and from nothing else.

use super::breaks::{End, Holds};
use super::nearest::{Nearest, nearest};
use crate::cases::{NoCase, at, changed, proof, value_of};
use crate::chart::{Address, Aspect, Case, Change};
use crate::debrief::{Verdict, judge};
use crate::geometry::order;
use crate::plan::{Draft, Plan};
use crate::rules::{Local, Rule, Zone};
use core::fmt;

/// What part of what is met is one stride farther out.
const FARTHER: i32 = 20;
/// How many are looked at for one from which something plain follows.
const MOST_SEEN: usize = 8;
/// How many changes of plan are still seen at one glance.
const GLANCE: usize = 3;

/// A pair.
#[derive(Debug, Clone)]
pub struct Pair {
    /// The case as it was drawn.
    pub base: Case,
    /// The same with one thing changed.
    pub other: Case,
    /// What that thing is in the first.
    pub was: Change,
    /// What it is in the second.
    pub is: Change,
    /// A sound plan of the first.
    pub sound: Draft,
    /// What is wrong with that plan in the second, the worst first.
    pub wrong: Vec<Verdict>,
    /// The sound plan of the second that is nearest to it.
    pub answer: Nearest,
}

/// Why an address is no pair's.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum NoPair {
    /// It names no change.
    Unchanged(Address),
    /// Its cases cannot be drawn.
    Case(NoCase),
    /// The same plan is sound in both.
    Alike(Address),
    /// One of the cases has no sound plan.
    Unsolved(Address),
}

impl fmt::Display for NoPair {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unchanged(address) => write!(
                f,
                "the address {address} names one case, not a pair: add what differs, for example {address}.facial-loss.45"
            ),
            Self::Case(why) => write!(f, "{why}"),
            Self::Alike(address) => write!(
                f,
                "in the case {address} nothing has to change against the case that it differs from: change it by more"
            ),
            Self::Unsolved(address) => {
                write!(f, "the case {address} has no sound plan: change it by less")
            }
        }
    }
}

impl core::error::Error for NoPair {}

impl Pair {
    /// What the second case changes of what the first one's plan has decided.
    pub fn changed(&self) -> impl Iterator<Item = &super::cost::Change> {
        self.answer.changes.iter().filter(|change| change.from.is_some())
    }

    /// Whether something plain follows from it: a few changes at most, and one that can be seen.
    fn is_plain(&self) -> bool {
        let count = self.changed().count();
        (1..=GLANCE).contains(&count) && self.changed().any(|change| !change.is_small())
    }
}

/// The pair of an address that names a change, judged as a set has it ([`Local::NONE`] outside one).
///
/// # Errors
/// [`NoPair`] with the reason.
pub fn pair(address: Address, local: &Local) -> Result<Pair, NoPair> {
    let at = |address| at(address).map(|case| case.under(local.clone()));
    let is = address.changed.ok_or(NoPair::Unchanged(address))?;
    let base = at(Address { changed: None, ..address }).map_err(NoPair::Case)?;
    let sound = sound_of(&base).ok_or(NoPair::Unsolved(address))?;
    let other = at(address).map_err(NoPair::Case)?;
    of(base, sound, other, is).ok_or_else(|| match at(address).ok().and_then(|it| proof(&it)) {
        Some(_) => NoPair::Alike(address),
        None => NoPair::Unsolved(address),
    })
}

/// The plan that proves a case solvable.
#[must_use]
pub fn sound_of(case: &Case) -> Option<Draft> {
    proof(case).map(|proof| proof.draft)
}

/// The pair of a case with its sound plan and another case that differs from it in one thing; none
/// where that plan is sound there too, or no plan is.
fn of(base: Case, sound: Draft, other: Case, is: Change) -> Option<Pair> {
    let was = Change { aspect: is.aspect, to: value_of(&base, is.aspect)? };
    let mut wrong = match Plan::from_draft(&sound, &other) {
        Ok(plan) => judge(&other, &plan),
        Err(_) => Vec::new(),
    };
    wrong.retain(Verdict::is_fault);
    order::sort_short_by_key(&mut wrong, |verdict| core::cmp::Reverse(verdict.zone));
    if wrong.is_empty() {
        return None;
    }
    let answer = nearest(&other, &sound)?;
    (!answer.changes.is_empty()).then_some(Pair { base, other, was, is, sound, wrong, answer })
}

/// The pair that makes most of what was wrong with a learner's plan, among those [`across`].
#[must_use]
pub fn telling(
    case: &Case,
    sound: &Draft,
    edges: &[Holds],
    broken: &[&'static Rule],
) -> Option<Pair> {
    let mut telling = Telling::default();
    for is in across(edges, broken) {
        if !telling.wants(pair_with(case, sound, is)) {
            break;
        }
    }
    telling.pair()
}

/// Keeps the most telling of pairs that come in the order of [`across`]: the first from which something
/// plain follows; else, after some, the first.
#[derive(Debug, Default)]
pub struct Telling {
    kept: Option<Pair>,
    seen: usize,
}

impl Telling {
    /// Takes the next, where there is one; whether another is wanted.
    pub fn wants(&mut self, next: Option<Pair>) -> bool {
        self.seen += 1;
        let is_plain = next.as_ref().is_some_and(Pair::is_plain);
        if is_plain || self.kept.is_none() {
            self.kept = next;
        }
        !is_plain && (self.kept.is_none() || self.seen < MOST_SEEN)
    }

    /// What was kept.
    #[must_use]
    pub fn pair(self) -> Option<Pair> {
        self.kept
    }
}

/// Changes across the `edges` of a case's sound plan, the most telling first: where a rule speaks that
/// the learner broke; else one of the same skill; else of a wall or bone before one of the patient, and
/// the nearest. Of each edge the first value beyond it, then some farther out: just across, the least
/// change of plan may be too small to see.
#[must_use]
pub fn across(edges: &[Holds], broken: &[&'static Rule]) -> Vec<Change> {
    let mut found: Vec<((u8, bool, i32), Change)> = edges
        .iter()
        .flat_map(|holds| holds.ends.iter().map(move |end| (holds, end)))
        .filter_map(|(holds, end)| match *end {
            End::Turns { first, rule, words: [_, Some(zone)], .. } if zone > Zone::Debated => {
                let rank = (fit(rule, broken), holds.aspect >= Aspect::Age);
                Some(beyond(holds, first).map(move |to| {
                    let change = Change { aspect: holds.aspect, to };
                    ((rank.0, rank.1, far(holds, to)), change)
                }))
            }
            _ => None,
        })
        .flatten()
        .collect();
    order::sort_short_by_key(&mut found, |one| *one);
    found.into_iter().map(|(_, is)| is).collect()
}

/// The first value beyond an edge and two farther out, as far as is met.
fn beyond(holds: &Holds, first: i32) -> impl Iterator<Item = i32> + use<> {
    let [least, most] = holds.aspect.scaled().range;
    let stride = ((most - least) / FARTHER).max(1);
    let out = (first - holds.now).signum() * stride;
    (0..3).map(move |turn| first + turn * out).filter(move |to| (least..=most).contains(to))
}

/// The pair of a case with its sound plan and the case with this change; none where nothing has to
/// change, or no plan is sound there.
#[must_use]
pub fn pair_with(case: &Case, sound: &Draft, is: Change) -> Option<Pair> {
    of(case.clone(), sound.clone(), changed(case, is).ok()?, is)
}

/// 0 where the learner broke this very rule, 1 where one of its skill, else 2.
fn fit(rule: &Rule, broken: &[&'static Rule]) -> u8 {
    if broken.contains(&rule) {
        0
    } else if broken.iter().any(|other| other.skill == rule.skill) {
        1
    } else {
        2
    }
}

/// How far a value is from what is, in thousandths of the aspect's range.
const fn far(holds: &Holds, to: i32) -> i32 {
    let [least, most] = holds.aspect.scaled().range;
    (to - holds.now).abs() * 1000 / (most - least)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cases::generate;
    use crate::plan::Decision;
    use crate::search::{breaks, holds};

    fn pairs() -> impl Iterator<Item = Pair> {
        (1..=10).filter_map(|seed| {
            let case = generate(seed).unwrap();
            let sound = sound_of(&case)?;
            let plan = Plan::from_draft(&sound, &case).ok()?;
            telling(&case, &sound, &breaks(&case, &plan), &[])
        })
    }

    fn faults(case: &Case, draft: &Draft) -> usize {
        let plan = Plan::from_draft(draft, case).unwrap();
        judge(case, &plan).iter().filter(|verdict| verdict.is_fault()).count()
    }

    #[test]
    fn what_is_sound_in_one_has_to_change_in_the_other() {
        let mut count = 0;
        for pair in pairs() {
            count += 1;
            assert_eq!(faults(&pair.base, &pair.sound), 0);
            assert!(
                Plan::from_draft(&pair.sound, &pair.other).is_err()
                    || faults(&pair.other, &pair.sound) > 0
            );
            assert_eq!(faults(&pair.other, &pair.answer.draft), 0, "{:?}", pair.other.address);
            assert!(!pair.answer.changes.is_empty() && !pair.wrong.is_empty());
        }
        assert!(count >= 8, "{count}");
    }

    #[test]
    fn it_lies_across_an_edge_and_short_of_it_nothing_has_to_change() {
        for pair in pairs() {
            let plan = Plan::from_draft(&pair.sound, &pair.base).unwrap();
            let edge = holds(&pair.base, &plan, pair.is.aspect).unwrap();
            let up = usize::from(pair.is.to > pair.was.to);
            let End::Turns { last, first, .. } = edge.ends[up] else { panic!("{edge:?}") };
            let out = (first - last).signum();
            assert!((pair.is.to - first) * out >= 0, "{:?} {edge:?}", pair.is);
            // One step short of the edge there may be no such case; where there is, the plan keeps.
            let back = Change { to: first - out, ..pair.is };
            let Ok(nearer) = changed(&pair.base, back) else { continue };
            assert_eq!(faults(&nearer, &pair.sound), 0, "{:?}", pair.other.address);
        }
    }

    #[test]
    fn most_pairs_ask_for_few_changes_and_for_one_that_can_be_seen() {
        let (mut all, mut plain) = (0, 0);
        for pair in pairs() {
            all += 1;
            plain += usize::from(pair.is_plain());
        }
        assert!(4 * plain >= 3 * all, "{plain} of {all}");
    }

    #[test]
    fn its_address_brings_it_back() {
        for once in pairs() {
            let again = pair(once.other.address.unwrap(), &Local::NONE).unwrap();
            assert_eq!((again.base, again.other), (once.base, once.other));
            assert_eq!(again.answer.draft, once.answer.draft);
            assert_eq!((again.was, again.is), (once.was, once.is));
        }
    }

    #[test]
    fn what_is_asked_of_a_pair_has_one_thing_that_differs_and_choices_that_stay() {
        use crate::search::Against;
        for pair in pairs() {
            let rows = pair.rows();
            let differ: Vec<_> = rows.iter().filter(|row| row.2 != Against::Alike).collect();
            assert_eq!(differ.len(), 1, "{rows:?}");
            assert_eq!((differ[0].0, differ[0].1), (pair.was, pair.is));
            assert!(rows.len() > 3, "{rows:?}");
            let decisions = pair.decisions();
            let changing = decisions.iter().filter(|(_, changes)| *changes).count();
            assert!(changing > 0 && decisions.len() > changing, "{decisions:?}");
            let weighed =
                |(decision, changes): &(Decision, bool)| !changes && decision.weighs_findings();
            assert!(!decisions.iter().any(weighed), "{decisions:?}");
        }
    }

    #[test]
    fn a_rule_that_was_broken_is_shown_before_any_other() {
        let case = generate(1).unwrap();
        let sound = sound_of(&case).unwrap();
        let plan = Plan::from_draft(&sound, &case).unwrap();
        let edges = breaks(&case, &plan);
        let broken = crate::rules::find("too-near-a-root").unwrap();
        let pair = telling(&case, &sound, &edges, &[broken]).unwrap();
        assert!(pair.wrong.iter().any(|verdict| verdict.rule == broken), "{:?}", pair.is);
    }

    #[test]
    fn what_is_no_pair_says_why() {
        let said = |text: &str| pair(text.parse().unwrap(), &Local::NONE).unwrap_err().to_string();
        let address = generate(1).unwrap().address.unwrap();
        assert!(said(&address.to_string()).contains("add what differs"));
        assert!(said(&format!("{address}.age.60")).contains("change it by more"));
        assert!(said("1.9.1.0.age.60").contains("generator 9"));
        assert!(said(&format!("{address}.inr.60")).contains("nothing of the kind"));
    }
}
