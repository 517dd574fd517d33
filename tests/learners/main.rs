//! Draws cases, lets simulated learners practise on them in three orders, and writes what came of it
//! to `tests/data`. With `--keep`, the drawn cases that are there are taken as they are.

mod draws;
mod learner;
mod practice;
mod report;

use draws::{Drawn, OF_EACH};
use engine::cases::Archetype;
use practice::{Outcome, World};
use std::path::Path;
use std::{env, fs, io, thread};

fn main() -> io::Result<()> {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("data");
    let cases = data.join("drawn_cases.csv");
    if env::args().all(|argument| argument != "--keep") {
        fs::write(&cases, draws::written(&drawn()))?;
    }
    let world = World::of(draws::read(&fs::read_to_string(&cases)?));
    let outcomes = outcomes(&world);
    let rows = report::written(&outcomes);
    fs::write(data.join("simulated_learners.csv"), &rows)?;
    // From the rows, so that whoever has them can tell the same.
    fs::write(data.join("simulated_learners.md"), report::told(&report::read(&rows)))
}

/// So many cases of each kind.
fn drawn() -> Vec<Drawn> {
    let of = |kinds: &[Archetype]| -> Vec<Drawn> {
        let seeds = |kind| (1..=OF_EACH as u64).map(move |seed| draws::drawn(kind, seed));
        kinds.iter().copied().flat_map(seeds).collect()
    };
    let (one, other) = Archetype::ALL.split_at(Archetype::ALL.len() / 2);
    thread::scope(|scope| {
        let other = scope.spawn(|| of(other));
        let mut all = of(one);
        all.extend(other.join().expect("drawing does not panic"));
        all
    })
}

/// Everybody's outcomes, world by world.
fn outcomes(world: &World) -> Vec<Outcome> {
    let count = |place| report::LEARNERS[usize::from(place > 0)];
    let of = |(place, ranges)| report::outcomes(world, ranges, count(place));
    learner::WORLDS.iter().enumerate().flat_map(of).collect()
}
