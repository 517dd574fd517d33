//! What else could have been chosen: where an implant could stand, and the plan that is sound and
//! nearest.
//!
//! Nothing here knows what a rule says. Candidates are judged by the rules themselves, on the same
//! measurements as every plan.

mod answers;
mod asked;
mod bearing;
mod bench;
mod breaks;
mod cost;
mod grid;
mod held;
mod nearest;
mod pair;
mod region;
mod room;
mod sweep;
mod walk;
mod words;

#[cfg(test)]
mod tests;

pub use crate::plan::{PLACED_BY, Placement};
pub use asked::Against;
pub use breaks::{End, Holds, Trying, breaks, holds};
pub use cost::{Change, Cost, changes};
pub use grid::Grid;
pub use nearest::{Nearest, nearest};
pub use pair::{NoPair, Pair, Telling, across, pair, pair_with, sound_of, telling};
pub use region::Region;
pub use room::{Play, Room, room};
pub use sweep::Sweep;
pub use walk::Walk;
pub use words::answer as answer_words;
