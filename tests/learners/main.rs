//! Draws cases, lets simulated learners practise on them in three orders, and writes what came of it
//! to `tests/data`. With `--keep`, the drawn cases that are there are taken as they are.

mod draws;
mod learner;
mod practice;
mod report;

use std::path::Path;
use std::{env, fs, io};

fn main() -> io::Result<()> {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("data");
    let cases = data.join("drawn_cases.csv");
    if env::args().all(|argument| argument != "--keep") {
        fs::write(&cases, draws::written(&draws::all()))?;
    }
    let world = practice::World::of(draws::read(&fs::read_to_string(&cases)?));
    let outcomes = report::outcomes(&world, report::LEARNERS);
    let rows = report::written(&outcomes);
    fs::write(data.join("simulated_learners.csv"), &rows)?;
    // From the rows, so that whoever has them can tell the same.
    fs::write(data.join("simulated_learners.md"), report::told(&report::read(&rows)))
}
