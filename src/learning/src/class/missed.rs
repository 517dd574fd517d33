//! Which rules a class misses, and what those who miss them chose.

use super::firsts::Firsts;
use super::{Answer, MOST_RULES, Share, order};
use engine::plan::{Decision, Kind};
use engine::rules::{Rule, Skill, all};

/// What chose a wrong answer apart: said only where this share more of those who missed the rule chose it
/// than of the others (ours).
const APART: f64 = 0.5;

/// What a class did with a rule.
#[derive(Debug, Clone, PartialEq)]
pub struct OfRule {
    /// The rule.
    pub rule: &'static Rule,
    /// Attempts in which it was kept and in which it was not.
    pub attempts: Share,
    /// Learners who always kept it and who missed it at least once.
    pub learners: Share,
    /// The choice that sets those who missed it apart, where one does.
    pub notion: Option<Notion>,
}

/// A choice that those who miss a rule make and the others do not, or that they leave out.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Notion {
    /// The decision.
    pub decision: Decision,
    /// The place of the alternative in its list.
    pub place: u8,
    /// Whether leaving it out is what sets them apart.
    pub left_out: bool,
    /// Attempts that missed the rule and made this choice (or left it out), and all that missed it.
    pub missed: [u32; 2],
    /// Attempts that kept the rule and did so, and all that kept it.
    pub kept: [u32; 2],
}

impl Notion {
    /// The question, and what was answered.
    #[must_use]
    pub fn words(&self) -> (&'static str, &'static str) {
        let entry = self.decision.entry();
        (entry.label, alternative(self.decision, self.place))
    }
}

/// What an alternative says.
#[must_use]
pub fn alternative(decision: Decision, place: u8) -> &'static str {
    match decision.entry().kind {
        Kind::One(choices) | Kind::Many(choices) => {
            choices.get(usize::from(place)).map_or("", |choice| choice.label)
        }
        Kind::Number(_) | Kind::Outline => "",
    }
}

/// Every rule that was reached, the most missed first.
pub(super) fn rules(rows: &Firsts<'_>) -> Vec<OfRule> {
    let mut found: Vec<OfRule> = all()
        .take(MOST_RULES)
        .enumerate()
        .map(|(place, rule)| of_rule(rule, place, rows))
        .filter(|one| one.attempts.all() > 0)
        .collect();
    // By learners, then by attempts; the register's order where both are the same.
    order::by(&mut found, &|one, other| {
        let keys = |one: &OfRule| (one.learners.wrong, one.attempts.wrong);
        keys(other).cmp(&keys(one))
    });
    found
}

/// Alternatives in order, each with how many who kept the rule chose it, and how many who missed it.
type Chose = Vec<((Decision, u8), [u32; 2])>;

fn of_rule(rule: &'static Rule, place: usize, rows: &Firsts<'_>) -> OfRule {
    let (mut attempts, mut learners) = (Share::default(), Share::default());
    let mut chose: Chose = Vec::new();
    let mut of_learner = (u32::MAX, Answer::NotReached);
    // A table by decision: it is asked of every choice of every attempt.
    let reads: Vec<bool> =
        Decision::ALL.iter().map(|entry| rule.reads.contains(&entry.decision)).collect();
    let is_read = |decision: Decision| reads.get(decision as usize) == Some(&true);
    for ((learner, _), row) in rows {
        if *learner != of_learner.0 {
            learners.count(of_learner.1);
            of_learner = (*learner, Answer::NotReached);
        }
        let answer = row.marks.answer(place);
        attempts.count(answer);
        of_learner.1 = worse(of_learner.1, answer);
        if answer != Answer::NotReached {
            for choice in row.chosen.iter().filter(|(decision, _)| is_read(*decision)) {
                let at = chose.binary_search_by(|(other, _)| other.cmp(choice));
                let at = at.unwrap_or_else(|at| {
                    chose.insert(at, (*choice, [0; 2]));
                    at
                });
                if let Some((_, counts)) = chose.get_mut(at) {
                    counts[usize::from(answer == Answer::Wrong)] += 1;
                }
            }
        }
    }
    learners.count(of_learner.1);
    OfRule { rule, attempts, learners, notion: notion(attempts, &chose) }
}

const fn worse(one: Answer, other: Answer) -> Answer {
    match (one, other) {
        (Answer::Wrong, _) | (_, Answer::Wrong) => Answer::Wrong,
        (Answer::Right, _) | (_, Answer::Right) => Answer::Right,
        _ => Answer::NotReached,
    }
}

fn notion(attempts: Share, chose: &Chose) -> Option<Notion> {
    let share = |part: u32, whole: u32| f64::from(part) / f64::from(whole.max(1));
    let mut best: Option<(f64, Notion)> = None;
    for ((decision, place), [kept, missed]) in chose {
        for left_out in [false, true] {
            let made = |count: u32, all: u32| if left_out { all - count } else { count };
            let missed = [made(*missed, attempts.wrong), attempts.wrong];
            let kept = [made(*kept, attempts.right), attempts.right];
            let apart = share(missed[0], missed[1]) - share(kept[0], kept[1]);
            // One who missed it tells nothing of a class, and where nobody kept it nothing sets anybody
            // apart.
            if missed[0] > 1
                && kept[1] > 0
                && apart >= APART
                && best.as_ref().is_none_or(|(most, _)| apart > *most)
            {
                let notion = Notion { decision: *decision, place: *place, left_out, missed, kept };
                best = Some((apart, notion));
            }
        }
    }
    best.map(|(_, notion)| notion)
}

/// What a class did with a skill: of the attempts that call for it, in which none of its rules was
/// missed. The one that it lacks most comes first.
pub(super) fn skills(rows: &Firsts<'_>) -> Vec<(Skill, Share)> {
    let of: Vec<Skill> = all().take(MOST_RULES).map(|rule| rule.skill).collect();
    let mut found: Vec<(Skill, Share)> = Vec::new();
    for skill in Skill::ALL {
        let mut share = Share::default();
        for row in rows.values() {
            let answers = of.iter().enumerate().filter(|(_, one)| **one == skill);
            share.count(
                answers.map(|(place, _)| row.marks.answer(place)).fold(Answer::NotReached, worse),
            );
        }
        if share.all() > 0 {
            found.push((skill, share));
        }
    }
    let right = |share: &Share| share.value().unwrap_or(1.0);
    order::by(&mut found, &|one, other| right(&one.1).total_cmp(&right(&other.1)));
    found
}
