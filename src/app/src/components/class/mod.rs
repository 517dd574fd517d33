//! The parts of the page that reads a class.

mod aside;
mod cases;
mod discussion;
mod learners;
mod overlay;
mod report;
mod rules;
mod set_aside;
mod table;
mod verdicts;

pub use aside::aside;
pub use report::{ClassReport, ReportProps};
