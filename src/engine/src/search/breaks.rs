//! Where a plan breaks: how far one thing about the case can be otherwise before the plan's verdicts
//! change.
//!
//! The case is changed in that one thing alone and the same plan is judged on it, by the judge itself.
//! From what the case is, values are tried outward in strides; where the verdicts differ for the first
//! time, the stride is halved until the very step is known. That verdicts change only once is not
//! assumed: whether a value farther out brings them back is said, as far as the strides can see.

use crate::cases::{changed, value_of};
use crate::chart::{Aspect, Case, Change};
use crate::debrief::{Verdict, judge};
use crate::plan::Plan;
use crate::rules::{Rule, Zone};

/// How many strides are tried on either side at most.
const STRIDES: i32 = 20;

/// How far an aspect can be otherwise.
#[derive(Debug, Clone, PartialEq)]
pub struct Holds {
    /// Which.
    pub aspect: Aspect,
    /// What it is, in steps.
    pub now: i32,
    /// Downward and upward.
    pub ends: [End; 2],
}

/// How it ends on one side.
#[derive(Debug, Clone, PartialEq)]
pub enum End {
    /// Nothing changes as far as this, which is as far as such cases go.
    Open {
        /// The last value that was tried, in steps.
        last: i32,
    },
    /// The verdicts change.
    Turns {
        /// The last value that keeps them, in steps.
        last: i32,
        /// The first that does not.
        first: i32,
        /// The rule whose word changes most there.
        rule: &'static Rule,
        /// Its words on either side; none where it does not apply.
        words: [Option<Zone>; 2],
        /// Whether a value farther out brings all of them back.
        returns: bool,
    },
}

impl End {
    /// The last value that keeps the verdicts.
    #[must_use]
    pub const fn last(&self) -> i32 {
        match self {
            Self::Open { last } | Self::Turns { last, .. } => *last,
        }
    }

    /// The rule whose word changes most there.
    #[must_use]
    pub const fn rule(&self) -> Option<&'static Rule> {
        match self {
            Self::Open { .. } => None,
            Self::Turns { rule, .. } => Some(rule),
        }
    }
}

/// Every aspect that the case has, in order, with how far it can be otherwise.
#[must_use]
pub fn breaks(case: &Case, plan: &Plan) -> Vec<Holds> {
    Aspect::ALL.into_iter().filter_map(|aspect| holds(case, plan, aspect)).collect()
}

/// How far one aspect can be otherwise; none where the case has nothing of the kind.
#[must_use]
pub fn holds(case: &Case, plan: &Plan, aspect: Aspect) -> Option<Holds> {
    Trying::of(case, plan).holds(aspect)
}

/// A plan on its case, whose findings are tried one end after the other: a page that has to answer in
/// between asks for one end at a time.
#[derive(Debug)]
pub struct Trying<'a> {
    case: &'a Case,
    plan: &'a Plan,
    /// What the judge says of it as it is.
    words: Vec<(&'static Rule, Zone)>,
}

impl<'a> Trying<'a> {
    /// Judges it as it is.
    #[must_use]
    pub fn of(case: &'a Case, plan: &'a Plan) -> Self {
        Self { case, plan, words: words(&judge(case, plan)) }
    }

    /// How far one aspect can be otherwise; none where the case has nothing of the kind.
    #[must_use]
    pub fn holds(&self, aspect: Aspect) -> Option<Holds> {
        let now = value_of(self.case, aspect)?;
        Some(Holds { aspect, now, ends: [0, 1].map(|side| self.end(aspect, now, side)) })
    }

    /// How it ends on one side of what it is now, in steps: downward 0, upward any other.
    #[must_use]
    pub fn end(&self, aspect: Aspect, now: i32, side: usize) -> End {
        let [least, most] = aspect.scaled().range;
        let range = if side == 0 { least.min(now) } else { most.max(now) };
        Trial { case: self.case, plan: self.plan, aspect, words: &self.words }.end(now, range)
    }
}

/// A plan's words on a case: the rules that it breaks or that are debated. Ideal and acceptable are one.
fn words(verdicts: &[Verdict]) -> Vec<(&'static Rule, Zone)> {
    let telling = verdicts.iter().filter(|verdict| verdict.zone > Zone::Acceptable);
    telling.map(|verdict| (verdict.rule, verdict.zone)).collect()
}

struct Trial<'a> {
    case: &'a Case,
    plan: &'a Plan,
    aspect: Aspect,
    words: &'a [(&'static Rule, Zone)],
}

