//! The case as solids: closed meshes of its parts, and a recipe that names how each measurement
//! follows from them, so that an outside program can do the booleans and distances itself.

mod bodies;
mod contour;
mod covered;
mod cuts;
mod given;
mod levels;
mod measured;
mod mesh;
mod models;
mod parts;
mod polygon;
mod recipe;
mod ridge;
mod septum;
mod walls;

pub use bodies::{CHORD_ERROR, WIDEST, of_capsule, of_cone, of_stack};
pub use contour::{FALL, base as contour_base, contour};
pub use cuts::cut;
pub use given::{Lines, Quantity};
pub use mesh::{Leak, Mesh, NOTICE};
pub use parts::{Part, apical_of, of_plan, of_site};
pub use recipe::{Body, Entry, Export, MapOutline, Primitive, Recipe, Side, export};
pub use ridge::{CrestAt, WINDOW, ridge};
