//! The site: what is really there. Nothing here knows what a learner has seen or decided.
//!
//! The frame is that of [`geometry`](crate::geometry). All lengths are millimetres along it unless
//! a field says *on the map*: see [`map`].

mod bodies;
mod body;
mod cut;
pub mod map;
mod named;
mod site;
mod socket;
pub mod solid;
mod tooth;
mod whole;

pub use bodies::Bodies;
pub use body::{APICAL_SHARE, Beside, ROOT_KNOTS, THREAD_DEPTH, implant_cone};
pub use map::Map;
pub use site::{
    Crest, Defect, DefectKind, Density, DensityClass, Floor, FloorKind, Implanted, Lesion, LipLine,
    Neighbour, Neighbours, PlannedCrown, Profile, Ridge, Side, Site, SoftTissue, Tube, Vital, Wall,
};
pub use socket::{Branch, Coronal, Parted, RootBody, RootName, Roots, Socket, Trunk};
pub use solid::{Bone, Solid};
pub use tooth::{Jaw, Kind, Tooth, UnknownTooth};
