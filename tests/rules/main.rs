//! Rules against the files that they lie in, and against check values from outside.

mod check_table;
mod ledger;
mod prose;
mod registered;
mod words;
