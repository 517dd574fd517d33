//! What a class handed in, attempt by attempt, in whatever order it comes.

use super::Marks;
use super::changed::Changed;
use super::discussion::Brought;
use super::firsts::Firsts;
use super::handed::Handed;
use engine::debrief::PlanWord;
use engine::plan::Decision;
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

/// Everything that a class handed in. It grows by some two hundred bytes for each attempt, and by its
/// plan where a case of it can be discussed and marked.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Class {
    /// The learners' codes, in the order in which they came.
    pub(super) learners: Vec<String>,
    /// The cases, likewise.
    pub(super) cases: Vec<CaseSeen>,
    pub(super) rows: Vec<Row>,
    /// Of each row what a discussion needs; empty where attempts are only counted.
    brought: Vec<Brought>,
    counted_only: bool,
    codes: BTreeMap<String, u32>,
    names: BTreeMap<String, u32>,
    /// The row of each attempt, by its own name.
    ids: BTreeMap<String, u32>,
    /// How many came once more, the same or as they stood earlier.
    pub(super) again: u32,
    /// How many of each earlier rule set are judged otherwise today.
    pub(super) otherwise: BTreeMap<String, u32>,
}

/// A case that somebody sat.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CaseSeen {
    /// Its address, or what stands for one.
    pub name: String,
    /// Its tooth, two digits.
    pub tooth: u8,
}

/// An attempt.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Row {
    pub learner: u32,
    pub case: u32,
    pub over: bool,
    pub own: bool,
    pub word: PlanWord,
    pub marks: Marks,
    pub chosen: Box<[(Decision, u8)]>,
    pub objections: Vec<(String, String)>,
    pub opened_before: bool,
    pub late: bool,
    pub otherwise: Option<Box<Changed>>,
    events: usize,
    /// In which order it was done: when it was begun, or its number where nobody knows.
    pub order: (u64, u32),
}

/// What became of an attempt that came in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Taken {
    /// It counts.
    In,
    /// It was there already, as it is or further on.
    Again,
    /// Another learner, of this code, handed in the very same.
    Of(String),
}

impl Class {
    /// A class of which no case will be discussed: a hundred thousand attempts are held in less.
    #[must_use]
    pub fn counted_only() -> Self {
        Self { counted_only: true, ..Self::default() }
    }

    /// Takes an attempt of a learner in. `order` is when it was begun, milliseconds, and its number:
    /// of several at one case the first counts.
    pub fn take(&mut self, learner: &str, handed: Handed, order: (u64, u32)) -> Taken {
        let learner = index(&mut self.codes, &mut self.learners, learner, str::to_owned);
        let tooth = handed.tooth;
        let seen = |name: &str| CaseSeen { name: name.to_owned(), tooth };
        let case = index(&mut self.names, &mut self.cases, &handed.case, seen);
        let brought = handed.brought;
        let row = Row {
            learner,
            case,
            over: handed.over,
            own: handed.own,
            word: handed.word,
            marks: handed.marks,
            chosen: handed.chosen.into(),
            objections: handed.objections,
            opened_before: handed.opened_before,
            late: handed.late,
            otherwise: handed.otherwise,
            events: handed.events,
            order,
        };
        let next = u32::try_from(self.rows.len()).unwrap_or(u32::MAX);
        match self.ids.entry(handed.id) {
            Entry::Vacant(free) => {
                free.insert(next);
                count(&mut self.otherwise, row.otherwise.as_deref(), true);
                self.rows.push(row);
                if !self.counted_only {
                    self.brought.push(brought);
                }
                Taken::In
            }
            Entry::Occupied(there) => {
                let Some(old) = self.rows.get_mut(*there.get() as usize) else { return Taken::In };
                if old.learner != learner {
                    let whose = self.learners.get(old.learner as usize).cloned();
                    return Taken::Of(whose.unwrap_or_default());
                }
                self.again += 1;
                if row.events > old.events {
                    count(&mut self.otherwise, old.otherwise.as_deref(), false);
                    count(&mut self.otherwise, row.otherwise.as_deref(), true);
                    *old = row;
                    if let Some(old) = self.brought.get_mut(*there.get() as usize) {
                        *old = brought;
                    }
                }
                Taken::Again
            }
        }
    }

    /// How many attempts there are.
    #[must_use]
    pub const fn attempts(&self) -> usize {
        self.rows.len()
    }

    /// Of each learner and case the attempt that counts: the first that the learner did alone. In the
    /// order of learners, then of cases.
    pub(super) fn firsts(&self) -> Firsts<'_> {
        Firsts::of(&self.rows)
    }

    /// The attempts that count at the case of this name and were brought to its end, and what a
    /// discussion needs of each; none where attempts are only counted.
    pub(super) fn at(&self, case: &str) -> Vec<(&Row, &Brought)> {
        let Some(case) = self.names.get(case) else { return Vec::new() };
        let firsts = self.firsts();
        let counts = |row: &Row| {
            let first = firsts.get((row.learner, row.case));
            row.over && first.is_some_and(|first| core::ptr::eq(first, row))
        };
        let there = self.rows.iter().zip(&self.brought);
        there.filter(|(row, _)| row.case == *case && counts(row)).collect()
    }
}

fn count(all: &mut BTreeMap<String, u32>, of: Option<&Changed>, more: bool) {
    if let Some(of) = of {
        let count = all.entry(of.rule_set.clone()).or_default();
        *count = if more { count.saturating_add(1) } else { count.saturating_sub(1) };
    }
}

/// The number of a name, given to it when it first comes.
fn index<T>(
    names: &mut BTreeMap<String, u32>,
    all: &mut Vec<T>,
    name: &str,
    make: impl Fn(&str) -> T,
) -> u32 {
    if let Some(known) = names.get(name) {
        return *known;
    }
    let next = u32::try_from(all.len()).unwrap_or(u32::MAX);
    names.insert(name.to_owned(), next);
    all.push(make(name));
    next
}
