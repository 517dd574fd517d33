//! How many tests passed and failed, as each runner says it.

use std::fmt;
use std::iter::Sum;

use crate::faults;

/// Passed and failed. What a runner skips counts as failed: nothing here may be skipped.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Counts {
    pub passed: u32,
    pub failed: u32,
    /// What the runner said of those that failed, for the end of the run.
    pub faults: Vec<String>,
}

impl Counts {
    /// A single failure.
    pub const fn failure() -> Self {
        Self { passed: 0, failed: 1, faults: Vec::new() }
    }

    /// A single check.
    pub fn check(passed: bool) -> Self {
        if passed { Self { passed: 1, failed: 0, faults: Vec::new() } } else { Self::failure() }
    }

    /// A single check by the compiler or what stands beside it, which said this.
    pub fn of_compiler(text: &str, succeeded: bool) -> Self {
        let faults = if succeeded { Vec::new() } else { faults::of_compiler(text) };
        Self { faults, ..Self::check(succeeded) }
    }

    /// What cargo's runner says, once for each binary: `test result: ok. 3 passed; 0 failed; …`.
    pub fn of_cargo(text: &str) -> Self {
        let results = text.lines().filter_map(|line| line.trim().strip_prefix("test result: "));
        let counts: Self = results
            .map(|line| Self {
                passed: before(line, " passed"),
                failed: before(line, " failed") + before(line, " ignored"),
                faults: Vec::new(),
            })
            .sum();
        Self { faults: faults::of_cargo(text), ..counts }
    }

    /// What node's runner says at its end: `ℹ pass 3`, `ℹ fail 0`, `ℹ skipped 0`.
    pub fn of_node(text: &str) -> Self {
        let of = |word: &str| -> u32 {
            let number = |line: &str| -> Option<u32> {
                let line = line.trim_start_matches(|mark: char| !mark.is_ascii_alphanumeric());
                line.strip_prefix(word)?.trim().parse().ok()
            };
            text.lines().filter_map(number).sum()
        };
        let failed = ["fail ", "cancelled ", "skipped ", "todo "].map(of).iter().sum();
        Self { passed: of("pass "), failed, faults: faults::of_node(text) }
    }

    /// What Python's unittest says: `Ran 5 tests in …`, then `OK` or `FAILED (failures=1, errors=1)`.
    pub fn of_unittest(text: &str) -> Self {
        let ran: u32 = text.lines().filter_map(|line| line.strip_prefix("Ran ")).map(first).sum();
        let verdicts =
            text.lines().filter(|line| line.starts_with("OK") || line.starts_with("FAILED"));
        let failed = verdicts
            .flat_map(|line| line.split(['(', ',', ')']))
            .filter_map(|part| part.trim().split_once('='))
            .filter(|(name, _)| *name != "expected failures")
            .map(|(_, number)| first(number))
            .sum();
        Self { passed: ran.saturating_sub(failed), failed, faults: faults::of_unittest(text) }
    }

    /// The same counts, with one failure more where a runner failed without counting any.
    pub fn and_exit(mut self, succeeded: bool) -> Self {
        if !succeeded && self.failed == 0 {
            self.failed = 1;
        }
        self
    }
}

impl Sum for Counts {
    fn sum<I: Iterator<Item = Self>>(counts: I) -> Self {
        counts.fold(Self::default(), |sum, one| Self {
            passed: sum.passed + one.passed,
            failed: sum.failed + one.failed,
            faults: [sum.faults, one.faults].concat(),
        })
    }
}

impl fmt::Display for Counts {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(formatter, "{} passed, {} failed", self.passed, self.failed)
    }
}

/// The number that stands right before `word`, or nothing.
fn before(line: &str, word: &str) -> u32 {
    let number = line.split_once(word).and_then(|(before, _)| before.rsplit(' ').next());
    number.and_then(|number| number.parse().ok()).unwrap_or(0)
}

/// The number that a text begins with, or nothing.
fn first(text: &str) -> u32 {
    let digits = text.find(|digit: char| !digit.is_ascii_digit()).unwrap_or(text.len());
    text[..digits].parse().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn counted(counts: &Counts) -> (u32, u32) {
        (counts.passed, counts.failed)
    }

    #[test]
    fn cargo_s_results_are_added_up_and_an_ignored_test_is_a_failure() {
        let text = "test a ... ok\n\
            test result: ok. 12 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out\n\
            test result: FAILED. 3 passed; 2 failed; 1 ignored; 0 measured; 0 filtered out\n";
        assert_eq!(counted(&Counts::of_cargo(text)), (15, 3));
    }

    #[test]
    fn node_s_summary_is_read_in_both_of_its_spellings() {
        let spec = "ℹ tests 5\nℹ pass 3\nℹ fail 1\nℹ cancelled 0\nℹ skipped 1\nℹ todo 0\n";
        assert_eq!(counted(&Counts::of_node(spec)), (3, 2));
        assert_eq!(counted(&Counts::of_node(&spec.replace('ℹ', "#"))), (3, 2));
    }

    #[test]
    fn unittest_s_verdict_is_read() {
        let well = "Ran 5 tests in 0.2s\n\nOK\n";
        assert_eq!(counted(&Counts::of_unittest(well)), (5, 0));
        let badly = "Ran 5 tests in 0.2s\n\nFAILED (failures=1, errors=2)\n";
        assert_eq!(counted(&Counts::of_unittest(badly)), (2, 3));
        let skipping = "Ran 5 tests in 0.2s\n\nOK (skipped=1)\n";
        assert_eq!(counted(&Counts::of_unittest(skipping)), (4, 1));
    }

    #[test]
    fn a_runner_that_fails_without_a_count_is_one_failure() {
        assert_eq!(Counts::default().and_exit(false), Counts::failure());
        assert_eq!(Counts::check(true).and_exit(true), Counts::check(true));
    }
}
