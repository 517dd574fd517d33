//! The site: what is really there. Nothing here knows what a learner has seen or decided.
//!
//! The frame is that of [`geometry`](crate::geometry). All lengths are millimetres along it unless
//! a field says *on the map*: the map unrolls the drape (facial profile up to the reference crest,
//! straight across to the oral crest, down the oral profile), s = x, t = arc length, 0 at the facial
//! reference crest, positive apically on the facial side.

mod site;
mod tooth;

pub use site::{
    Crest, Defect, DefectKind, Density, DensityClass, Floor, FloorKind, Implanted, Lesion, LipLine,
    Neighbour, Neighbours, PlannedCrown, Profile, Ridge, RootBody, Side, Site, Socket, SoftTissue,
    Tube, Vital, Wall,
};
pub use tooth::{Jaw, Kind, Tooth, UnknownTooth};
