//! The parts of the page that reads a class.

mod aside;
mod cases;
mod learners;
mod report;
mod rules;
mod table;

pub use aside::aside;
pub use report::{ClassReport, ReportProps};
