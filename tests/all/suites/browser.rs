//! The page in a real browser: `tests/browser/*.test.mjs`, by node's own runner.

use super::site;
use crate::counts::Counts;
use crate::place::Place;
use crate::shell::{self, run};
use crate::suite::Suite;
use crate::tools;
use std::path::{Path, PathBuf};

pub const BROWSER: Suite = Suite {
    name: "browser",
    says: "the page in a real browser: it loads, it obeys its policy, it is accessible, it agrees with the native build",
    run: in_browser,
};

fn in_browser(place: &Place) -> Result<Counts, String> {
    tools::node(place)?;
    let chromium = tools::chromium(place)?;
    if !site::build(place)? {
        return Err("the page does not build".to_owned());
    }
    site::build_for_packages(place)?;
    // The native side of the parity test: built here, so that no test waits for a compiler.
    let parity = ["build", "--release", "--workspace", "--example", "parity"];
    shell::must(place.cargo().args(parity), "building the native side of the parity test")?;
    let native = place.wallwise().with_file_name("examples").join("parity");
    // Nothing runs beside what takes the time; of the rest two at once keep two cores busy.
    let (timed, rest): (Vec<_>, Vec<_>) =
        tests(place)?.into_iter().partition(|file| takes_the_time(file));
    if timed.len() != TIMED.len() {
        return Err(format!("found {} of the files {TIMED:?}, expected each", timed.len()));
    }
    let mut counts = Vec::new();
    for (files, at_once) in [(timed, 1), (rest, 2)] {
        let ran = run(
            place
                .checker("node")
                .arg("--test")
                .arg(format!("--test-concurrency={at_once}"))
                // The limit is each test's and each file's.
                .arg("--test-timeout=1200000")
                .arg("--test-reporter=spec")
                .args(files)
                .env("CHROMIUM", &chromium)
                .env("WALLWISE_PARITY", &native),
            shell::all,
        )?;
        counts.push(Counts::of_node(&ran.text).and_exit(ran.succeeded));
    }
    Ok(counts.into_iter().sum())
}

/// The files in which a test holds the page to seconds.
const TIMED: [&str; 2] = ["class.test.mjs", "speed.test.mjs"];

fn takes_the_time(file: &Path) -> bool {
    TIMED.iter().any(|name| file.ends_with(name))
}

/// The test files, in order of name.
fn tests(place: &Place) -> Result<Vec<PathBuf>, String> {
    let folder = place.tests("browser");
    let entries = std::fs::read_dir(&folder)
        .map_err(|error| format!("cannot read {}: {error}", folder.display()))?;
    let mut files: Vec<_> = entries.flatten().map(|entry| entry.path()).collect();
    files.retain(|file| file.to_string_lossy().ends_with(".test.mjs"));
    files.sort();
    Ok(files)
}
