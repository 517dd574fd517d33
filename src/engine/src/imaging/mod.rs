//! Films and sections: pixels computed out of the site. Nothing is painted in: that a facial defect
//! does not show on a film, and that a thin plate fades in a section, comes out of the sums.

mod aim;
mod bone;
mod bounds;
mod crowns;
mod film;
mod hewn;
mod laid;
mod legible;
mod marrow;
pub mod materials;
mod noise;
mod path;
#[cfg(any(test, feature = "trial"))]
pub mod phantom;
mod reading;
mod scene;
mod section;
mod shape;
mod sheet;
mod strip;
mod teeth;
mod turned;

pub use aim::{Aim, Held, PITCH, Size, View};
pub use film::{Film, film, left, marched};
pub use hewn::{Facet, Flare, Hewn};
pub use laid::{LAMINA, LIGAMENT, Time, scene, scene_at};
pub use legible::{Legible, legible};
pub use marrow::Marrow;
pub use noise::{Noise, key};
pub use path::{Materials, Path, Piece};
pub use reading::{Caliper, half_maximum, window};
pub use scene::{Layer, Scene};
pub use section::{CLIP, Section, Setting, Slice, section};
pub use shape::{Shape, Window};
pub use sheet::Sheet;
pub use strip::Strip;
pub use turned::Turned;

#[cfg(test)]
mod care_tests;
#[cfg(test)]
mod parted_tests;
#[cfg(test)]
mod section_tests;
#[cfg(test)]
mod tests;
