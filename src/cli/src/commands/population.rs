//! `wallwise population`: published figures against what the population draws make of them.

use crate::shapes::{OneFigure, Population};
use crate::{Fault, Status, Streams};
use engine::cases::population;
use engine::debrief::CAUTION;

/// The table that the project's own tests hold the draws to.
const TABLE: &str = include_str!("../../../../tests/data/population.csv");

#[derive(Debug, clap::Args)]
pub struct Args {
    /// How many seeds are drawn
    #[arg(long, value_name = "COUNT", default_value_t = 20_000, value_parser = clap::value_parser!(u32).range(100..=1_000_000))]
    seeds: u32,
    /// The first of them
    #[arg(long, value_name = "SEED", default_value_t = 1_000_000, value_parser = clap::value_parser!(u64).range(..=u64::MAX / 2))]
    from: u64,
    /// Print JSON for programs
    #[arg(long)]
    json: bool,
}

/// Prints them; a figure that is held and does not agree is a finding.
pub fn run(args: &Args, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let rows = population::rows(TABLE).map_err(|bad| Fault::new(bad.to_string()))?;
    let seeds = args.seeds;
    let outcomes = population::table(&rows, args.from, seeds, |drawn| {
        // Every quarter: fewer seeds are done at once.
        if drawn > 0 && drawn % (seeds / 4).next_multiple_of(1000) == 0 {
            streams.say(&format!("{drawn} of {seeds} seeds drawn"));
        }
    });
    let table = Population::of(&rows, &outcomes, args.from, seeds);
    if args.json {
        streams.print_json(&table)?;
    } else {
        streams.print(&text(&table))?;
    }
    Ok(if table.agrees() { Status::Done } else { Status::Findings })
}

/// Kinds in the order in which they are told, each under its words.
const KINDS: [(&str, &str); 5] = [
    ("held", "Held: the draws must agree"),
    ("beside", "Beside: another series of the same thing is drawn"),
    ("no-interval", "No interval: the source does not say how far chance reaches"),
    ("placeholder", "Not confirmed: placeholders"),
    ("later", "Not drawn yet"),
];

fn text(table: &Population) -> String {
    let mut text = format!(
        "Population draws against published figures\n{CAUTION}\n{} seeds from {} on, before the proof \
         that a case can be solved; intervals at {} %.\n",
        table.seeds,
        table.first_seed,
        table.level * 100.0
    );
    for (kind, words) in KINDS {
        text.push_str(&format!("\n{words}\n"));
        table.rows.iter().filter(|row| row.kind == kind).for_each(|row| text.push_str(&line(row)));
    }
    text
}

fn line(row: &OneFigure) -> String {
    let ours = match (row.ours, row.agrees_from, row.agrees_to) {
        (None, ..) => "nothing drawn".to_owned(),
        (Some(ours), Some(from), Some(to)) => {
            format!("{} drawn, {} to {} would agree", figure(ours), figure(from), figure(to))
        }
        (Some(ours), Some(from), None) => {
            format!("{} drawn, more than {} would agree", figure(ours), figure(from))
        }
        (Some(ours), ..) => format!("{} drawn", figure(ours)),
    };
    let said = if row.agrees == Some(false) { "  (differs)" } else { "" };
    let note = if row.note.is_empty() { String::new() } else { format!("\n    {}", row.note) };
    format!(
        "  {}, at {}: {ours}{said}\n    published {}; {}; {}{note}\n",
        row.id,
        row.sites,
        published(row),
        row.source,
        row.mark
    )
}

fn published(row: &OneFigure) -> String {
    let n = row.n.map_or_else(String::new, |n| format!(", n {n}"));
    let value = row.published.map(figure).unwrap_or_default();
    let spread = row.spread.map(figure);
    match (row.statistic, spread) {
        ("above", _) => format!("the first above the second{n}"),
        ("between", Some(to)) => format!("{value} to {to} in several studies"),
        ("mean", Some(sd)) => format!("{value} +- {sd}{n}"),
        _ => format!("{value}{n}"),
    }
}

/// Three figures after the point for what is small, one for Hounsfield units.
fn figure(value: f64) -> String {
    if value.abs() < 100.0 { format!("{value:.3}") } else { format!("{value:.0}") }
}
