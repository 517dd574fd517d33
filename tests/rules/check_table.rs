//! The check table: values from outside the project, each with the verdict that its source expects.

use engine::cases::population::cells;
use engine::rules::{Reading, Zone, find};
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

/// Row numbers of the ledger's check table; it has gaps.
const ROWS: &[u32] = &[
    1, 2, 3, 4, 5, 7, 8, 10, 11, 12, 14, 15, 16, 18, 19, 21, 22, 24, 26, 27, 28, 30, 31, 33, 35,
    36, 38, 39, 41, 42, 44, 45, 47, 48, 49, 51, 52, 53, 55, 57, 58, 60, 62, 63, 65, 66, 67, 69, 71,
    72, 73, 75, 76, 78, 79, 81, 83, 85,
];
/// Rows of the list of common practice, `cp-1` to this one.
const HABITS: u32 = 22;
const REACHED: [&str; 3] = ["check_table_a.csv", "check_table_b.csv", "check_table_c.csv"];
const MARKS: [&str; 4] = ["confirmed", "from memory", "common practice, no source", "ours"];

/// One row of a table.
struct Row {
    file: &'static str,
    cells: Vec<String>,
}

impl Row {
    fn cell(&self, name: usize) -> &str {
        &self.cells[name]
    }

    fn place(&self) -> String {
        format!("{} row {} ({})", self.file, self.cell(0), self.cell(1))
    }
}

/// Rows below the header; lines that begin with # say where the values come from.
fn rows(file: &'static str, columns: &[&str]) -> Vec<Row> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data").join(file);
    let text = fs::read_to_string(&path).unwrap_or_else(|fault| panic!("{file}: {fault}"));
    assert!(text.starts_with('#'), "{file}: no header says where the values come from");
    let mut lines = text.lines().filter(|line| !line.starts_with('#') && !line.is_empty());
    assert_eq!(lines.next().map(cells), Some(columns.iter().map(|c| (*c).to_owned()).collect()));
    let rows: Vec<Row> = lines.map(|line| Row { file, cells: cells(line) }).collect();
    for row in &rows {
        assert_eq!(row.cells.len(), columns.len(), "{}", row.place());
        assert!(row.cells.iter().all(|cell| !cell.is_empty()), "{}: an empty cell", row.place());
    }
    rows
}

fn reached() -> Vec<Row> {
    let columns = ["row", "input", "rule", "reading", "expected", "source", "mark"];
    REACHED.into_iter().flat_map(|file| rows(file, &columns)).collect()
}

/// The reading of a row: a number where the rule has bands, otherwise a key.
fn zone(row: &Row) -> Result<Zone, String> {
    let rule = find(row.cell(2)).ok_or_else(|| format!("no rule {}", row.cell(2)))?;
    let number = row.cell(3).parse().ok().map(Reading::Number);
    if let Some(zone) = number.and_then(|number| rule.zone_of(number)) {
        return Ok(zone);
    }
    let engine::rules::Scale::Situations(situations) = &rule.scale else {
        return Err(format!("{} wants a number, found {}", rule.id, row.cell(3)));
    };
    let known = situations.iter().find(|situation| situation.key == row.cell(3));
    let known = known.ok_or_else(|| format!("{} has no situation {}", rule.id, row.cell(3)))?;
    rule.zone_of(Reading::Situation(known.key)).ok_or_else(|| "no zone".to_owned())
}

#[test]
fn every_row_has_the_verdict_that_its_source_expects() {
    let mut faults = Vec::new();
    for row in reached() {
        match zone(&row) {
            Ok(zone) if row.cell(4).split('|').any(|word| word == zone.word()) => {}
            Ok(zone) => faults.push(format!(
                "{}: {} says {}, expected {}",
                row.place(),
                row.cell(2),
                zone.word(),
                row.cell(4)
            )),
            Err(fault) => faults.push(format!("{}: {fault}", row.place())),
        }
    }
    assert!(faults.is_empty(), "\n{}", faults.join("\n"));
}

#[test]
fn expected_words_and_marks_are_known_ones() {
    let zones = [
        Zone::Ideal,
        Zone::Acceptable,
        Zone::Debated,
        Zone::Suboptimal,
        Zone::Compromising,
        Zone::Unsafe,
    ];
    for row in reached() {
        let known = |word: &str| zones.iter().any(|zone| zone.word() == word);
        assert!(row.cell(4).split('|').all(known), "{}: {}", row.place(), row.cell(4));
        assert!(MARKS.contains(&row.cell(6)), "{}: {}", row.place(), row.cell(6));
    }
}

#[test]
fn every_row_of_the_ledger_is_reached_or_left_out_for_a_reason_and_never_both() {
    let all: BTreeSet<String> = ROWS
        .iter()
        .map(ToString::to_string)
        .chain((1..=HABITS).map(|habit| format!("cp-{habit}")))
        .collect();
    let reached: BTreeSet<String> = reached().iter().map(|row| row.cell(0).to_owned()).collect();
    let left: Vec<Row> = rows("check_table_not_reached.csv", &["row", "input", "reason"]);
    let out: BTreeSet<String> = left.iter().map(|row| row.cell(0).to_owned()).collect();
    assert_eq!(out.len(), left.len(), "a row is left out twice");
    let both: Vec<_> = reached.intersection(&out).collect();
    assert!(both.is_empty(), "reached and left out: {both:?}");
    let covered: BTreeSet<String> = reached.union(&out).cloned().collect();
    let missing: Vec<_> = all.difference(&covered).collect();
    let unknown: Vec<_> = covered.difference(&all).collect();
    assert!(missing.is_empty() && unknown.is_empty(), "missing {missing:?}, unknown {unknown:?}");
}

#[test]
fn a_cell_in_quotes_keeps_its_commas() {
    assert_eq!(cells("1,\"a, b\",c"), ["1", "a, b", "c"]);
}
