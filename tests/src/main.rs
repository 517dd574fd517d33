//! Tests.
fn main() {}
