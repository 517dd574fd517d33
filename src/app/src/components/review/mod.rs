//! The parts of the review.

mod notes;
mod plot;
mod stands_out;
mod sureness;

pub use notes::notes;
pub use plot::plotted;
pub use stands_out::stands_out;
pub use sureness::sureness;
