//! The site: what is really there. Nothing here knows what a learner has seen or decided.
//!
//! The frame is that of [`geometry`](crate::geometry). All lengths are millimetres along it unless
//! a field says *on the map*: see [`map`].

mod body;
pub mod map;
mod named;
mod site;
pub mod solid;
mod tooth;

pub use body::{APICAL_SHARE, Beside, ROOT_KNOTS, THREAD_DEPTH, implant_cone};
pub use map::Map;
pub use site::{
    Crest, Defect, DefectKind, Density, DensityClass, Floor, FloorKind, Implanted, Lesion, LipLine,
    Neighbour, Neighbours, PlannedCrown, Profile, Ridge, RootBody, Side, Site, Socket, SoftTissue,
    Tube, Vital, Wall,
};
pub use solid::{Bone, Solid};
pub use tooth::{Jaw, Kind, Tooth, UnknownTooth};
