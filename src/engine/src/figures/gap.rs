//! The gap all round (clock) and along the implant (profile).

mod clock;
mod profile;

pub use clock::gap_clock;
pub use profile::{Facing, gap_profile, gap_rows};
