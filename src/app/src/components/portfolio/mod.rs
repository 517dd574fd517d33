//! The parts of the portfolio.

mod choose;
mod record;

pub use choose::{Choose, is_in, tick};
pub use record::Record;

/// What else is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct With {
    /// The learner's own notes.
    pub notes: bool,
    /// What the learner held against verdicts.
    pub objections: bool,
}
