//! How sure a learner was against how it went.
//!
//! Confidence is asked on a fixed scale, so Murphy's decomposition of the Brier score (1973; formulas
//! from memory, the identity checked by the tests and by an outside library) is exact: grouped by
//! identical answers there is nothing within a group.

use crate::parameters::CALIBRATED_FROM;
use crate::past::Sure;
use engine::geometry::order;
use libm::{exp, fabs, log, sqrt};

/// Of the standard normal, what 90 % lie within.
const WITHIN_90: f64 = 1.644_853_626_951_472_2;

/// All answers of one percentage.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Group {
    /// How sure, percent.
    pub percent: u8,
    /// How many answers.
    pub count: u32,
    /// How many of them were right.
    pub right: u32,
    /// The share that was right, 0 to 1.
    pub observed: f64,
    /// Where that share may lie in truth: Wilson's 90 % interval. It stays within 0 to 1 and keeps its
    /// promise on average for the few answers that a group has; the exact interval promises more than
    /// 90 % and so would call fewer learners overconfident than are.
    pub band: [f64; 2],
}

/// Confidence against outcome, from 30 answers on.
#[derive(Debug, Clone, PartialEq)]
pub struct Calibration {
    /// By percentage, the least sure first; those that were never given are left out.
    pub groups: Vec<Group>,
    /// How many answers.
    pub count: u32,
    /// The mean square of how far an answer was from what happened: 0 is best, 0.25 is what *50 %*
    /// always earns. It is reliability less resolution plus uncertainty.
    pub brier: f64,
    /// How far what was said lies from what happened; 0 is best.
    pub reliability: f64,
    /// How far the groups differ in what happened; more is better.
    pub resolution: f64,
    /// How mixed the outcomes were, whatever was said: at most 0.25.
    pub uncertainty: f64,
    /// Mean answer less the share that was right: above 0 overconfident.
    pub bias: f64,
    /// Mean distance between what was said and what happened, each group by its size (expected
    /// calibration error).
    pub error: f64,
    /// What that would be on average by chance alone for a learner who is perfectly calibrated and
    /// gives these answers.
    pub by_chance: f64,
}

impl Calibration {
    /// Of these answers; nothing below 30 of them.
    #[must_use]
    pub fn of(sure: &[Sure]) -> Option<Self> {
        if sure.len() < CALIBRATED_FROM { None } else { Some(Self::of_any(sure)) }
    }

    fn of_any(sure: &[Sure]) -> Self {
        let groups = groups(sure);
        let count: u32 = groups.iter().map(|group| group.count).sum();
        let all = f64::from(count).max(1.0);
        let mean = |of: &dyn Fn(&Group) -> f64| {
            groups.iter().map(|group| f64::from(group.count) * of(group)).sum::<f64>() / all
        };
        let rate = mean(&|group| group.observed);
        let off = |group: &Group| group.said() - group.observed;
        let by_chance = groups.iter().map(Group::off_by_chance).sum::<f64>() / all;
        Self {
            brier: mean(&|group| {
                let (said, right) = (group.said(), group.observed);
                right * (1.0 - said) * (1.0 - said) + (1.0 - right) * said * said
            }),
            reliability: mean(&|group| off(group) * off(group)),
            resolution: mean(&|group| (group.observed - rate) * (group.observed - rate)),
            uncertainty: rate * (1.0 - rate),
            bias: mean(&off),
            error: mean(&|group| fabs(off(group))),
            by_chance,
            groups,
            count,
        }
    }
}

impl Group {
    fn of(percent: u8, count: u32, right: u32) -> Self {
        let observed = f64::from(right) / f64::from(count);
        Self { percent, count, right, observed, band: wilson(right, count) }
    }

    /// What was said, 0 to 1.
    fn said(&self) -> f64 {
        f64::from(self.percent) / 100.0
    }

    /// Mean distance of the number right from its mean, where the answer is the truth: the mean
    /// absolute deviation of the binomial (De Moivre's closed form).
    fn off_by_chance(&self) -> f64 {
        let (all, said) = (f64::from(self.count), self.said());
        if said <= 0.0 || said >= 1.0 {
            return 0.0;
        }
        let above = libm::floor(all * said) + 1.0;
        let (mut choices, mut place) = (0.0, 1.0);
        while place <= above {
            choices += log((all - above + place) / place);
            place += 1.0;
        }
        let likely = choices + above * log(said) + (all - above + 1.0) * log(1.0 - said);
        2.0 * above * exp(likely)
    }
}

fn groups(sure: &[Sure]) -> Vec<Group> {
    let mut counted: Vec<(u8, u32, u32)> = Vec::new();
    for one in sure {
        let place = counted.iter().position(|(percent, ..)| *percent == one.percent);
        let place = place.unwrap_or_else(|| {
            counted.push((one.percent, 0, 0));
            counted.len() - 1
        });
        counted[place].1 += 1;
        counted[place].2 += u32::from(one.right);
    }
    order::sort_short_by_key(&mut counted, |(percent, ..)| *percent);
    counted.into_iter().map(|(percent, count, right)| Group::of(percent, count, right)).collect()
}

/// Wilson's interval (1927, from memory), 90 %.
fn wilson(right: u32, count: u32) -> [f64; 2] {
    let (all, share) = (f64::from(count), f64::from(right) / f64::from(count));
    let square = WITHIN_90 * WITHIN_90;
    let middle = share + square / (2.0 * all);
    let half = WITHIN_90 * sqrt(share * (1.0 - share) / all + square / (4.0 * all * all));
    [-1.0, 1.0].map(|sign| ((middle + sign * half) / (1.0 + square / all)).clamp(0.0, 1.0))
}
