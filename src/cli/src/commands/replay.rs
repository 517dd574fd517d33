//! `wallwise replay FILE`: attempts that a learner saved, done again on their cases.

use crate::shapes::{Replayed, ReplayedAttempt};
use crate::{Fault, Status, Streams, input};
use engine::cases;
use engine::debrief::CAUTION;
use learning::file;
use learning::past::{Past, replay};
use learning::record::Record;
use serde::de::IgnoredAny;
use std::path::PathBuf;

#[derive(Debug, clap::Args)]
pub struct Args {
    /// A file of attempts that the room saved
    file: PathBuf,
    /// Print JSON
    #[arg(long)]
    json: bool,
}

/// Does every attempt of a file again and prints what comes of it. A mark cannot be written into such a
/// file: verdicts follow from choices.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let text = input::read(&args.file)?;
    let read = file::read::<IgnoredAny>(&text);
    let mut all = Replayed::new(read.faults.iter().map(ToString::to_string).collect());
    for record in read.records {
        let id = record.head.id.clone();
        match again(record) {
            Ok(attempt) => all.attempts.push(attempt),
            Err(why) => all.set_aside.push(format!("{id}: {why}")),
        }
    }
    if all.attempts.is_empty() {
        let why = all.set_aside.join("\n");
        return Err(Fault::new(format!("found no attempt in {}\n{why}", args.file.display()))
            .hint("give a file that the room saved"));
    }
    let status = if all.set_aside.is_empty() { Status::Done } else { Status::Findings };
    if args.json {
        streams.print_json(&all)?;
    } else {
        streams.print(&text_of(&all))?;
    }
    Ok(status)
}

/// The attempt on its case, drawn from its address.
fn again(record: Record<IgnoredAny>) -> Result<ReplayedAttempt, String> {
    let Record { head, events, note, .. } = record;
    let address = head.address.ok_or("its case has no address")?;
    let case = cases::at(address).map_err(|why| why.to_string())?;
    let session = replay(&head, &events, case).map_err(|why| why.to_string())?;
    Ok(ReplayedAttempt::of(&Past::of(head, &events, &session), &session, note))
}

fn text_of(all: &Replayed) -> String {
    let mut text = format!("{} attempts\n{CAUTION}\n", all.attempts.len());
    for attempt in &all.attempts {
        text.push_str(&format!(
            "\n{}  tooth {}, {}{}, attempt {}{}\n  {}{}\n",
            attempt.case,
            attempt.tooth,
            attempt.mode,
            attempt.set.as_ref().map_or_else(String::new, |set| format!(" from {set}")),
            attempt.number,
            if attempt.help.is_empty() {
                String::new()
            } else {
                format!(", {}", attempt.help.join(", "))
            },
            if attempt.finished { "" } else { "not finished, so far " },
            attempt.word,
        ));
        for fault in &attempt.faults {
            text.push_str(&format!("  {}: {}\n", fault.word, fault.statement));
        }
        if attempt.as_it_was == Some(false) {
            text.push_str(&format!(
                "  Judged otherwise when it was sat, under rule set {}.\n",
                attempt.rule_set
            ));
        }
        if !attempt.note.is_empty() {
            text.push_str(&format!("  Note: {}\n", attempt.note));
        }
    }
    for aside in &all.set_aside {
        text.push_str(&format!("\nSet aside: {aside}\n"));
    }
    text
}
