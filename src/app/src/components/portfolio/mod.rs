//! The parts of the portfolio.

mod beside;
mod choose;
mod record;

pub use beside::{Chosen, acts, beside};
pub use choose::{choose, is_in, tick, tick_where};
pub use record::record;
