//! How examiners rated performances as a whole, and the line of marks over their ratings.

use super::super::class::{Source, sources};
use super::BESIDE;
use super::table::{Table, number};
use crate::{Fault, Status, Streams};
use engine::cases;
use engine::chart::{Address, Case};
use engine::debrief::CAUTION;
use engine::plan::Plan;
use learning::class::{Borderline, Rated};
use learning::file;
use learning::past::replay;
use learning::record::Record;
use serde::de::IgnoredAny;
use std::collections::BTreeMap;
use std::collections::btree_map::Entry;
use std::path::{Path, PathBuf};

/// A rating that somebody gave.
struct Given {
    learner: String,
    case: String,
    rating: u8,
    /// The first attempt of theirs at it: when it was begun, its number, its mark.
    mark: Option<((u64, u32), f64)>,
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
    let (mut aside, mut known) = (Vec::new(), Known::new());
    for source in sources(handed_in, &mut aside)? {
        find(&source, &mut given, &mut known, &mut aside);
    }
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
        self.mark.map(|(_, mark)| Rated { rating: self.rating, mark })
    }
}

fn ratings(table: &mut Table) -> Vec<Given> {
    let columns = ["learner", "case", "rating"].map(|name| table.column(name));
    let [Some(learner), Some(case), Some(rating)] = columns else { return Vec::new() };
    let mut given = Vec::new();
    for (line, cells) in table.rows.clone() {
        let whole =
            number(&cells[rating]).filter(|one| one.fract() == 0.0 && (0.0..=100.0).contains(one));
        match whole {
            // A whole number of at most a hundred.
            Some(whole) => given.push(Given {
                learner: cells[learner].clone(),
                case: cells[case].clone(),
                rating: whole as u8,
                mark: None,
            }),
            None => {
                let why = format!(
                    "found the rating \"{}\", expected a whole step of the scale, 0 to 100",
                    cells[rating]
                );
                table.wrong(line, &why);
            }
        }
    }
    given
}

/// Marks what of a file was rated.
fn find(source: &Source, given: &mut [Given], known: &mut Known, aside: &mut Vec<String>) {
    let text = match source.text() {
        Ok(text) => text,
        Err(why) => return aside.push(format!("{}: {why}", source.name())),
    };
    let read = file::read::<IgnoredAny>(&text);
    let code = read.learner.unwrap_or_else(|| source.code());
    for record in read.records {
        let order = (record.head.begun.unwrap_or(u64::MAX), record.head.number);
        let case = record.head.address.map(|address| address.to_string());
        let own = record.head.is_own();
        let of = given.iter_mut().find(|one| {
            own && one.learner == code
                && Some(&one.case) == case.as_ref()
                && one.mark.is_none_or(|(first, _)| order < first)
        });
        let Some(of) = of else { continue };
        match mark(record, known) {
            Ok(Some(mark)) => of.mark = Some((order, mark)),
            Ok(None) => {}
            Err(why) => aside.push(format!("{}: {}: {why}", source.name(), of.case)),
        }
    }
}

/// The cases that were rated, each drawn once, with the sound plan that its marks are weighed against.
type Known = BTreeMap<Address, (Case, Option<Plan>)>;

/// The mark of an attempt, done again; nothing of one that is not over.
fn mark(record: Record<IgnoredAny>, known: &mut Known) -> Result<Option<f64>, String> {
    let Record { head, events, .. } = record;
    let address = head.address.ok_or("its case has no address")?;
    let (case, sound) = match known.entry(address) {
        Entry::Occupied(there) => there.into_mut(),
        Entry::Vacant(free) => {
            let case = cases::at(address).map_err(|why| why.to_string())?;
            let sound =
                cases::proof(&case).and_then(|proof| Plan::from_draft(&proof.draft, &case).ok());
            free.insert((case, sound))
        }
    };
    let session = replay(&head, &events, case.clone()).map_err(|why| why.to_string())?;
    let debrief = session.is_over().then(|| session.debrief(sound.as_ref())).flatten();
    Ok(debrief.and_then(|debrief| debrief.mark.percent()))
}

fn text(line: &Borderline, given: &[Given], borderline: f64, aside: &[String]) -> String {
    let mut text =
        format!("How performances were rated as a whole, and their marks\n{CAUTION}\n\n");
    for one in given {
        if let Some((_, mark)) = one.mark {
            let Given { learner, case, rating, .. } = one;
            text.push_str(&format!("  {learner} at {case}: rated {rating}, mark {mark:.1}\n"));
        }
    }
    let explained =
        line.explained.map_or_else(|| "none".to_owned(), |share| format!("{:.0} %", 100.0 * share));
    text.push_str(&format!(
        "\n{:.1} marks to a step of the rating, {explained} of their variance explained, scatter {:.1}.\n\
         Pass mark: {:.1} of 100, at the rating {borderline} (standard error {:.1}).\n",
        line.slope, line.scatter, line.cut, line.error,
    ));
    if line.slope <= 0.0 {
        text.push_str("Marks and ratings contradict each other: this pass mark means nothing.\n");
    }
    if line.is_drawn_out {
        text.push_str(
            "Nobody was rated on one side of the borderline: the line is drawn out to it.\n",
        );
    }
    text.push_str(&format!("{BESIDE}\n"));
    for line in aside {
        text.push_str(&format!("\nSet aside: {line}\n"));
    }
    text
}
