//! `cargo all-tests`: everything that the project checks about itself, suite by suite.
//!
//! Suites run in the order of `suites::ALL`; names given as arguments run only those. The last
//! line is `N passed, N failed`. Exit code: 0 all passed, 1 something failed, 2 could not run.

mod counts;
mod faults;
mod place;
mod shell;
mod suite;
mod suites;
mod tools;

use std::process::ExitCode;
use std::time::Instant;

use counts::Counts;
use place::Place;
use suite::Suite;

fn main() -> ExitCode {
    let chosen = match choose(std::env::args().skip(1)) {
        Ok(chosen) => chosen,
        Err(sentence) => {
            shell::say(&sentence);
            return ExitCode::from(2);
        }
    };
    let place = Place::here();
    let mut rows = Vec::new();
    for suite in chosen {
        shell::say(&format!("\n== {}: {}", suite.name, suite.says));
        let start = Instant::now();
        let counts = run(suite, &place);
        let row = format!("{:<10} {:>6} s  {counts}", suite.name, start.elapsed().as_secs());
        shell::say(&row);
        rows.push((row, counts));
    }
    let total: Counts = rows.iter().map(|(_, counts)| counts.clone()).sum();
    if !total.faults.is_empty() {
        shell::say("\n== what failed");
        total.faults.iter().for_each(|line| shell::say(line));
    }
    shell::say("\n== all suites");
    for (row, _) in &rows {
        shell::say(row);
    }
    // Whoever reads the outcome by program looks for this line, alone and last.
    shell::say(&total.to_string());
    if total.failed == 0 { ExitCode::SUCCESS } else { ExitCode::FAILURE }
}

/// One suite; whatever stops it, or leaves it without a single test, counts as one failure.
fn run(suite: &Suite, place: &Place) -> Counts {
    match (suite.run)(place) {
        Ok(counts) if counts.passed + counts.failed == 0 => {
            shell::say(&format!("suite {} ran no test, expected at least one", suite.name));
            Counts::failure()
        }
        Ok(counts) => counts,
        Err(sentence) => {
            shell::say(&format!("suite {} could not run: {sentence}", suite.name));
            Counts::failure()
        }
    }
}

/// The suites that the arguments name, or all of them.
fn choose(arguments: impl Iterator<Item = String>) -> Result<Vec<&'static Suite>, String> {
    // `cargo all-tests -- browser` hands the dashes on.
    let names: Vec<String> = arguments.filter(|word| word != "--").collect();
    let known = || suites::ALL.iter().map(|suite| suite.name).collect::<Vec<_>>().join(", ");
    if let Some(stranger) = names.iter().find(|name| suites::ALL.iter().all(|s| s.name != **name)) {
        return Err(format!("found no suite named {stranger}, expected some of: {}", known()));
    }
    let wanted = |suite: &&Suite| names.is_empty() || names.iter().any(|name| name == suite.name);
    Ok(suites::ALL.iter().filter(wanted).collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(words: &[&str]) -> Result<Vec<&'static str>, String> {
        let chosen = choose(words.iter().map(|word| (*word).to_owned()))?;
        Ok(chosen.iter().map(|suite| suite.name).collect())
    }

    #[test]
    fn no_name_runs_everything_and_names_run_in_the_suites_own_order() {
        assert_eq!(names(&[]).unwrap().len(), suites::ALL.len());
        assert_eq!(names(&["--", "site", "format"]).unwrap(), ["format", "site"]);
    }

    #[test]
    fn an_unknown_name_is_answered_with_the_known_ones() {
        let sentence = names(&["brwser"]).unwrap_err();
        assert!(sentence.contains("brwser") && sentence.contains("browser"), "{sentence}");
    }

    #[test]
    fn a_suite_without_a_test_or_with_a_trouble_is_one_failure() {
        let empty = Suite { name: "empty", says: "", run: |_| Ok(Counts::default()) };
        let broken = Suite { name: "broken", says: "", run: |_| Err("no tool".to_owned()) };
        for suite in [empty, broken] {
            assert_eq!(run(&suite, &Place::here()), Counts::failure());
        }
    }
}
