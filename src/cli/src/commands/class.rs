//! `wallwise class PATH...`: what a class handed in, done again and read together.

mod read;
mod sources;
mod tables;
mod text;

use crate::shapes::ClassReport;
use crate::{Fault, Status, Streams};
use learning::class::{Class, Report};
use std::path::PathBuf;

pub use read::Reading;

#[derive(Debug, clap::Args)]
pub struct Args {
    /// Files of attempts that learners handed in, zip files of them, or folders of both
    #[arg(required = true, value_name = "PATH")]
    paths: Vec<PathBuf>,
    /// Name learners by their codes instead of numbers
    #[arg(long)]
    codes: bool,
    /// Write the tables as CSV files into this folder
    #[arg(long, value_name = "FOLDER")]
    csv: Option<PathBuf>,
    /// Print JSON for programs
    #[arg(long)]
    json: bool,
}

/// Reads everything and prints the report; what had to be set aside is a finding.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let read = Reading::into(Class::counted_only(), &args.paths, streams)?;
    if read.class.attempts() == 0 {
        let why = if read.aside.is_empty() {
            String::new()
        } else {
            format!("\n{}", read.aside.join("\n"))
        };
        return Err(Fault::new(format!("found no attempt in what was given{why}"))
            .hint("give files that the room saved, a zip file of them, or their folder"));
    }
    let mut report = Report::of(&read.class);
    if !args.codes {
        report.hide_codes();
    }
    if let Some(folder) = &args.csv {
        tables::write(folder, &report)?;
        streams.say(&format!("wrote the tables into {}", folder.display()));
    }
    if args.json {
        streams.print_json(&ClassReport::of(&report, read.aside.clone()))?;
    } else {
        streams.print(&text::of(&report, &read.aside))?;
    }
    Ok(if read.aside.is_empty() { Status::Done } else { Status::Findings })
}
