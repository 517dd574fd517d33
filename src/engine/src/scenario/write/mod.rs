//! Cases and plans written out, with a comment for every key: what is written reads back the same.

mod case;
mod page;
mod plan;
mod set;

pub use case::write_case;
pub use page::HEADER;
pub use plan::{plan_template, write_plan};
pub use set::{Listed, write_set};
