//! Writes random histories of answers with what the crate `learning` makes of them, for
//! `check_learning.py`: `export-learning FOLDER`.

use engine::plan::Step;
use learning::calibration::Calibration;
use learning::memory::{Grade, Memory};
use learning::parameters::RETENTION;
use learning::past::Sure;
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};
use serde_json::{Value, json};
use std::path::PathBuf;
use std::{env, fs, io};

const HISTORIES: usize = 600;
const LISTS: usize = 200;

fn main() -> io::Result<()> {
    let folder = env::args().nth(1).map(PathBuf::from).ok_or_else(|| {
        io::Error::new(io::ErrorKind::InvalidInput, "say into which folder: export-learning FOLDER")
    })?;
    fs::create_dir_all(&folder)?;
    let mut random = ChaCha8Rng::seed_from_u64(36);
    let histories: Vec<Value> = (0..HISTORIES).map(|_| history(&mut random)).collect();
    fs::write(folder.join("histories.json"), json!(histories).to_string())?;
    let lists: Vec<Value> = (0..LISTS).map(|_| confidence(&mut random)).collect();
    fs::write(folder.join("confidence.json"), json!(lists).to_string())
}

fn below(random: &mut ChaCha8Rng, count: u32) -> u32 {
    u32::try_from(random.next_u64() % u64::from(count)).expect("below the count")
}

fn pick<T: Copy>(random: &mut ChaCha8Rng, list: &[T]) -> T {
    list[below(random, u32::try_from(list.len()).expect("short")) as usize]
}

/// Answers with days between them, and the memory after each.
fn history(random: &mut ChaCha8Rng) -> Value {
    let mut memory: Option<Memory> = None;
    let answers: Vec<Value> = (0..=below(random, 12))
        .map(|_| {
            let longest = pick(random, &[1, 2, 4, 15, 60, 400]);
            let (days, grade) = (below(random, longest), pick(random, &Grade::ALL));
            let held = memory.map(|memory| memory.held(f64::from(days)));
            let after = memory.map_or(Memory::first(grade), |memory| memory.after(days, grade));
            memory = Some(after);
            json!({
                "days": days,
                "grade": grade.number(),
                "held": held,
                "stability": after.stability,
                "difficulty": after.difficulty,
                "interval": after.interval(RETENTION),
            })
        })
        .collect();
    json!(answers)
}

/// Answers about how sure somebody was, and what is made of them.
fn confidence(random: &mut ChaCha8Rng) -> Value {
    let count = 30 + below(random, 300);
    let tends = below(random, 100);
    let sure: Vec<Sure> = (0..count)
        .map(|_| {
            let percent = pick(random, &[50, 60, 75, 90, 100]);
            Sure { step: Step::Chart, percent, right: below(random, 100) < tends }
        })
        .collect();
    let found = Calibration::of(&sure).expect("thirty answers at least");
    let groups = found.groups.iter().map(|group| {
        json!([group.percent, group.count, group.right, group.band[0], group.band[1]])
    });
    json!({
        "answers": sure.iter().map(|one| json!([one.percent, one.right])).collect::<Vec<_>>(),
        "groups": groups.collect::<Vec<_>>(),
        "brier": found.brier,
        "reliability": found.reliability,
        "resolution": found.resolution,
        "uncertainty": found.uncertainty,
        "bias": found.bias,
        "error": found.error,
        "by-chance": found.by_chance,
    })
}
