//! Rules against the files that they lie in, and against check values from outside.

mod check_table;
mod prose;
mod registered;
