//! What is due today, and why, in one line each.

use crate::past::Past;
use crate::standing::{Standing, days, of};
use engine::cases::Archetype;
use engine::geometry::order;
use engine::rules::Skill;

/// Why a skill is due.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Why {
    /// The last answer was wrong.
    Missed {
        /// So many days ago.
        days: u32,
        /// In such a case, where that is known.
        about: Option<Archetype>,
    },
    /// Nobody knows yet whether it is there.
    Untried,
    /// The last answers were right, too few of them.
    Unsure {
        /// How many in a row.
        right: usize,
    },
    /// Mastered, and its time has come.
    Fading {
        /// Days since it was last practised.
        days: u32,
        /// The chance that it is still held, 0 to 1.
        held: f64,
    },
}

/// A skill that is due.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Due {
    /// Which.
    pub skill: Skill,
    /// Why.
    pub why: Why,
}

impl Due {
    /// One line: *Covering with a membrane: missed yesterday in a case about an intact facial wall.*
    #[must_use]
    pub fn words(&self) -> String {
        format!("{}: {}.", self.skill.words(), self.why.words())
    }
}

impl Why {
    /// As a clause.
    #[must_use]
    pub fn words(&self) -> String {
        match *self {
            Self::Missed { days, about } => {
                let about = about.map_or("", Archetype::words);
                let case = if about.is_empty() { "" } else { " in a case about " };
                format!("missed {}{case}{about}", ago(days))
            }
            Self::Untried => "not tried yet".to_owned(),
            Self::Unsure { right: 1 } => "right last time, once; not yet often enough".to_owned(),
            Self::Unsure { right } => {
                format!("right the last {right} times; not yet often enough")
            }
            Self::Fading { days, held } => format!(
                "last right {}; the chance that you still would is {:.0} %",
                ago(days),
                100.0 * held
            ),
        }
    }
}

fn ago(days: u32) -> String {
    match days {
        0 => "today".to_owned(),
        1 => "yesterday".to_owned(),
        days => format!("{days} days ago"),
    }
}

/// What is due, the most wanted first: what is least likely to be known and still held. Attempts in
/// order of time; `now`: milliseconds since 1970.
#[must_use]
pub fn today(pasts: &[Past], now: u64) -> Vec<Due> {
    due(&of(pasts, now), pasts, now)
}

/// The same, of standings that are known already.
#[must_use]
pub fn due(standings: &[Standing], pasts: &[Past], now: u64) -> Vec<Due> {
    let mut wanted: Vec<(f64, Due)> = standings
        .iter()
        .filter_map(|one| Some((one.now(), Due { skill: one.skill, why: why(one, pasts, now)? })))
        .collect();
    order::sort_short(&mut wanted, |(one, _), (other, _)| one.total_cmp(other));
    wanted.into_iter().map(|(_, due)| due).collect()
}

/// Why a skill is due, if it is.
#[must_use]
pub fn why(standing: &Standing, pasts: &[Past], now: u64) -> Option<Why> {
    let since = days(standing.last, Some(now));
    let Some(last) = standing.answers.last() else { return Some(Why::Untried) };
    if !last.right {
        let about = pasts.get(last.past).and_then(|past| past.archetype);
        return Some(Why::Missed { days: days(last.at, Some(now)), about });
    }
    if !standing.is_mastered() {
        return Some(Why::Unsure { right: standing.in_a_row() });
    }
    standing.is_due(now).then_some(Why::Fading { days: since, held: standing.held })
}
