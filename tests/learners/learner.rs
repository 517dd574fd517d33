//! A simulated learner: what is true of them, which no scheduler sees.
//!
//! Each skill is known or not. A case that calls for it is answered rightly unless the learner slips,
//! or by a guess; what is not known may be learnt from the debrief. Between days what is known may be
//! lost: exponentially, with a half-life that grows each day on which it is practised while known.
//! That is neither the tracing nor the memory that the scheduler reckons with, and each learner has
//! parameters of their own.

use crate::draws::{Drawn, SKILLS};
use libm::{exp, exp2, log};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// A uniform draw from 0 to 1.
pub fn uniform(random: &mut ChaCha8Rng) -> f64 {
    (random.next_u64() >> 11) as f64 / (1_u64 << 53) as f64
}

/// A uniform choice below a count.
pub fn below(random: &mut ChaCha8Rng, count: usize) -> usize {
    let scaled = (uniform(random) * count as f64) as usize;
    scaled.min(count - 1)
}

fn between(random: &mut ChaCha8Rng, [low, high]: [f64; 2]) -> f64 {
    low + (high - low) * uniform(random)
}

/// A world of learners: ranges that their parameters are drawn from, each evenly. All ours.
#[derive(Debug)]
pub struct Ranges {
    pub name: &'static str,
    pub says: &'static str,
    /// That a skill is known at the start, learner by learner.
    start: [f64; 2],
    /// That it is learnt from a debrief, learner by learner and skill by skill.
    learn: [f64; 2],
    /// That a known one goes wrong at middling difficulty.
    slip: [f64; 2],
    /// That an unknown one goes right at middling difficulty.
    guess: [f64; 2],
    /// By how much the log odds of a right answer fall from difficulty 0 to 1.
    slope: [f64; 2],
    /// The first half-life, days; evenly by its logarithm.
    half_life: [f64; 2],
    /// By what a day's practice multiplies it.
    growth: [f64; 2],
}

const USUAL: Ranges = Ranges {
    name: "usual",
    says: "what the claim is about",
    start: [0.1, 0.5],
    learn: [0.05, 0.25],
    slip: [0.02, 0.15],
    guess: [0.05, 0.35],
    slope: [0.0, 4.0],
    half_life: [4.0, 20.0],
    growth: [1.3, 2.5],
};

/// The usual world, and others: the claim is made of the first, the rest tell how far it carries.
pub const WORLDS: [Ranges; 6] = [
    USUAL,
    Ranges { name: "quick", says: "a debrief teaches at once", learn: [0.3, 0.6], ..USUAL },
    Ranges { name: "slow", says: "a debrief teaches seldom", learn: [0.03, 0.10], ..USUAL },
    Ranges {
        name: "forgetful",
        says: "half of it is gone within days",
        half_life: [1.5, 6.0],
        growth: [1.1, 1.8],
        ..USUAL
    },
    Ranges { name: "lasting", says: "nothing is forgotten", half_life: [1e7, 1e8], ..USUAL },
    Ranges {
        name: "erratic",
        says: "answers say little",
        slip: [0.10, 0.30],
        guess: [0.20, 0.50],
        ..USUAL
    },
];

/// By what having known it once multiplies the chance of learning it.
const SAVINGS: f64 = 2.0;
/// Middling difficulty.
const MIDDLE: f64 = 0.65;

/// One skill of one learner.
#[derive(Debug, Clone, Copy)]
struct Held {
    learn: f64,
    known: bool,
    once: bool,
    half_life: f64,
    /// The day on which its half-life last grew.
    grew: u32,
}

/// A learner.
#[derive(Debug, Clone)]
pub struct Learner {
    slip: f64,
    guess: f64,
    slope: f64,
    first_half_life: f64,
    growth: f64,
    skills: [Held; SKILLS],
    day: u32,
    random: ChaCha8Rng,
}

impl Learner {
    /// The learner of this number, who meets chances of their own in each order of cases.
    pub fn of(ranges: &Ranges, number: u64, order: u64) -> Self {
        let mut random = ChaCha8Rng::seed_from_u64(number);
        let start = between(&mut random, ranges.start);
        let slip = between(&mut random, ranges.slip);
        let guess = between(&mut random, ranges.guess);
        let slope = between(&mut random, ranges.slope);
        let first_half_life = exp(between(&mut random, ranges.half_life.map(log)));
        let growth = between(&mut random, ranges.growth);
        let skills = [(); SKILLS].map(|()| {
            let known = uniform(&mut random) < start;
            let learn = between(&mut random, ranges.learn);
            Held { learn, known, once: known, half_life: first_half_life, grew: 0 }
        });
        random.set_stream(order + 1);
        Self { slip, guess, slope, first_half_life, growth, skills, day: 0, random }
    }

    /// Lives on to a day, and forgets.
    pub fn wake(&mut self, day: u32) {
        let slept = f64::from(day - self.day);
        self.day = day;
        for place in 0..SKILLS {
            let chance = uniform(&mut self.random);
            let skill = &mut self.skills[place];
            if skill.known && chance > exp2(-slept / skill.half_life) {
                skill.known = false;
                skill.half_life = self.first_half_life;
            }
        }
    }

    /// Does a case: which skills that it judges went right.
    pub fn attempt(&mut self, case: &Drawn) -> [Option<bool>; SKILLS] {
        let mut answers = [None; SKILLS];
        for (place, (in_play, judged)) in case.rules.into_iter().enumerate() {
            // Drawn whether or not they are needed, so that a case never moves a later one's chances.
            let [answer, learns] = [uniform(&mut self.random), uniform(&mut self.random)];
            if in_play == 0 {
                answers[place] = (judged > 0).then_some(true);
                continue;
            }
            let held = self.skills[place];
            let at_middle = if held.known { 1.0 - self.slip } else { self.guess };
            let odds = log(at_middle / (1.0 - at_middle)) - self.slope * (case.difficulty - MIDDLE);
            answers[place] = Some(answer < 1.0 / (1.0 + exp(-odds)));
            self.practise(place, learns);
        }
        answers
    }

    fn practise(&mut self, place: usize, chance: f64) {
        let skill = &mut self.skills[place];
        if skill.known {
            if skill.grew != self.day {
                skill.half_life *= self.growth;
                skill.grew = self.day;
            }
            return;
        }
        let savings = if skill.once { SAVINGS } else { 1.0 };
        if chance < skill.learn * savings {
            skill.known = true;
            skill.once = true;
            skill.grew = self.day;
        }
    }

    /// Whether every skill is known.
    pub fn knows_all(&self) -> bool {
        self.skills.iter().all(|skill| skill.known)
    }

    /// The share of skills that will still be known after so many days without practice, on average.
    pub fn will_hold(&self, days: f64) -> f64 {
        let held = self.skills.iter().filter(|skill| skill.known);
        held.map(|skill| exp2(-days / skill.half_life)).sum::<f64>() / SKILLS as f64
    }
}
