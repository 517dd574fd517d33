//! What judges expect, beside how hard each case is and what the class did.

use super::super::class::Reading;
use super::table::Table;
use crate::{Fault, Status, Streams};
use engine::chart::Address;
use engine::debrief::CAUTION;
use learning::class::{Angoff, Class, Report, told, typed};
use learning::desk::Tested;
use std::path::{Path, PathBuf};

/// Prints each case as it was judged, and the pass mark.
pub fn run(file: &Path, handed_in: &[PathBuf], streams: &mut Streams<'_>) -> Result<Status, Fault> {
    let mut table = Table::read(file)?;
    let judge = table.column("judge");
    let (names, chances) = judged(&mut table, judge);
    table.checked(file)?;
    let angoff = Angoff::of(chances.clone())
        .map_err(|why| Fault::new(format!("{}: {why}", file.display())))?;
    let report = match handed_in {
        [] => None,
        paths => Some(Report::of(&Reading::into(Class::counted_only(), paths, streams)?.class)),
    };
    let mut text =
        format!("What judges expect of somebody who can just be let pass\n{CAUTION}\n\n");
    for (place, (name, mean)) in names.iter().zip(angoff.means()).enumerate() {
        let each = chances.iter().filter_map(|judge| judge.get(place));
        let each = each.map(|one| format!("{one:.2}")).collect::<Vec<_>>().join(", ");
        let class = report.as_ref().map_or_else(String::new, |report| passed(report, name));
        text.push_str(&format!("  {name}: {each}; mean {mean:.2}; {}{class}\n", hard(name)));
    }
    text.push_str(&format!("\n{}\n", told::judged(&angoff).join("\n")));
    streams.print(&text)?;
    Ok(Status::Done)
}

/// The cases, and each judge's chances.
fn judged(table: &mut Table, judge: Option<usize>) -> (Vec<String>, Vec<Vec<f64>>) {
    let of_case = |place: &usize| Some(*place) != judge;
    let places: Vec<usize> = (0..table.heads.len()).filter(of_case).collect();
    let mut chances = Vec::new();
    for (line, cells) in table.rows.clone() {
        let mut all = Vec::new();
        for place in &places {
            match typed::chance(&cells[*place]) {
                Ok(chance) => all.push(chance),
                Err(why) => {
                    let why = format!("{}: {why}", table.heads[*place]);
                    table.wrong(line, &why);
                }
            }
        }
        chances.push(all);
    }
    (places.iter().map(|place| table.heads[*place].clone()).collect(), chances)
}

/// How hard a case is, as it is computed.
fn hard(name: &str) -> String {
    let case = name.parse().ok().and_then(|address: Address| Tested::at(address).ok());
    case.map_or_else(
        || "difficulty not known".to_owned(),
        |case| format!("difficulty {}", case.hard_words()),
    )
}

/// How many of the class passed it.
fn passed(report: &Report, name: &str) -> String {
    let Some(of) = report.cases.iter().find(|one| one.case.name == name) else {
        return "; nobody of the class sat it".to_owned();
    };
    let passed = of.passed();
    format!("; {} of {} passed", passed.right, told::counted(passed.all() as usize, "learner"))
}
