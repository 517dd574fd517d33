//! The one thing to take away from a sitting.

use crate::parameters::MASTERY;
use crate::past::{Observed, Past};
use crate::standing::{Standing, of};
use engine::rules::{Rule, Skill, Zone};

/// The one thing to take away.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum TakeAway {
    /// A fault that came back, or weighed most.
    Mend {
        /// Its rule.
        rule: &'static Rule,
        /// In how many cases of the sitting.
        times: usize,
        /// In how many attempts before.
        before: usize,
        /// The attempt in which it was last, by its place in the list that was given.
        last: usize,
    },
    /// Nothing went wrong, and a skill has become mastered.
    Held {
        /// Which.
        skill: Skill,
    },
    /// Nothing went wrong.
    Clean,
    /// Nothing was done alone.
    Nothing,
}

/// Of the sitting of this name: the rule whose fault weighs most over the sitting, twice what it
/// weighed before; without a fault, what is newly mastered. `pasts`: every attempt, in order of time.
#[must_use]
pub fn take_away(pasts: &[Past], sitting: &str) -> TakeAway {
    let own = |past: &Past| past.is_over() && past.is_own();
    let is_here = |past: &Past| own(past) && past.head.sitting.as_deref() == Some(sitting);
    let Some(first) = pasts.iter().position(is_here) else { return TakeAway::Nothing };
    let mut worst: Option<(u32, TakeAway)> = None;
    for (last, past) in pasts.iter().enumerate().rev().filter(|(_, past)| is_here(past)) {
        for fault in past.observed.iter().filter(|one| one.is_fault()) {
            let has = |past: &&Past| past.observed.iter().any(|one| is_of(one, fault.rule));
            let times = pasts.iter().filter(|past| is_here(past)).filter(has).count();
            let before = pasts[..first].iter().filter(|past| own(past)).filter(has).count();
            let count = u32::try_from(2 * times + before).unwrap_or(u32::MAX);
            let weighs = weight(fault.zone).saturating_mul(count);
            if worst.is_none_or(|(most, _)| weighs > most) {
                worst = Some((weighs, TakeAway::Mend { rule: fault.rule, times, before, last }));
            }
        }
    }
    worst.map_or_else(|| newly_held(pasts, first), |(_, found)| found)
}

fn is_of(one: &Observed, rule: &'static Rule) -> bool {
    one.is_fault() && one.rule == rule
}

/// As in the mark: 3 where it may harm, 1 where it is only suboptimal; *unsafe* before both.
const fn weight(zone: Zone) -> u32 {
    match zone {
        Zone::Unsafe => 4,
        Zone::Compromising => 3,
        _ => 1,
    }
}

fn newly_held(pasts: &[Past], first: usize) -> TakeAway {
    let mastered = |standing: &Standing| standing.mastery >= MASTERY;
    let before = of(&pasts[..first], 0);
    let after = of(pasts, 0);
    let new =
        before.iter().zip(&after).find(|(before, after)| !mastered(before) && mastered(after));
    new.map_or(TakeAway::Clean, |(_, standing)| TakeAway::Held { skill: standing.skill })
}
