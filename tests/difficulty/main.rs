//! The difficulty of a case against something that it is not computed from: how many plans are sound
//! of those in which one answer in twenty was drawn at random.
//!
//! Difficulty looks at single answers and at the room of one implant; here several answers change at
//! once, numbers by up to ten of their steps, and whole plans are judged. Rank correlation is
//! Spearman's (the definition with mean ranks for ties, any handbook of statistics).

use engine::cases::{self, Constraints, Spread};
use engine::chart::Case;
use engine::debrief::judge;
use engine::plan::{Draft, Kind, Plan, Value, is_asked};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// How many plans are drawn for each case.
const PLANS: u32 = 400;
/// Of a hundred answers, how many are drawn.
const DRAWN: u64 = 5;
/// By how many of its steps a number is off at most.
const OFF: u64 = 10;

fn below(random: &mut ChaCha8Rng, count: u64) -> u64 {
    random.next_u64() % count
}

/// A sound plan in which some answers were drawn.
fn spoilt(case: &Case, sound: &Draft, random: &mut ChaCha8Rng) -> Draft {
    let mut draft = sound.clone();
    for (decision, now) in sound.iter() {
        if below(random, 100) >= DRAWN {
            continue;
        }
        let value = match (decision.entry().kind, now) {
            (Kind::One(options), _) => {
                let place = below(random, options.len() as u64);
                Value::One(u8::try_from(place).expect("a closed list"))
            }
            (Kind::Many(options), Value::Many(bits)) => {
                Value::Many(bits ^ (1 << below(random, options.len() as u64)))
            }
            (Kind::Number(kind), Value::Number(count)) => {
                let off = i32::try_from(below(random, 2 * OFF + 1)).expect("small");
                Value::Number(count + (off - i32::try_from(OFF).expect("small")) * kind.by)
            }
            _ => continue,
        };
        // A number that is not in the list leaves the answer as it was.
        let _ = draft.choose(decision, value);
    }
    let idle: Vec<_> = draft.iter().map(|(decision, _)| decision).collect();
    for decision in idle {
        if !is_asked(decision, &draft, case) {
            draft.clear(decision);
        }
    }
    draft
}

/// Of the plans that can be carried out, the share that is sound.
fn sound_share(case: &Case, sound: &Draft, random: &mut ChaCha8Rng) -> f64 {
    let (mut whole, mut kept) = (0, 0);
    for _ in 0..PLANS {
        if let Ok(plan) = Plan::from_draft(&spoilt(case, sound, random), case) {
            whole += 1;
            kept += u32::from(!judge(case, &plan).iter().any(|verdict| verdict.is_fault()));
        }
    }
    assert!(whole > PLANS / 4, "{:?}: {whole} whole plans say too little", case.address);
    f64::from(kept) / f64::from(whole)
}

/// Ranks from 1, equal values sharing the mean of theirs.
fn ranks(values: &[f64]) -> Vec<f64> {
    let rank = |value: &f64| {
        let below = values.iter().filter(|other| *other < value).count() as f64;
        let equal = values.iter().filter(|other| *other == value).count() as f64;
        below + (equal + 1.0) / 2.0
    };
    values.iter().map(rank).collect()
}

fn spearman(a: &[f64], b: &[f64]) -> f64 {
    let (a, b) = (ranks(a), ranks(b));
    let mean = (a.len() as f64 + 1.0) / 2.0;
    let product = |a: &[f64], b: &[f64]| -> f64 {
        a.iter().zip(b).map(|(a, b)| (a - mean) * (b - mean)).sum()
    };
    product(&a, &b) / (product(&a, &a) * product(&b, &b)).sqrt()
}

/// Difficulty and share of each case, and whether its plan places an implant.
fn measured(spread: Spread, seeds: u64) -> Vec<(f64, f64, bool)> {
    let mut random = ChaCha8Rng::seed_from_u64(20);
    (1..=seeds)
        .map(|seed| {
            let case = cases::generate_as(spread, seed, &Constraints::default()).expect("a case");
            let sound = cases::proof(&case).expect("a sound plan").draft;
            let hard = cases::difficulty(&case, &sound).expect("a whole plan");
            (hard.value(), sound_share(&case, &sound, &mut random), hard.room.is_some())
        })
        .collect()
}

fn correlation(rows: &[(f64, f64, bool)]) -> f64 {
    let [hard, share]: [Vec<f64>; 2] =
        [rows.iter().map(|row| row.0).collect(), rows.iter().map(|row| row.1).collect()];
    spearman(&hard, &share)
}

#[test]
fn the_rank_correlation_is_that_of_a_worked_example() {
    // Ten pairs with one tie, worked by hand: 1 - 6 * 6.5 / (5 * 24), corrected for the tie.
    let (a, b) = ([1.0, 2.0, 3.0, 4.0, 5.0], [2.0, 1.0, 4.0, 4.0, 5.0]);
    let by_hand = 8.5 / (10.0_f64 * 9.5).sqrt();
    assert!((spearman(&a, &b) - by_hand).abs() < 1e-12);
    assert!((spearman(&a, &[5.0, 4.0, 3.0, 2.0, 1.0]) + 1.0).abs() < 1e-12);
}

/// Asserts that harder cases leave fewer random plans sound, by rank: over all cases and over those
/// whose plan places an implant.
fn assert_harder(spread: Spread, seeds: u64, [all, placing]: [f64; 2]) {
    let rows = measured(spread, seeds);
    let places: Vec<_> = rows.iter().copied().filter(|row| row.2).collect();
    let found = [correlation(&rows), correlation(&places)];
    assert!(places.len() >= 20, "{} say too little", places.len());
    assert!(found[0] < all, "{spread:?}: {found:?}");
    assert!(found[1] < placing, "{spread:?}, where an implant is placed: {found:?}");
}

#[test]
fn harder_cases_of_one_root_leave_fewer_random_plans_sound() {
    assert_harder(Spread::Teaching, 60, [-0.7, -0.35]);
}

#[test]
fn harder_cases_of_the_whole_mouth_leave_fewer_random_plans_sound() {
    assert_harder(Spread::WholeMouth, 40, [-0.7, -0.4]);
}
