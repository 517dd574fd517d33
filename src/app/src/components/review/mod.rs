//! The parts of the review.

mod notes;
mod plot;
mod stands_out;
mod sureness;

pub use notes::Notes;
pub use plot::Plotted;
pub use stands_out::StandsOut;
pub use sureness::sureness;
