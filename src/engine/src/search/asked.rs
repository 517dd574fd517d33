//! What a learner is asked about a pair before its principle is told.

use super::pair::Pair;
use crate::cases::value_of;
use crate::chart::{Aspect, Change};
use crate::geometry::order;
use crate::plan::{Decision, is_asked};

/// How many things beside the one that differs are asked about, and how many decisions beside those
/// that change.
const BESIDE: usize = 4;

/// How the second case stands to the first in one thing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Against {
    /// As much.
    Alike,
    /// Less of it.
    Less,
    /// More of it.
    More,
}

impl Against {
    /// All answers.
    pub const ALL: [Self; 3] = [Self::Alike, Self::Less, Self::More];

    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Alike => "alike",
            Self::Less => "less in the second",
            Self::More => "more in the second",
        }
    }
}

impl Pair {
    /// Things that both cases have, the one that differs among them: its value in the first, in the
    /// second, and the right answer. Those that stand nearest to it in the list of all, in its order.
    #[must_use]
    pub fn rows(&self) -> Vec<(Change, Change, Against)> {
        let place = |one: &Aspect| {
            let places = Aspect::ALL.iter().position(|other| other == one);
            places.unwrap_or(0).abs_diff(self.is.aspect as usize)
        };
        let both = |aspect: Aspect| {
            let of = |case| value_of(case, aspect).map(|to| Change { aspect, to });
            Some((of(&self.base)?, of(&self.other)?))
        };
        let mut rows: Vec<(Change, Change)> = Aspect::ALL.into_iter().filter_map(both).collect();
        // What differs only because it follows from the other would ask the same question twice.
        rows.retain(|(a, b)| a == b || a.aspect == self.is.aspect);
        order::sort_short_by_key(&mut rows, |(a, _)| place(&a.aspect));
        rows.truncate(BESIDE + 1);
        order::sort_short_by_key(&mut rows, |(a, _)| a.aspect);
        let against = |(a, b): (Change, Change)| match a.to.cmp(&b.to) {
            core::cmp::Ordering::Equal => (a, b, Against::Alike),
            core::cmp::Ordering::Less => (a, b, Against::More),
            core::cmp::Ordering::Greater => (a, b, Against::Less),
        };
        rows.into_iter().map(against).collect()
    }

    /// Decisions of the first case's sound plan, those that change among them, each with whether it
    /// does: in the order of care. What only the second asks cannot stay and is not asked about.
    #[must_use]
    pub fn decisions(&self) -> Vec<(Decision, bool)> {
        let changed: Vec<Decision> =
            self.changed().take(BESIDE).map(|change| change.decision).collect();
        let all_changed: Vec<Decision> = self.changed().map(|change| change.decision).collect();
        let stays = |decision: &Decision| {
            // What weighs findings is answered anew in each case, and says nothing of the plan.
            !all_changed.contains(decision)
                && !decision.weighs_findings()
                && is_asked(*decision, &self.answer.draft, &self.other)
                && self.sound.value(*decision) == self.answer.draft.value(*decision)
        };
        // Of those that stay, the ones decided nearest to what changes.
        let first = changed.first().copied().unwrap_or(Decision::ALL[0].decision);
        let mut beside: Vec<Decision> =
            self.sound.iter().map(|(decision, _)| decision).filter(stays).collect();
        order::sort_short_by_key(&mut beside, |decision| {
            (*decision as usize).abs_diff(first as usize)
        });
        beside.truncate(BESIDE);
        let mut all: Vec<Decision> = changed.iter().copied().chain(beside).collect();
        order::sort_short_by_key(&mut all, |one| *one);
        all.dedup();
        all.into_iter().map(|decision| (decision, changed.contains(&decision))).collect()
    }
}
