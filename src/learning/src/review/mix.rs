//! How verdicts divide, over time.

use super::ZONES;
use crate::date::{Clock, date_of};
use crate::past::{Observed, Past};
use engine::rules::Zone;

/// Most bars that are told side by side [ours].
const MOST: usize = 12;

/// How long a time one bar is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Span {
    /// One attempt.
    Attempt,
    /// A day.
    Day,
    /// A week from Monday.
    Week,
    /// A month of the calendar.
    Month,
}

impl Span {
    const ALL: [Self; 4] = [Self::Attempt, Self::Day, Self::Week, Self::Month];

    /// *by week*.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Attempt => "by attempt",
            Self::Day => "by day",
            Self::Week => "by week",
            Self::Month => "by month",
        }
    }
}

/// Verdicts of one span.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bar {
    /// Its day, the Monday of its week, its month; in a word where nobody knows.
    pub label: String,
    /// How many attempts.
    pub attempts: u32,
    /// How many verdicts of each zone, from best to worst.
    pub counts: [u32; 6],
}

impl Bar {
    /// How many verdicts there are.
    #[must_use]
    pub fn all(&self) -> u32 {
        self.counts.iter().sum()
    }
}

/// How verdicts divide: bars from the oldest to the most recent.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Mix {
    /// What a bar is of.
    pub by: Span,
    /// The bars.
    pub bars: Vec<Bar>,
    /// How many older ones were left out.
    pub older: usize,
}

impl Mix {
    /// Of attempts in the order in which they were begun: in the shortest spans that make no more than
    /// twelve bars; of more than twelve months the last ones. A fault that nobody could have known of
    /// is left out, as it is in the mark.
    pub(super) fn of(own: &[&Past], clock: Clock) -> Self {
        let mut fitting = Span::ALL.into_iter().map(|by| (by, bars(own, by, clock)));
        let shortest = fitting.find(|(by, bars)| bars.len() <= MOST || *by == Span::Month);
        let (by, mut bars) = shortest.unwrap_or((Span::Attempt, Vec::new()));
        let older = bars.len().saturating_sub(MOST);
        bars.drain(..older);
        Self { by, bars, older }
    }
}

fn bars(own: &[&Past], by: Span, clock: Clock) -> Vec<Bar> {
    let mut bars: Vec<Bar> = Vec::new();
    let mut last = None;
    for past in own {
        let day = past.when().map(|ms| clock.days(ms));
        let span = day.map(|day| begins(by, day));
        if by == Span::Attempt || last != Some(span) {
            last = Some(span);
            bars.push(Bar { label: label(by, span), attempts: 0, counts: [0; 6] });
        }
        if let Some(bar) = bars.last_mut() {
            bar.attempts += 1;
            for (count, zone) in bar.counts.iter_mut().zip(ZONES) {
                *count +=
                    past.observed.iter().map(|one| u32::from(is_told(one, zone))).sum::<u32>();
            }
        }
    }
    bars.retain(|bar| bar.all() > 0);
    bars
}

fn is_told(one: &Observed, zone: Zone) -> bool {
    one.zone == zone && (one.counts || zone == Zone::Debated)
}

/// The first day of the span that a day lies in, days since 1970 began.
fn begins(by: Span, day: u64) -> u64 {
    match by {
        Span::Attempt | Span::Day => day,
        // 1970 began on a Thursday.
        Span::Week => day.saturating_sub((day + 3) % 7),
        Span::Month => day.saturating_sub(u64::from(date_of(day).day) - 1),
    }
}

fn label(by: Span, day: Option<u64>) -> String {
    match (day.map(date_of), by) {
        (None, _) => "no date".to_owned(),
        (Some(date), Span::Month) => {
            date.words().split_once(' ').map_or_else(String::new, |(_, rest)| rest.to_owned())
        }
        (Some(date), _) => date.short(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::trial::{attempt, observed, rule};
    use engine::rules::Skill;

    const DAY: u64 = 24 * 3_600_000;
    /// 2 November 2026, a Monday.
    const MONDAY: u64 = 20_759 * DAY;

    /// Attempts so many days after that Monday, each with one ideal verdict.
    fn at(days: impl IntoIterator<Item = u64>) -> Vec<Past> {
        let with = |day: u64| {
            let mut past = attempt(MONDAY + day * DAY);
            past.observed.push(observed(rule(Skill::Placing), Zone::Ideal));
            past
        };
        days.into_iter().map(with).collect()
    }

    fn mix(pasts: &[Past]) -> Mix {
        Mix::of(&pasts.iter().collect::<Vec<_>>(), Clock(0))
    }

    #[test]
    fn the_shortest_span_is_taken_that_makes_no_more_than_twelve_bars() {
        assert_eq!(mix(&at(0..12)).by, Span::Attempt);
        let twice = mix(&at((0..24).map(|n| n / 2)));
        assert_eq!((twice.by, twice.bars.len(), twice.bars[0].attempts), (Span::Day, 12, 2));
        let weeks = mix(&at(0..80));
        assert_eq!((weeks.by, weeks.bars.len(), weeks.bars[11].attempts), (Span::Week, 12, 3));
        assert_eq!((&*weeks.bars[0].label, &*weeks.bars[1].label), ("2 Nov", "9 Nov"));
        let years = mix(&at((0..800).step_by(3)));
        assert_eq!((years.by, years.bars.len()), (Span::Month, MOST));
        assert_eq!((&*years.bars[11].label, years.older), ("Jan 2029", 15));
    }

    #[test]
    fn what_nobody_could_have_known_is_left_out_and_what_is_debated_is_told() {
        let mut pasts = at([0]);
        let rule = rule(Skill::Covering);
        pasts[0].observed.push(observed(rule, Zone::Debated));
        pasts[0].observed.push(observed(rule, Zone::Unsafe));
        let mut unknowable = observed(rule, Zone::Unsafe);
        unknowable.counts = false;
        pasts[0].observed.push(unknowable);
        assert_eq!(mix(&pasts).bars[0].counts, [1, 0, 1, 0, 0, 1]);
    }

    #[test]
    fn no_attempts_make_no_bars() {
        assert!(mix(&[]).bars.is_empty());
    }
}
