//! Drawing primitives in millimetres, and the figures made of them.
//!
//! A figure says *what* is drawn ([`Ink`]), never *how it looks*: page, SVG export and print each map
//! an ink to a line, a tint or a hatching of their own. Screen axes: x to the right, y down.
//! Every figure carries its scale bar and a text that says what it shows.

mod primitives;

pub use primitives::{Anchor, Figure, Handle, Ink, Item, Window};
