//! The tool itself, from the command line.

fn main() {}
