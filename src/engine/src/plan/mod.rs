//! What a learner decides.
//!
//! A [`Draft`] holds what has been chosen so far, decision by decision, *undecided* being a state.
//! Carrying out a step turns the draft's part into an act ([`Plan`]), whose types cannot hold what
//! cannot be done. Rules read acts only.

pub mod choices;

mod acts;
mod catalogue;
mod draft;
mod flow;
mod later;
mod placement;
mod take;

pub use acts::{
    Chart, Closure, Component, Examined, Extraction, Flap, FlapRaised, Graft, GraftAndMembrane,
    Implant, Intention, Membrane, Plan, Releases, Rescue, Returns, Seating, Today, drilled,
};
pub use catalogue::{Decision, Entry, Kind, NumberKind, Step};
pub use draft::{Draft, Refusal, Value};
pub use flow::{course, is_asked, steps, weighs_findings};
pub use later::{LatePlacement, Later, ReEntry, Recall, Restoration, Uncovering, prepared_for};
pub use placement::{PLACED_BY, Placement};
