//! About learners: what they did, what they can do, what is due. It knows verdicts, not anatomy; no
//! clock and no store: times, seeds and records are passed in.

pub mod csv;
pub mod date;
pub mod past;
pub mod record;
pub mod review;
