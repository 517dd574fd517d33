//! `wallwise pair ADDRESS`: two cases that differ in one thing, for the instructor.

use super::set;
use crate::{Fault, Status, Streams, input};
use engine::chart::{Address, Case};
use engine::debrief::CAUTION;
use engine::plan::Plan;
use engine::rules::Local;
use engine::search::{self, Pair};
use std::path::PathBuf;

#[derive(Debug, clap::Args)]
pub struct Args {
    /// The address of a case, or of one that differs from it in one thing, as 1.1.2024.0.facial-loss.45
    address: Address,
    /// Judge as this set has it: by its level and its protocol
    #[arg(long, value_name = "FILE")]
    set: Option<PathBuf>,
}

/// Prints the pair of an address; of a case, one that is found for it.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let local = match &args.set {
        Some(file) => set::read(file)?.local(),
        None => Local::NONE,
    };
    let pair = if args.address.changed.is_some() {
        search::pair(args.address, &local).map_err(|why| Fault::new(why.to_string()))?
    } else {
        let case = input::case(&args.address.to_string())?.under(local);
        found(&case).ok_or_else(|| {
            Fault::new(format!(
                "found no second case to {} that asks for another choice",
                args.address
            ))
            .hint("name what differs yourself, as in 1.1.2024.0.facial-loss.45")
        })?
    };
    streams.print(&text(&pair))?;
    Ok(Status::Done)
}

/// The nearest edge of the case's own sound plan.
fn found(case: &Case) -> Option<Pair> {
    let sound = search::sound_of(case)?;
    let plan = Plan::from_draft(&sound, case).ok()?;
    search::telling(case, &sound, &search::breaks(case, &plan), &[])
}

fn text(pair: &Pair) -> String {
    let tooth = pair.base.site.tooth;
    let address =
        |case: &Case| case.address.map_or_else(String::new, |address| address.to_string());
    let name = tooth.named(pair.is.aspect.scaled().words);
    let mut text = format!(
        "Two cases, one difference\n{CAUTION}\n\nFirst   {}\nSecond  {}\n\n{name}: {} in the first, {} in the second.\n",
        address(&pair.base),
        address(&pair.other),
        pair.was.words(),
        pair.is.words(),
    );
    text.push_str("\nA sound plan of the first, in the second\n");
    for verdict in &pair.wrong {
        let statement = tooth.named(verdict.rule.statement);
        text.push_str(&format!("  {}: {statement}\n", verdict.zone.word()));
    }
    text.push_str("\nWhat has to change\n");
    for change in &pair.answer.changes {
        text.push_str(&format!("  {}\n", change.words(tooth)));
    }
    text
}
