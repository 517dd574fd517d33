//! A table that somebody typed: every fault with its line, all at once.

use crate::{Fault, input};
use std::path::Path;

/// Heads and rows, each row with its line.
#[derive(Debug)]
pub struct Table {
    /// The heads, as they were typed.
    pub heads: Vec<String>,
    /// Rows as long as the heads.
    pub rows: Vec<(u64, Vec<String>)>,
    /// What is wrong so far, line by line.
    faults: Vec<String>,
}

impl Table {
    /// Reads a file. Columns are parted by commas, or by semicolons as in programs that write numbers
    /// with a comma.
    ///
    /// # Errors
    /// When it cannot be read or has no heads.
    pub fn read(file: &Path) -> Result<Self, Fault> {
        let text = input::read(file)?;
        let first = text.lines().next().unwrap_or_default();
        let parted = if first.contains(';') { b';' } else { b',' };
        let mut reader = csv::ReaderBuilder::new()
            .delimiter(parted)
            .flexible(true)
            .trim(csv::Trim::All)
            .from_reader(text.trim_start_matches('\u{feff}').as_bytes());
        let heads: Vec<String> = match reader.headers() {
            Ok(heads) => heads.iter().map(str::to_owned).collect(),
            Err(why) => return Err(Fault::new(format!("{}: {why}", file.display()))),
        };
        let mut table = Self { heads, rows: Vec::new(), faults: Vec::new() };
        for record in reader.records() {
            match record {
                Ok(record) => {
                    let line = record.position().map_or(0, csv::Position::line);
                    let cells: Vec<String> = record.iter().map(str::to_owned).collect();
                    if cells.len() == table.heads.len() {
                        table.rows.push((line, cells));
                    } else {
                        let (found, expected) = (cells.len(), table.heads.len());
                        table.wrong(line, &format!("found {found} cells, expected {expected}"));
                    }
                }
                Err(why) => table.wrong(why.position().map_or(0, csv::Position::line), "no table"),
            }
        }
        Ok(table)
    }

    /// The place of the column of this name; a fault where there is none.
    pub fn column(&mut self, name: &str) -> Option<usize> {
        let place = self.heads.iter().position(|head| head.eq_ignore_ascii_case(name));
        if place.is_none() {
            let found = self.heads.join(", ");
            self.wrong(1, &format!("found the columns {found}, expected one called {name}"));
        }
        place
    }

    /// Notes what is wrong in a line.
    pub fn wrong(&mut self, line: u64, what: &str) {
        self.faults.push(format!("line {line}: {what}"));
    }

    /// All that is wrong, if anything is.
    ///
    /// # Errors
    /// Every fault, with its line.
    pub fn checked(self, file: &Path) -> Result<(), Fault> {
        if self.faults.is_empty() {
            return Ok(());
        }
        let (count, all) = (self.faults.len(), self.faults.join("\n  "));
        let what = if count == 1 { "one fault".to_owned() } else { format!("{count} faults") };
        Err(Fault::new(format!("{what} in {}\n  {all}", file.display())))
    }
}
