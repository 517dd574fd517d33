//! What one answer off a sound plan breaks: the faults that a case invites, and the rules that are in play
//! in it.

use super::proof::{Workshop, left_by, pruned};
use crate::chart::Case;
use crate::plan::{Decision, Draft, Kind, Value};
use crate::rules::{Rule, Zone};

/// A fault that one other answer makes of a sound plan.
#[derive(Debug, Clone, PartialEq)]
pub struct Slip {
    /// The rule that speaks.
    pub rule: &'static Rule,
    /// Its word.
    pub zone: Zone,
    /// The decision that was answered otherwise.
    pub decision: Decision,
    /// The other answer.
    pub value: Value,
}

/// Every slip of a case whose sound plan this is, in the order of decisions, of their answers, and of the
/// rules.
#[must_use]
pub fn slips(case: &Case, sound: &Draft) -> Vec<Slip> {
    let left = left_by(case, sound);
    let site = Workshop::of(case, &left);
    let mut all = Vec::new();
    for (decision, now) in sound.iter() {
        for value in others(decision, now) {
            let mut other = sound.clone();
            // An answer that asks for more is no plan by itself, and says nothing here.
            if other.choose(decision, value.clone()).is_ok()
                && let Some(faults) = site.faults(&pruned(case, &other))
            {
                let slip = |rule, zone| Slip { rule, zone, decision, value: value.clone() };
                all.extend(faults.iter().map(|fault| slip(fault.rule, fault.zone)));
            }
        }
    }
    all
}

/// Other answers: every alternative, each box turned, a number one and two of its steps off.
fn others(decision: Decision, now: &Value) -> Vec<Value> {
    let mut all: Vec<Value> = match (decision.entry().kind, now) {
        (Kind::Number(kind), Value::Number(count)) => {
            let near = [-2, -1, 1, 2].map(|step| count + step * kind.by);
            near.into_iter().filter(|count| kind.allows(*count)).map(Value::Number).collect()
        }
        (list, now) => list.of_list(Some(now)),
    };
    all.retain(|value| value != now);
    all
}

/// The slips that an instructor expects: of each rule one, the gravest first, lists of alternatives
/// before numbers that are a step off.
#[must_use]
pub fn usual(slips: &[Slip]) -> Vec<&Slip> {
    let rank = |slip: &Slip| {
        let plain = !matches!(slip.value, Value::Number(_) | Value::Outline(_));
        (slip.zone, plain)
    };
    let mut found: Vec<&Slip> = Vec::new();
    for slip in slips {
        match found.iter_mut().find(|other| other.rule.id == slip.rule.id) {
            Some(other) if rank(slip) > rank(other) => *other = slip,
            Some(_) => {}
            None => found.push(slip),
        }
    }
    found.sort_by_key(|slip| core::cmp::Reverse(rank(slip)));
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::cases::{generate, proof};
    use crate::debrief::judge;
    use crate::plan::Plan;

    #[test]
    fn every_slip_is_what_the_judge_says_of_that_plan() {
        let case = generate(2024).unwrap();
        let sound = proof(&case).unwrap().draft;
        let all = slips(&case, &sound);
        assert!(all.len() > 20, "{}", all.len());
        for slip in all.iter().step_by(7) {
            let mut other = sound.clone();
            other.choose(slip.decision, slip.value.clone()).unwrap();
            let plan = Plan::from_draft(&pruned(&case, &other), &case).unwrap();
            let verdicts = judge(&case, &plan);
            let found = verdicts.iter().find(|one| one.rule.id == slip.rule.id).unwrap();
            assert_eq!(found.zone, slip.zone, "{}", slip.rule.id);
        }
    }

    #[test]
    fn of_each_rule_the_gravest_slip_is_usual_and_the_gravest_comes_first() {
        let case = generate(7).unwrap();
        let all = slips(&case, &proof(&case).unwrap().draft);
        let usual = usual(&all);
        assert!(usual.windows(2).all(|pair| pair[0].zone >= pair[1].zone));
        for slip in &all {
            let told = usual.iter().filter(|one| one.rule.id == slip.rule.id).collect::<Vec<_>>();
            assert!(told.len() == 1 && told[0].zone >= slip.zone, "{}", slip.rule.id);
        }
    }
}