impl Trial<'_> {
    /// The plan's words where the aspect is this; none where there is no such case.
    fn at(&self, to: i32) -> Option<Vec<(&'static Rule, Zone)>> {
        let other = changed(self.case, Change { aspect: self.aspect, to }).ok()?;
        Some(words(&judge(&other, self.plan)))
    }

    /// From what it is towards an end of the range.
    fn end(&self, now: i32, range: i32) -> End {
        let span = range - now;
        let stride = (span.abs() + STRIDES - 1) / STRIDES;
        let tried: Vec<i32> = (1..=STRIDES)
            .map(|turn| now + span.signum() * (turn * stride).min(span.abs()))
            .collect();
        let mut last = now;
        for (turn, &to) in tried.iter().enumerate().filter(|_| stride > 0) {
            let Some(found) = self.at(to) else { continue };
            if found == self.words {
                last = to;
                continue;
            }
            let (kept, first, found) = self.halved(last, to, found);
            let Some((rule, words)) = most_changed(self.words, &found) else { break };
            let farther = tried.get(turn + 1..).unwrap_or_default();
            let returns =
                farther.iter().any(|to| self.at(*to).is_some_and(|words| words == self.words));
            return End::Turns { last: kept, first, rule, words, returns };
        }
        End::Open { last }
    }

    /// Between a value that keeps the words and one that does not: the last that keeps them, the first
    /// that does not, and the words there. Values without a case keep nothing and change nothing; the
    /// end that has a case is moved.
    fn halved(
        &self,
        mut kept: i32,
        mut first: i32,
        mut found: Vec<(&'static Rule, Zone)>,
    ) -> (i32, i32, Vec<(&'static Rule, Zone)>) {
        let mut refused = kept;
        while first.abs_diff(refused) > 1 {
            let middle = i32::midpoint(refused, first);
            match self.at(middle) {
                Some(words) if words == self.words => (kept, refused) = (middle, middle),
                Some(words) => (first, found) = (middle, words),
                None => refused = middle,
            }
        }
        (kept, first, found)
    }
}

/// The rule whose word changes most between two lists, and its words.
fn most_changed(
    before: &[(&'static Rule, Zone)],
    after: &[(&'static Rule, Zone)],
) -> Option<(&'static Rule, [Option<Zone>; 2])> {
    let of = |list: &[(&'static Rule, Zone)], rule: &Rule| {
        list.iter().find(|(other, _)| *other == rule).map(|(_, zone)| *zone)
    };
    let weight = |zone: Option<Zone>| zone.map_or(0, |zone| zone as i32);
    before
        .iter()
        .chain(after)
        .map(|(rule, _)| (*rule, [of(before, rule), of(after, rule)]))
        .filter(|(_, [a, b])| a != b)
        // Of equals the first in the order of care.
        .rev()
        .max_by_key(|(_, [a, b])| (weight(*b) - weight(*a)).abs())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cases::{generate, proof};
    use crate::rules::trial::Trial as Planted;

    fn end_of(aspect: Aspect, side: usize) -> (Holds, End) {
        let trial = Planted::plain();
        let holds = holds(&trial.case, &trial.plan(), aspect).unwrap();
        let end = holds.ends[side].clone();
        (holds, end)
    }

    #[test]
    fn a_planted_edge_is_found_to_the_step() {
        // Heavy smoking is asked about from ten cigarettes a day on, whatever else is planned.
        let (holds, end) = end_of(Aspect::Cigarettes, 1);
        let End::Turns { last, first, rule, words, returns } = end else { panic!("{holds:?}") };
        assert_eq!(first, last + 1);
        let trial = Planted::plain();
        let zone = |cigarettes: i32| {
            let mut case = trial.case.clone();
            case.patient.cigarettes = u8::try_from(cigarettes).unwrap();
            let verdicts = judge(&case, &trial.plan());
            verdicts.iter().find(|verdict| verdict.rule == rule).map(|verdict| verdict.zone)
        };
        let telling = |zone: Option<Zone>| zone.filter(|zone| *zone > Zone::Acceptable);
        assert_eq!([telling(zone(last)), telling(zone(first))], words);
        assert_ne!(words[0], words[1]);
        assert!(!returns);
    }

    #[test]
    fn halving_finds_what_asking_every_step_finds() {
        let mut turned = 0;
        for seed in [3, 8, 11, 19] {
            let case = generate(seed).unwrap();
            let plan = Plan::from_draft(&proof(&case).unwrap().draft, &case).unwrap();
            let kept = words(&judge(&case, &plan));
            for found in breaks(&case, &plan) {
                for end in &found.ends {
                    let End::Turns { last, first, .. } = *end else { continue };
                    turned += 1;
                    let at = |to| changed(&case, Change { aspect: found.aspect, to }).ok();
                    let at = |to| at(to).map(|case| words(&judge(&case, &plan)));
                    assert_ne!(at(first).unwrap(), kept, "{seed} {:?} {first}", found.aspect);
                    assert!(
                        at(last).is_none_or(|words| words == kept),
                        "{seed} {:?}",
                        found.aspect
                    );
                    // Nearer in than a stride nothing was jumped over.
                    let stride =
                        (found.aspect.scaled().range[1] - found.aspect.scaled().range[0]) / STRIDES;
                    let towards = (found.now - first).signum();
                    for back in 1..=stride.min(first.abs_diff(found.now) as i32) {
                        let inside = at(first + towards * back);
                        assert!(
                            inside.is_none_or(|words| words == kept),
                            "{seed} {:?}",
                            found.aspect
                        );
                    }
                }
            }
        }
        assert!(turned > 15, "{turned}");
    }

    #[test]
    fn a_plan_for_a_whole_wall_breaks_once_the_wall_is_lost() {
        let (holds, end) = end_of(Aspect::FacialLoss, 1);
        assert_eq!(holds.now, 0);
        let End::Turns { last: 0, rule, words: [None, Some(zone)], .. } = end else {
            panic!("{end:?}")
        };
        assert!(zone.is_fault(), "{} {zone:?}", rule.id);
        // Nobody has such counts taken here.
        let trial = Planted::plain();
        assert!(super::holds(&trial.case, &trial.plan(), Aspect::Neutrophils).is_none());
    }
}
