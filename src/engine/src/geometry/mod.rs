//! Shapes and the questions asked of them: rays, intervals, ellipses, frusta, polygons, quadrature.
//!
//! **Frame.** The origin lies where the tooth's long axis meets the reference crest. `x` points
//! distally, `y` facially, `z` apically; millimetres and degrees. Every site is right-handed here;
//! screen and mesh export mirror `x` in quadrants 2 and 4. Tilt is positive when the apex leans
//! facially, tip when it leans distally.
//!
//! Angles enter as [`Deg`](crate::units::Deg); transcendental functions come from `libm`.

mod cone;
pub mod convex;
pub mod ellipse;
mod frame;
mod interval;
pub mod order;
mod outline;
mod point;
pub mod polygon;
pub mod polyline;
pub(crate) mod quadratic;
pub mod quadrature;
mod stack;
mod stack_parts;
mod tube;
mod witness;

pub use cone::{Cone, Drilled};
pub use frame::Frame;
pub use interval::{Interval, Intervals};
pub use outline::{Outline, OutlineFault};
pub use point::{P2, P3, Ray, V3, direction};
pub use stack::{Knot, Stack};
pub use stack_parts::{Cap, Frusta};
pub use tube::{Capsule, point_to_segment};
pub(crate) use witness::{ToPoint, Witness};
