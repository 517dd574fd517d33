//! Handing results in, by open courseware standards: what is said of one sitting at a set, and how the
//! standards want it said. Values only: whoever talks to a host, or saves a file, passes them on.
//!
//! There are three ways, and one thing to hand in, an [`outcome::Outcome`]: nowhere; as a file of
//! statements ([`xapi::file`]); to the host of a package ([`scorm::writes`]). Whatever chooses between
//! them needs to know no more.

mod check;
pub mod compact;
pub mod manifest;
pub mod name;
pub mod outcome;
pub mod sat;
pub mod scorm;
mod time;
#[cfg(test)]
mod trial;
pub mod unzip;
pub mod xapi;
pub mod zip;
