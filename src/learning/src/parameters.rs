//! Every number that decides what comes back and when, and what a class is told, with where it comes
//! from and how far it was read there: *confirmed*, *confirmed (run)*, *confirmed (secondary)*, *from
//! memory*, *engineering* or *ours*.

use crate::tracing::Tracing;

/// Knowledge tracing of a decision in a case: known at the start 0.30, learnt at an opportunity 0.10,
/// slip 0.10, guess 0.20, one right choice among five (engineering). Slip at most 0.10 and guess at
/// most 0.30 keep the meaning of the model (Zhou, Sheng and Howley's explainer, confirmed; attributed
/// there to Baker, Corbett and Aleven 2008, from memory).
pub const TRACING: Tracing = Tracing { start: 0.30, learn: 0.10, slip: 0.10, guess: 0.20 };

/// A skill is mastered from this chance that it is known on (Corbett and Anderson 1995, from memory).
pub const MASTERY: f64 = 0.95;

/// The weights of FSRS-6 (PyPI `fsrs` 6.3.2, the crate `fsrs` 6.6.2 and a third registry's port agree
/// in each: confirmed (run)). They come from flashcard recall: that they time decisions is an
/// extrapolation, so they only space the repeats.
pub const WEIGHTS: [f64; 21] = [
    0.212, 1.2931, 2.3065, 8.2956, 6.4133, 0.8334, 3.0194, 0.001, 1.8722, 0.1666, 0.796, 1.4835,
    0.0614, 0.2629, 1.6483, 0.6014, 1.8729, 0.5425, 0.0912, 0.0658, 0.1542,
];

/// A skill comes back when the chance that it is still held has fallen to this: 0.85 to 0.90 for
/// decisions (engineering).
pub const RETENTION: f64 = 0.9;

/// The longest interval of all, days (the default of the three ports, confirmed (run)).
pub const LONGEST: f64 = 36_500.0;

/// No interval after one of the first answers is longer, days: inside a course (engineering).
pub const FIRST_LONGEST: u32 = 14;

/// How many answers are the first ones (ours).
pub const FIRST_ANSWERS: usize = 3;

/// Somebody is surely right who answered so to every question of the kind, percent: the upper two of
/// the five answers (ours).
pub const SURELY: u8 = 90;

/// Right without its decisions having been called for says nothing about memory: a right answer counts
/// as a review where at least this share of the cases of a kind calls for the skill (ours).
pub const CALLED_FOR: f64 = 0.5;

/// Confidence is set against outcome from this many answers on: below, chance alone shows a learner
/// who is perfectly calibrated as off by more than 0.10 (4,000 simulations, computed).
pub const CALIBRATED_FROM: usize = 30;

/// Cases of a sitting: at 5 to 8 minutes a case half an hour or a little more (ours).
pub const SITTING: usize = 5;

/// A skill is practised in a block until so many successes in a row, then others come between: block,
/// then interleave (Monteiro 2017, confirmed, against Brunmair and Richter 2019, from memory; two to
/// three is a rule that follows from both).
pub const BLOCK: usize = 2;

/// How many cases of one archetype a sitting holds at most; *at most two repeats*, read strictly
/// (design rule that follows from the evidence, engineering).
pub const OF_ONE_ARCHETYPE: usize = 2;

/// Chance of success that a case should leave (engineering).
pub const SUCCESS: [f64; 2] = [0.70, 0.80];

/// Difficulty of the middle of the teaching draws, and by how much the log odds of success fall from
/// the easiest case imaginable to the hardest, 0 to 1 (ours; no learner has been measured yet).
pub const MIDDLE: f64 = 0.65;
/// See [`MIDDLE`].
pub const SLOPE: f64 = 4.0;

/// Difficulties between which 96 % of teaching draws lie, each kind as often (measured on the cases of
/// `tests/data/drawn_cases.csv`).
pub const DIFFICULTIES: [f64; 2] = [0.18, 0.89];

/// What a case loses by being as far from the wanted difficulty as the easiest is from the hardest, in
/// skills wanted (ours; simulated learners, to whom difficulty gives nothing, need 0.51 of the cases of
/// random order with 0, 0.53 with 2, 0.57 with 4 and 0.63 with 8).
pub const OFF_DIFFICULTY: f64 = 2.0;

/// The least width of a stretch of difficulty that is asked for (ours).
pub const LEAST_WIDTH: f64 = 0.15;

/// How many cases a search draws and weighs before it takes the best of them (ours).
pub const MOST_WEIGHED: usize = 2;

/// Of how many kinds of case a search may draw (ours).
pub const KINDS: usize = 4;

/// A kind of case is asked for a skill where at least this share of its cases calls for it, as long as
/// there are such kinds (ours).
pub const CALLS_OFTEN: f64 = 0.6;

/// How many of the latest attempts make their archetype wait (ours).
pub const LATELY: usize = 8;

/// By how much each of those makes it wait, in skills wanted (ours).
pub const SEEN_LATELY: f64 = 0.25;

/// Statistics of items are shown from this many persons on, and without the word *shaky* from the next:
/// shaky below 100, of some use from 30 on (Downing and Yudkowsky, restated: confirmed (secondary)).
pub const COEFFICIENTS_FROM: usize = 30;
/// See [`COEFFICIENTS_FROM`].
pub const FIRM_FROM: usize = 100;

/// The share of a class that is its upper and its lower group (a teaching page on item analysis,
/// confirmed; attributed to Kelley 1939, from memory).
pub const GROUP: f64 = 0.27;

/// How dependable a decision should be: in a class, and where much hangs on it (from memory).
pub const DEPENDABLE: [f64; 2] = [0.70, 0.90];
