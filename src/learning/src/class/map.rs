//! Rules against learners: the picture of a class, as numbers and as words.

use super::{Answer, OfLearner, OfRule, Report};
use core::ptr;
use engine::rules::{Rule, all};

/// What became of a rule with a learner, over all cases.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Cell {
    /// Kept wherever it was met.
    Kept,
    /// Missed at least once.
    Missed,
    /// Missed at least once so that it can hurt somebody.
    Grave,
    /// Never met: missing, not wrong.
    NotReached,
}

impl Cell {
    /// Every one, in the order of a key.
    pub const ALL: [Self; 4] = [Self::Kept, Self::Missed, Self::Grave, Self::NotReached];

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Kept => "kept",
            Self::Missed => "missed",
            Self::Grave => "unsafe",
            Self::NotReached => "not reached",
        }
    }
}

/// Rules that were missed, each with its cells.
#[derive(Debug, Clone, PartialEq)]
pub struct Map<'a> {
    /// The learners, column by column.
    pub learners: &'a [OfLearner],
    /// The rules, the most missed first, each with a cell for every learner.
    pub rows: Vec<(&'static Rule, Vec<Cell>)>,
    /// How many learners and rules that were missed are left out.
    pub left_out: [usize; 2],
}

impl<'a> Map<'a> {
    /// Of a report, with so many learners and rules at most.
    #[must_use]
    pub fn of(report: &'a Report, [learners, rules]: [usize; 2]) -> Self {
        let is_grave = |code: &str, rule: &Rule| {
            report.grave.iter().any(|act| ptr::eq(act.rule, rule) && act.code == code)
        };
        let missed: Vec<&OfRule> =
            report.rules.iter().filter(|one| one.learners.wrong > 0).collect();
        let shown = report.learners.get(..learners).unwrap_or(&report.learners);
        let row = |one: &&OfRule| {
            // The register's place of a rule is its place with every learner.
            let place = all().position(|rule| rule.id == one.rule.id);
            let cell = |learner: &OfLearner| match place.and_then(|at| learner.rules.get(at)) {
                Some(Answer::Right) => Cell::Kept,
                Some(Answer::Wrong) if is_grave(&learner.code, one.rule) => Cell::Grave,
                Some(Answer::Wrong) => Cell::Missed,
                Some(Answer::NotReached) | None => Cell::NotReached,
            };
            (one.rule, shown.iter().map(cell).collect())
        };
        Self {
            learners: shown,
            rows: missed.iter().take(rules).map(row).collect(),
            left_out: [report.learners.len() - shown.len(), missed.len().saturating_sub(rules)],
        }
    }

    /// In words, rule by rule, learners by their numbers from 1.
    #[must_use]
    pub fn says(&self) -> String {
        let mut says = String::new();
        for (rule, cells) in &self.rows {
            let mut parts = Vec::new();
            for (cell, by) in [(Cell::Missed, "missed by"), (Cell::Grave, "unsafe by")] {
                let who: Vec<String> = (1..)
                    .zip(cells)
                    .filter(|(_, found)| **found == cell)
                    .map(|(number, _): (u32, _)| number.to_string())
                    .collect();
                if !who.is_empty() {
                    parts.push(format!("{by} {}", who.join(", ")));
                }
            }
            for (cell, by) in [(Cell::Kept, "kept by"), (Cell::NotReached, "not reached by")] {
                let count = cells.iter().filter(|found| **found == cell).count();
                if count > 0 {
                    parts.push(format!("{by} {count} in all"));
                }
            }
            says.push_str(&format!("{}: {}. ", rule.id, parts.join("; ")));
        }
        says
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::class::{CaseSeen, Class, Grave, Share};

    fn planted() -> Report {
        let mut report = Report::of(&Class::default());
        let rule = all().next().unwrap();
        let learner = |(code, answer): (&str, Answer)| OfLearner {
            code: code.to_owned(),
            cases: Share::default(),
            adjusted: Share::default(),
            rules: vec![answer],
            recurring: Vec::new(),
            grave: 0,
            unfinished: 0,
            opened_before: 0,
            late: 0,
        };
        let answers = [Answer::Wrong, Answer::Right, Answer::NotReached, Answer::Wrong];
        report.learners = ["a", "b", "c", "d"].into_iter().zip(answers).map(learner).collect();
        let learners = Share { right: 1, wrong: 2 };
        report.rules = vec![OfRule { rule, attempts: learners, learners, notion: None }];
        let case = CaseSeen { name: "1.1.7.0".to_owned(), tooth: 11 };
        report.grave = vec![Grave { code: "d".to_owned(), case, rule }];
        report
    }

    #[test]
    fn what_can_hurt_somebody_is_told_from_what_was_missed_otherwise() {
        let report = planted();
        let map = Map::of(&report, [10, 10]);
        assert_eq!(map.rows[0].1, [Cell::Missed, Cell::Kept, Cell::NotReached, Cell::Grave]);
        let says = "missed by 1; unsafe by 4; kept by 1 in all; not reached by 1 in all. ";
        assert_eq!(map.says(), format!("{}: {says}", map.rows[0].0.id));
    }

    #[test]
    fn what_is_left_out_is_counted() {
        let report = planted();
        let map = Map::of(&report, [3, 0]);
        assert_eq!((map.learners.len(), map.rows.len(), map.left_out), (3, 0, [1, 1]));
    }
}
