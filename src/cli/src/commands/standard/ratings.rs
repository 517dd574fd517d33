//! How examiners rated performances as a whole, and the line of marks over their ratings.

use super::super::class::Reading;
use super::table::Table;
use crate::{Fault, Status, Streams};
use engine::debrief::CAUTION;
use learning::class::{Borderline, Class, Rated, told, typed};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

/// A rating that somebody gave.
struct Given {
    learner: String,
    case: String,
    rating: u8,
    /// What their plan at it is marked.
    mark: Option<f64>,
}

/// Prints the line and the pass mark.
pub fn run(
    file: &Path,
    handed_in: &[PathBuf],
    borderline: f64,
    streams: &mut Streams<'_>,
) -> Result<Status, Fault> {
    let mut table = Table::read(file)?;
    let mut given = ratings(&mut table);
    table.checked(file)?;
    let Reading { class, mut aside } = Reading::into(Class::default(), handed_in, streams)?;
    find(&class, &mut given);
    let rated: Vec<Rated> = given.iter().filter_map(Given::rated).collect();
    let line = Borderline::of(&rated, borderline)
        .map_err(|why| Fault::new(format!("{}: {why}", file.display())))?;
    let missing = given.iter().filter(|one| one.mark.is_none());
    aside.extend(missing.map(|one| {
        format!(
            "found no attempt of {} at {} that is over: not part of the line",
            one.learner, one.case
        )
    }));
    streams.print(&text(&line, &given, borderline, &aside))?;
    Ok(if aside.is_empty() { Status::Done } else { Status::Findings })
}

impl Given {
    fn rated(&self) -> Option<Rated> {
        self.mark.map(|mark| Rated { rating: self.rating, mark })
    }
}

fn ratings(table: &mut Table) -> Vec<Given> {
    let columns = ["learner", "case", "rating"].map(|name| table.column(name));
    let [Some(learner), Some(case), Some(rating)] = columns else { return Vec::new() };
    let mut given = Vec::new();
    for (line, cells) in table.rows.clone() {
        match typed::rating(&cells[rating]) {
            Ok(rating) => given.push(Given {
                learner: cells[learner].clone(),
                case: cells[case].clone(),
                rating,
                mark: None,
            }),
            Err(why) => table.wrong(line, &why),
        }
    }
    given
}

/// Marks what was rated of what the class handed in.
fn find(class: &Class, given: &mut [Given]) {
    let mut marks: BTreeMap<String, Vec<(String, f64)>> = BTreeMap::new();
    for one in given {
        let of_case = marks.entry(one.case.clone()).or_insert_with(|| class.marks_at(&one.case));
        let mark = of_case.iter().find(|(learner, _)| *learner == one.learner);
        one.mark = mark.map(|(_, mark)| *mark);
    }
}

fn text(line: &Borderline, given: &[Given], borderline: f64, aside: &[String]) -> String {
    let mut text =
        format!("How performances were rated as a whole, and their marks\n{CAUTION}\n\n");
    for one in given {
        if let Some(mark) = one.mark {
            let Given { learner, case, rating, .. } = one;
            text.push_str(&format!("  {learner} at {case}: rated {rating}, mark {mark:.1}\n"));
        }
    }
    text.push_str(&format!("\n{}\n", told::rated(line, borderline).join("\n")));
    for line in aside {
        text.push_str(&format!("\nSet aside: {line}\n"));
    }
    text
}
