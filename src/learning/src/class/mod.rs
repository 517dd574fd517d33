//! What the answers of a class say about items, learners and cases: classical test theory, for classes
//! of 5 to 100 learners, and the setting of a standard.
//!
//! Everything counts one table, [`Answers`]; what is missing stays missing ([`Answer::NotReached`]).
//! A number that the answers cannot give is nothing, never a number that is none.

mod adjusted;
mod agreement;
mod alternatives;
mod answers;
mod changed;
mod discussion;
mod drawer;
mod firsts;
mod gathered;
mod handed;
mod interval;
mod items;
mod map;
mod marked;
mod marks;
mod missed;
pub(crate) mod order;
mod reliability;
mod report;
mod standard;
pub mod tables;
pub mod told;
pub mod typed;

#[cfg(test)]
mod trial;

pub use adjusted::SetAside;
pub use agreement::{Agreement, Components, Variance};
pub use alternatives::Chosen;
pub use answers::{Answer, Answers, Complete, Footing};
pub use changed::Changed;
pub use discussion::{Brought, Discussed, Discussion, UNTOLD_FROM};
pub use drawer::Drawer;
pub use gathered::{CaseSeen, Class, Taken};
pub use handed::{Aside, Handed, Held, written_out};
pub use interval::Share;
pub use items::{Item, Items};
pub use map::{Cell, Map};
pub use marks::{MOST_RULES, Marks};
pub use missed::{Notion, OfRule, alternative};
pub use reliability::{Reliability, spearman_brown};
pub use report::{Grave, Objection, Odd, OfCase, OfLearner, Report, Together};
pub use standard::{Angoff, Beside, Borderline, NoStandard, Rated};
