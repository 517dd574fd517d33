//! Writes what learners of the planted class hand in as one text: an invention, for the browser test of
//! the page that reads a class.
//!
//! `cargo run -p tests --example planted-class > tests/data/planted-class.json`
//!
//! Of each kind of learner one: who sends patients home without an emergency number, who also never
//! sounds bone, who only does that, and who does neither.

#[path = "../../cli/planted.rs"]
mod planted;

use planted::{Learner, saved};
use std::io::Write;

const ABOUT: &str = "planted learners, written by the example planted-class of the crate tests";

fn main() {
    let kinds = [(true, false), (true, true), (false, true), (false, false)];
    let files = kinds.iter().zip(0..).map(|((no_number, no_sounding), place)| {
        let code = format!("kind-{place}");
        saved(&Learner { code, no_number: *no_number, no_sounding: *no_sounding })
    });
    let files: Vec<String> = files.collect();
    let text = format!("{{\"about\":\"{ABOUT}\",\"files\":[\n{}]}}\n", files.join(","));
    // A closed pipe ends it.
    let _ = std::io::stdout().write_all(text.as_bytes());
}
