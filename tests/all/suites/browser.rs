//! The page in a real browser: `tests/browser/*.test.mjs`, by node's own runner.

use super::site;
use crate::counts::Counts;
use crate::place::Place;
use crate::shell::{self, run};
use crate::suite::Suite;
use crate::tools;
use std::path::{Path, PathBuf};
use std::sync::OnceLock;
use std::sync::atomic::{AtomicUsize, Ordering};

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
    let files = tests(place)?;
    let is_there = |name: &&str| files.iter().any(|file| file.ends_with(name));
    if let Some(gone) = TIMED.iter().chain(&LONG).find(|name| !is_there(name)) {
        return Err(format!(
            "found no file of browser tests called {gone}, expected one: strike it off its list"
        ));
    }
    let (timed, rest): (Vec<_>, Vec<_>) = files.into_iter().partition(|file| takes_the_time(file));
    let ran = |file: &PathBuf| {
        let ran = run(
            place
                .checker("node")
                // The limit is each test's and each file's.
                .args(["--test", "--test-timeout=1200000", "--test-reporter=spec"])
                .arg(file)
                .env("CHROMIUM", &chromium)
                .env("WALLWISE_PARITY", &native),
            shell::all,
        )?;
        Ok(Counts::of_node(&ran.text).and_exit(ran.succeeded))
    };
    // Nothing runs beside what takes the time; of the rest two at once keep two cores busy.
    let mut counts: Vec<Counts> = timed.iter().map(ran).collect::<Result<_, String>>()?;
    for (file, beside) in rest.iter().zip(two_at_once(&rest, &ran)) {
        let beside = beside?;
        if beside.failed == 0 {
            counts.push(beside);
            continue;
        }
        // Two browsers make each other late, which is our doing and no fault of the page.
        shell::say(&format!("\n{} failed beside another file: again, alone", file.display()));
        counts.push(ran(file)?);
    }
    Ok(counts.into_iter().sum())
}

/// What each file comes to, in their order, two of them running at a time.
fn two_at_once(
    files: &[PathBuf],
    ran: &(dyn Fn(&PathBuf) -> Result<Counts, String> + Sync),
) -> Vec<Result<Counts, String>> {
    let slots: Vec<OnceLock<_>> = files.iter().map(|_| OnceLock::new()).collect();
    let next = AtomicUsize::new(0);
    std::thread::scope(|scope| {
        for _ in 0..2 {
            scope.spawn(|| {
                while let Some(place) =
                    Some(next.fetch_add(1, Ordering::Relaxed)).filter(|place| *place < files.len())
                {
                    let _ = slots[place].set(ran(&files[place]));
                }
            });
        }
    });
    let cut = || Err("a file of browser tests was cut short".to_owned());
    slots.into_iter().map(|slot| slot.into_inner().unwrap_or_else(cut)).collect()
}

/// The files in which a test holds the page to seconds.
const TIMED: [&str; 2] = ["class.test.mjs", "speed.test.mjs"];

fn takes_the_time(file: &Path) -> bool {
    TIMED.iter().any(|name| file.ends_with(name))
}

/// What takes minutes: it comes first, as else one of two lanes would end with it while the other idles.
const LONG: [&str; 4] = ["killed.test.mjs", "walk.test.mjs", "access.test.mjs", "labels.test.mjs"];

/// The test files: what is long, then all else in order of name.
fn tests(place: &Place) -> Result<Vec<PathBuf>, String> {
    let folder = place.tests("browser");
    let entries = std::fs::read_dir(&folder)
        .map_err(|error| format!("cannot read {}: {error}", folder.display()))?;
    let mut files: Vec<_> = entries.flatten().map(|entry| entry.path()).collect();
    files.retain(|file| file.to_string_lossy().ends_with(".test.mjs"));
    files.sort();
    files.sort_by_key(|file| !LONG.iter().any(|name| file.ends_with(name)));
    Ok(files)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_file_is_run_once_and_keeps_its_place() {
        let files: Vec<PathBuf> = (0..9).map(|place| format!("{place}").into()).collect();
        let ran = |file: &PathBuf| {
            let passed = file.to_string_lossy().parse().map_err(|_| "no number".to_owned())?;
            Ok(Counts { passed, ..Counts::default() })
        };
        let passed = two_at_once(&files, &ran).into_iter().map(|one| one.unwrap().passed);
        assert!(passed.eq(0..9));
        assert!(two_at_once(&["x".into()], &ran)[0].is_err());
    }
}
