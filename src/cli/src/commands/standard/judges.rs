//! What judges expect, beside how hard each case is and what the class did.

use super::super::class::Reading;
use super::BESIDE;
use super::table::{Table, number};
use crate::{Fault, Status, Streams};
use engine::cases;
use engine::chart::Address;
use engine::debrief::CAUTION;
use learning::class::{Angoff, Report, told};
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
        paths => Some(Report::of(&Reading::of(paths, streams)?.class)),
    };
    let mut text =
        format!("What judges expect of somebody who can just be let pass\n{CAUTION}\n\n");
    for (place, (name, mean)) in names.iter().zip(angoff.means()).enumerate() {
        let each = chances.iter().filter_map(|judge| judge.get(place));
        let each = each.map(|one| format!("{one:.2}")).collect::<Vec<_>>().join(", ");
        let class = report.as_ref().map_or_else(String::new, |report| passed(report, name));
        text.push_str(&format!("  {name}: {each}; mean {mean:.2}; {}{class}\n", hard(name)));
    }
    text.push_str(&format!(
        "\nPass mark: {:.1} of {} cases{}.\n{BESIDE}\n",
        angoff.cut(),
        angoff.items(),
        angoff.error().map_or_else(
            || "; of one judge nobody can say how far it would scatter".to_owned(),
            |error| format!(
                ", standard error {error:.2} cases, as it would scatter with other judges"
            ),
        )
    ));
    text.push_str(
        "Those who begin to judge drift to about one half, and judges agree little with what a class did \
         (BMC Medical Education 2020, confirmed): talk about the cases where the numbers lie far apart.\n",
    );
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
            match number(&cells[*place]).filter(|one| (0.0..=1.0).contains(one)) {
                Some(chance) => all.push(chance),
                None => {
                    let (case, found) = (table.heads[*place].clone(), &cells[*place]);
                    let why = format!(
                        "{case}: found \"{found}\", expected a chance from 0 to 1 (60 % is 0.6)"
                    );
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
    let case = name.parse::<Address>().ok().and_then(|address| cases::at(address).ok());
    let hard = case.and_then(|case| {
        let proof = cases::proof(&case)?;
        cases::difficulty(&case, &proof.draft)
    });
    hard.map_or_else(
        || "difficulty not known".to_owned(),
        |hard| format!("difficulty {:.2}", hard.value()),
    )
}

/// How many of the class passed it.
fn passed(report: &Report, name: &str) -> String {
    let Some(of) = report.cases.iter().find(|one| one.case.name == name) else {
        return "; nobody of the class sat it".to_owned();
    };
    let [sound, workable, compromised, grave] = of.words;
    let all = sound + workable + compromised + grave;
    format!("; {} of {} passed", sound + workable, told::counted(all as usize, "learner"))
}
