//! `wallwise set key FILE`: what an instructor holds in the hand while a class works on a set.

use crate::commands::case::told;
use crate::{Fault, Status, Streams};
use engine::anatomy::Tooth;
use engine::debrief::CAUTION;
use engine::scenario::Set;
use learning::desk::key::{FAULTS, Key, NOT_FOR_LEARNERS, asked};

/// Prints it, case by case as each is drawn.
pub fn run(set: &Set, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    streams.print(&format!(
        "Key for the instructor: {}\n{}\n{CAUTION}\n{NOT_FOR_LEARNERS}\n",
        set.title, set.aim
    ))?;
    let local = set.local();
    let mut status = Status::Done;
    for (place, entry) in set.cases.iter().enumerate() {
        let text = match entry.case(local.clone()) {
            Ok(case) => one(&Key::of(&case), case.site.tooth, entry.ask.as_deref()),
            Err(why) => {
                status = Status::Findings;
                format!("{why}\n")
            }
        };
        streams.print(&format!("\nCase {}. {text}", place + 1))?;
    }
    Ok(status)
}

fn one(key: &Key, tooth: Tooth, ask: Option<&str>) -> String {
    let mut text = told(&key.truth, tooth);
    if key.truth.sound.is_some() {
        text.push_str(&format!("\n{FAULTS}\n"));
        for fault in &key.faults {
            text.push_str(&format!(
                "  - {}\n    {}\n",
                fault.answer,
                fault.verdict(fault.rule.statement)
            ));
        }
    }
    text.push_str(&format!("\nWhat to ask: {}\n", asked(ask)));
    text
}
