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

/// Wilson's interval (1927, from memory), 90 %; of one at least.
pub(crate) fn wilson(right: u32, count: u32) -> [f64; 2] {
    let (all, share) = (f64::from(count), f64::from(right) / f64::from(count));
    let square = WITHIN_90 * WITHIN_90;
    let middle = share + square / (2.0 * all);
    let half = WITHIN_90 * sqrt(share * (1.0 - share) / all + square / (4.0 * all * all));
    [-1.0, 1.0].map(|sign| ((middle + sign * half) / (1.0 + square / all)).clamp(0.0, 1.0))
}

#[cfg(test)]
mod tests {
    use super::*;
    use engine::plan::Step;

    /// Answers: percent, how many, how many right.
    fn sure(groups: &[(u8, u32, u32)]) -> Vec<Sure> {
        let of = |&(percent, count, right): &(u8, u32, u32)| {
            (0..count).map(move |place| Sure { step: Step::Chart, percent, right: place < right })
        };
        groups.iter().flat_map(of).collect()
    }

    fn close(found: f64, expected: f64) {
        assert!((found - expected).abs() < 1e-9, "{found}, expected {expected}");
    }

    #[test]
    fn the_worked_example_comes_out_whole() {
        let found = Calibration::of_any(&sure(&[(100, 5, 4), (25, 4, 1), (50, 5, 2), (75, 6, 4)]));
        assert_eq!(found.count, 20);
        close(found.brier, 0.218_75);
        close(found.reliability, 0.014_583_333_333);
        close(found.resolution, 0.043_333_333_333);
        close(found.uncertainty, 0.2475);
        close(found.error, 0.1);
        close(found.bias, 0.1);
        let observed: Vec<f64> = found.groups.iter().map(|group| group.observed).collect();
        let expected = [0.25, 0.4, 2.0 / 3.0, 0.8];
        observed.iter().zip(expected).for_each(|(found, expected)| close(*found, expected));
    }

    #[test]
    fn the_parts_make_up_the_score_whatever_was_answered() {
        let mut state = 7_u32;
        for _ in 0..200 {
            let groups = [50, 60, 75, 90, 100].map(|percent| {
                state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                let count = state >> 28;
                (percent, count, (state >> 20) % (count + 1))
            });
            let all = sure(&groups);
            let Some(found) = Calibration::of(&all) else { continue };
            close(found.brier, found.reliability - found.resolution + found.uncertainty);
            let plain: f64 = all
                .iter()
                .map(|one| {
                    let off = f64::from(one.percent) / 100.0 - f64::from(u8::from(one.right));
                    off * off
                })
                .sum();
            close(found.brier, plain / all.len() as f64);
            assert!(found.error + 1e-12 >= found.bias.abs());
        }
    }

    #[test]
    fn fewer_than_thirty_answers_say_nothing() {
        assert_eq!(Calibration::of(&sure(&[(75, 29, 20)])), None);
        assert!(Calibration::of(&sure(&[(75, 30, 20)])).is_some());
        assert_eq!(Calibration::of(&[]), None);
    }

    #[test]
    fn a_band_is_wilson_s_and_stays_within_bounds() {
        // Wilson's interval of 8 of 10 at 90 %, from its closed form by hand.
        let [low, high] = wilson(8, 10);
        assert!((low - 0.541_4).abs() < 1e-3 && (high - 0.931_0).abs() < 1e-3, "{low}, {high}");
        let [low, high] = wilson(10, 10);
        assert!(low > 0.7 && high == 1.0);
        let [low, high] = wilson(0, 4);
        assert!(low == 0.0 && high < 0.5);
    }

    #[test]
    fn a_band_holds_the_truth_nine_times_in_ten_on_average() {
        // Exactly, over all numbers right, for the five answers and a few sizes.
        let mut covered = Vec::new();
        for count in [8, 15, 30, 60] {
            for truth in [0.5, 0.6, 0.75, 0.9] {
                let mut chance = libm::pow(1.0 - truth, f64::from(count));
                let mut sum = 0.0;
                for right in 0..=count {
                    let [low, high] = wilson(right, count);
                    if (low..=high).contains(&truth) {
                        sum += chance;
                    }
                    let odds = truth / (1.0 - truth);
                    chance *= f64::from(count - right) / f64::from(right + 1) * odds;
                }
                covered.push(sum);
            }
        }
        let mean = covered.iter().sum::<f64>() / covered.len() as f64;
        assert!((0.88..0.92).contains(&mean), "{mean}: {covered:?}");
    }

    #[test]
    fn the_chance_level_is_the_mean_absolute_deviation_of_the_binomial() {
        for (percent, count) in [(50_u8, 5_u32), (60, 8), (75, 31), (90, 12), (90, 400)] {
            let said = f64::from(percent) / 100.0;
            let mut chance = libm::pow(1.0 - said, f64::from(count));
            let mut sum = 0.0;
            for right in 0..=count {
                sum += chance * fabs(f64::from(right) - f64::from(count) * said);
                chance *= f64::from(count - right) / f64::from(right + 1) * said / (1.0 - said);
            }
            let found = Group::of(percent, count, 1).off_by_chance();
            if count < 100 {
                close(found, sum);
            } else {
                assert!((found - 4.78).abs() < 0.02, "{found}");
            }
        }
        assert_eq!(Group::of(100, 9, 9).off_by_chance(), 0.0);
    }
}
