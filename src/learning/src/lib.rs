//! About learners: what they did, what they can do, what is due. It knows verdicts, not anatomy; no
//! clock and no store: times, seeds and records are passed in.

pub mod calibration;
pub mod called;
pub mod class;
pub mod csv;
pub mod date;
pub mod desk;
pub mod file;
pub mod handing;
pub mod memory;
pub mod next;
pub mod parameters;
pub mod past;
pub mod record;
pub mod review;
pub mod search;
pub mod standing;
pub mod tables;
pub mod take_away;
pub mod today;
pub mod tracing;

#[cfg(test)]
mod tests;
#[cfg(test)]
mod trial;
