//! What is due today, and why, in one line each.

use crate::parameters::RETENTION;
use crate::past::Past;
use crate::standing::{Standing, days, of};
use engine::cases::Archetype;
use engine::geometry::order;
use engine::rules::Skill;

/// Above what is asked for by so much, a skill comes back not because it fades but because the first
/// intervals are short.
const SURELY_HELD: f64 = 0.02;

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
    /// No case has called for it yet.
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
            Self::Fading { days, held } if held > RETENTION + SURELY_HELD => {
                format!(
                    "last right {}; it has been asked so seldom that it comes back early",
                    ago(days)
                )
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
    let Some(last) = standing.called().next() else { return Some(Why::Untried) };
    if !last.right {
        let about = pasts.get(last.past).and_then(|past| past.archetype);
        return Some(Why::Missed { days: days(last.at, Some(now)), about });
    }
    if !standing.is_mastered() {
        return Some(Why::Unsure { right: standing.in_a_row() });
    }
    standing.is_due(now).then_some(Why::Fading { days: since, held: standing.held })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::called::place;
    use crate::trial::{DAY, START, attempt, mastered};

    const SKILL: Skill = Skill::Covering;

    fn line(pasts: &[Past], now: u64) -> Option<Due> {
        today(pasts, now).into_iter().find(|due| due.skill == SKILL)
    }

    #[test]
    fn at_the_very_start_everything_is_untried() {
        let all = today(&[], START);
        assert_eq!(all.len(), Skill::ALL.len());
        assert!(all.iter().all(|due| due.why == Why::Untried));
        let first = all[0].words();
        assert_eq!(first, "Clearing the patient: not tried yet.");
    }

    #[test]
    fn a_miss_says_when_and_in_what_case() {
        let pasts = [attempt(START).wrong(SKILL).about(Archetype::LostWall)];
        assert_eq!(
            line(&pasts, START + DAY).unwrap().words(),
            "Covering with a membrane: missed yesterday in a case about a facial wall lost towards the neighbours."
        );
        let mut unknown = pasts.to_vec();
        unknown[0].archetype = None;
        assert_eq!(
            line(&unknown, START + 4 * DAY).unwrap().words(),
            "Covering with a membrane: missed 4 days ago."
        );
    }

    #[test]
    fn right_but_too_seldom_says_so() {
        let one = [attempt(START).right(SKILL)];
        let words = line(&one, START).unwrap().words();
        assert_eq!(words, "Covering with a membrane: right last time, once; not yet often enough.");
        let two = [attempt(START).right(SKILL), attempt(START).right(SKILL)];
        let words = line(&two, START).unwrap().words();
        assert!(words.ends_with("right the last 2 times; not yet often enough."), "{words}");
    }

    #[test]
    fn what_is_mastered_comes_back_when_it_fades_and_not_before() {
        let (pasts, last) = mastered();
        assert_eq!(line(&pasts, last + DAY), None);
        let due = of(&pasts, last)[place(SKILL)].due.unwrap();
        assert_eq!(line(&pasts, due - 1), None);
        let found = line(&pasts, due).unwrap();
        let Why::Fading { days, held } = found.why else { panic!("found {found:?}") };
        assert!(days > 14 && (0.88..0.92).contains(&held), "{found:?}");
        let words = found.words();
        assert!(words.contains("days ago; the chance that you still would is 90 %."), "{words}");
    }

    #[test]
    fn the_least_certain_stands_first() {
        let pasts = [attempt(START).all_but(&[Skill::Stability]), attempt(START).all_but(&[])];
        let all = today(&pasts[..1], START);
        assert_eq!(all[0].skill, Skill::Stability);
        let now = of(&pasts, START).map(|one| one.now());
        let of = |due: &Due| now[place(due.skill)];
        let all = today(&pasts, START);
        assert!(all.windows(2).all(|pair| of(&pair[0]) <= of(&pair[1])), "{all:?}");
    }
}
