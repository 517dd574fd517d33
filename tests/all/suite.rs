//! What a suite is.

use crate::counts::Counts;
use crate::place::Place;

/// A named part of the checks.
#[derive(Debug)]
pub struct Suite {
    /// What the command line calls it.
    pub name: &'static str,
    /// What it checks, in a sentence.
    pub says: &'static str,
    /// Runs it: what passed and failed, or the sentence that says why it could not run.
    pub run: fn(&Place) -> Result<Counts, String>,
}
