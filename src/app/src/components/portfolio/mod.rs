//! The parts of the portfolio.

mod choose;
mod record;

pub use choose::{choose, is_in, tick};
pub use record::record;
