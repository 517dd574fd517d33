//! Handing results in, by open courseware standards: what is said of one sitting at a set, and how the
//! standards want it said. Values only: whoever talks to a host, or saves a file, passes them on.

mod check;
pub mod compact;
pub mod manifest;
pub mod name;
pub mod outcome;
pub mod scorm;
mod time;
#[cfg(test)]
mod trial;
pub mod xapi;
pub mod zip;
