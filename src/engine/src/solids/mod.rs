//! The case as solids: closed meshes of its parts, and a recipe that names how each measurement
//! follows from them, so that an outside program can do the booleans and distances itself.

mod mesh;
mod polygon;
mod ridge;

pub use mesh::{Leak, Mesh, NOTICE};
pub use ridge::{CrestAt, WINDOW, ridge};
