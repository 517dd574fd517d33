//! The tool itself, from the command line.

mod manners;
mod serve;
mod tool;
