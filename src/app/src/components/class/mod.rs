//! The parts of the page that reads a class.

mod aside;
mod cases;
mod discussion;
mod judged;
mod judges;
mod learners;
mod overlay;
mod ratings;
mod report;
mod rules;
mod set_aside;
mod table;
mod typed;
mod verdicts;

pub use aside::aside;
pub use report::{ClassReport, ReportProps};
