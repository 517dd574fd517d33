//! What every rule of a molar's septum rests on.

use super::prelude::*;
use crate::measure::{Measurements, SeptumClass};

/// What the septum can be to an implant, and what follows.
pub(super) const BY_NAMES: Evidence = says(
    Source::Opinion,
    Status::FromMemory,
    "Smith & Tarnow 2013, IJOMI",
    "The septum contains the implant wholly, in part, or not at all: place in it, place and graft, or use a wide implant on the socket's walls or stage.",
);

/// That there are three kinds of it.
pub(super) const THREE_KINDS: Evidence = says(
    Source::Opinion,
    Status::Confirmed,
    "a scheme of molar sockets with three kinds of septum",
    "Three kinds, by how much of the implant the septum holds.",
);

/// Whether the septum of a molar holds next to nothing of the narrowest usual implant: where to start
/// then, practice does not say.
pub(super) fn holds_next_to_nothing(m: &Measurements<'_>) -> bool {
    m.septum_class_for_usual() == Some(SeptumClass::C)
}
