//! What the answers of a class say about items, learners and cases: classical test theory, for classes
//! of 5 to 100 learners, and the setting of a standard.
//!
//! Everything counts one table, [`Answers`]; what is missing stays missing ([`Answer::NotReached`]).
//! A number that the answers cannot give is nothing, never a number that is none.

mod agreement;
mod answers;
mod interval;
mod items;
mod reliability;
mod standard;

#[cfg(test)]
mod trial;

pub use agreement::{Agreement, Components, Variance};
pub use answers::{Answer, Answers, Complete, Footing};
pub use interval::Share;
pub use items::{Item, Items};
pub use reliability::{Reliability, spearman_brown};
pub use standard::{Angoff, Beside, Borderline, NoStandard, Rated};
