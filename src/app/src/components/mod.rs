//! The parts that pages are made of: pure functions of their properties.

pub mod board;
pub mod breaks;
pub mod causes;
pub mod caution;
pub mod choice;
pub mod corners;
pub mod debates;
pub mod dispute;
pub mod edges;
pub mod figure;
pub mod handle;
pub mod judged;
pub mod known;
pub mod last;
pub mod nearest;
pub mod number;
pub mod outline;
pub mod pair;
pub mod plates;
pub mod readings;
pub mod room;
pub mod sheet;
pub mod steps;
pub mod verdict;
pub mod whole;
pub mod words;
