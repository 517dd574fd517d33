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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::record::Help;
    use crate::trial::{DAY, START, attempt, rule};

    const TODAY: &str = "today";

    fn here(place: u64) -> Past {
        attempt(START + DAY + place).within(TODAY)
    }

    fn mended(pasts: &[Past]) -> (&'static str, usize, usize, usize) {
        match take_away(pasts, TODAY) {
            TakeAway::Mend { rule, times, before, last } => (rule.id, times, before, last),
            other => panic!("found {other:?}"),
        }
    }

    #[test]
    fn what_went_wrong_twice_goes_before_what_went_wrong_once() {
        let (twice, once) = (rule(Skill::Grafting), rule(Skill::Placing));
        let pasts = [
            here(0).saw(twice, Zone::Compromising),
            here(1).saw(twice, Zone::Compromising).saw(once, Zone::Compromising),
            here(2).saw(twice, Zone::Ideal),
        ];
        assert_eq!(mended(&pasts), (twice.id, 2, 0, 1));
    }

    #[test]
    fn a_fault_weighs_what_it_may_cost_and_what_it_did_before() {
        let (light, heavy) = (rule(Skill::Grafting), rule(Skill::Placing));
        let now = here(0).saw(light, Zone::Suboptimal).saw(heavy, Zone::Unsafe);
        assert_eq!(mended(&[now]), (heavy.id, 1, 0, 0));
        // The same two weigh alike now; one of them was there before.
        let before = attempt(START).saw(light, Zone::Compromising);
        let now = here(0).saw(heavy, Zone::Compromising).saw(light, Zone::Compromising);
        assert_eq!(mended(&[before, now]), (light.id, 1, 1, 1));
    }

    #[test]
    fn debated_verdicts_and_other_sittings_and_what_was_shown_are_no_faults() {
        let rule = rule(Skill::Placing);
        assert_eq!(take_away(&[here(0).saw(rule, Zone::Debated)], TODAY), TakeAway::Clean);
        let elsewhere = attempt(START).within("yesterday").saw(rule, Zone::Unsafe);
        assert_eq!(take_away(&[elsewhere], TODAY), TakeAway::Nothing);
        let shown = here(0).with(Help::Worked).saw(rule, Zone::Unsafe);
        assert_eq!(take_away(&[shown], TODAY), TakeAway::Nothing);
    }

    #[test]
    fn without_a_fault_what_became_mastered_is_told() {
        let skill = Skill::Covering;
        let mut pasts: Vec<Past> = (0..2).map(|k| attempt(START + k).right(skill)).collect();
        assert_eq!(take_away(&pasts, TODAY), TakeAway::Nothing);
        // The third right answer makes it mastered, a fourth tells nothing new.
        pasts.push(here(0).right(skill));
        assert_eq!(take_away(&pasts, TODAY), TakeAway::Held { skill });
        pasts[2].head.sitting = None;
        pasts.push(here(1).right(skill));
        assert_eq!(take_away(&pasts, TODAY), TakeAway::Clean);
    }
}
