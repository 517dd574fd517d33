//! Site geometry, measuring, judging and explaining for extraction-socket decisions.
//!
//! Data flows one way: seed -> Site -> Plan -> Measurements -> Verdicts -> Debrief. Nothing
//! downstream recomputes what is upstream. Read `units`, `geometry`, `anatomy`, `chart`, `plan`, then
//! `measure`, `rules`, `debrief`, then what is built of them.

pub mod anatomy;
pub mod cases;
pub mod casing;
pub mod chart;
pub mod debrief;
pub mod events;
pub mod figures;
pub mod geometry;
pub mod hash;
pub mod healing;
pub mod imaging;
pub mod measure;
pub mod plan;
pub mod rules;
pub mod scenario;
pub mod search;
pub mod session;
pub mod solids;
pub mod units;
