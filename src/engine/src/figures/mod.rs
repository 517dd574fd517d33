//! Drawing primitives in millimetres, and the figures made of them.
//!
//! A figure says *what* is drawn ([`Ink`]), never *how it looks*: page, SVG export and print each map
//! an ink to a line, a tint or a hatching ([`style`] holds the one table). Screen axes: x to the
//! right, y down. Every figure carries its scale bar and a text that says what it shows.
//!
//! **Which way up.** As in the mouth of somebody who sits before you: upper teeth stand root up,
//! lower teeth root down, and distal is to the left in quadrants 1 and 4 and to the right in 2 and 3.

mod believed;
mod changing;
mod curve;
mod cut;
mod gap;
mod grain;
mod lit;
mod map;
mod primitives;
mod scene;
mod section;
mod sheet;
mod show;
mod sounded;
pub mod style;
pub mod svg;
#[cfg(test)]
mod tests;
pub mod text;
mod together;
mod tube;

pub use changing::{Hold, changing};
pub use gap::{Facing, gap_clock, gap_profile, gap_rows};
pub use map::{facial_map, facial_map_against};
pub use primitives::{Anchor, Figure, Handle, Ink, Item, Window};
pub use section::{healed_section, room_section, section, section_against, section_of_one};
pub use show::Show;
pub use sounded::{sounded, sounded_at};
pub use together::figures_of_all;
pub use tube::{TO_AND_FRO, UP_AND_DOWN, tube, tube_words};
