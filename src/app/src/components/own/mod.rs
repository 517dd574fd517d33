//! Parts of the pages on what one has done oneself.

pub mod bar;
pub mod erase;
pub mod kept;
pub mod note;
pub mod sit;
