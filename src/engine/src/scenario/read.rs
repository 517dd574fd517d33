//! Reading tables strictly: every fault is noted, none stops the reading.

use super::node::{Fault, Faults, Kind, Node, Pair, Place, nearest};
use crate::geometry::{Outline, P2, P3};
use crate::units::{Deg, Found, Mm};
use core::cell::RefCell;
use core::ops::RangeInclusive;

/// The longest text that a field holds, in characters.
pub(super) const LONGEST_TEXT: usize = 400;
/// The most points of a profile or crest.
const MOST_POINTS: usize = 64;

/// Where faults are noted.
#[derive(Debug, Default)]
pub(super) struct Notes(RefCell<Vec<Fault>>);

impl Notes {
    pub(super) fn add(&self, place: Place, field: &str, says: impl Into<String>) {
        self.0.borrow_mut().push(Fault { place, field: field.to_owned(), says: says.into() });
    }

    /// What was read when nothing is wrong, all faults otherwise.
    pub(super) fn finish<T>(self, read: Option<T>) -> Result<T, Faults> {
        let mut faults = self.0.into_inner();
        faults.sort();
        faults.dedup();
        match read {
            Some(read) if faults.is_empty() => Ok(read),
            _ => {
                if faults.is_empty() {
                    // Cannot come about: whatever is not read has noted why.
                    let says = "the file could not be read".to_owned();
                    faults.push(Fault { place: Place::default(), field: String::new(), says });
                }
                Err(Faults(faults))
            }
        }
    }
}

/// A table that is being read.
#[derive(Debug)]
pub(super) struct Table<'a> {
    pairs: &'a [Pair],
    pub place: Place,
    pub path: String,
    known: Vec<String>,
    pub notes: &'a Notes,
}

impl<'a> Table<'a> {
    pub(super) fn of(node: &'a Node, path: String, notes: &'a Notes) -> Option<Self> {
        let Kind::Table(pairs) = &node.kind else {
            notes.add(node.place, &path, format!("found {}, expected a table", node.kind.words()));
            return None;
        };
        Some(Self { pairs, place: node.place, path, known: Vec::new(), notes })
    }

    fn field(&self, key: &str) -> String {
        let joint = if self.path.is_empty() || self.path.ends_with(' ') { "" } else { "." };
        format!("{}{joint}{key}", self.path)
    }

    /// Notes a fault of a field.
    pub(super) fn fault(&self, key: &str, place: Place, says: impl Into<String>) {
        self.notes.add(place, &self.field(key), says);
    }

    /// The value of a key that may be missing.
    pub(super) fn maybe(&mut self, key: &str) -> Option<&'a Node> {
        self.known.push(key.to_owned());
        self.pairs.iter().find(|pair| pair.key == key).map(|pair| &pair.value)
    }

    /// The value of a key that must be there.
    pub(super) fn need(&mut self, key: &str) -> Option<&'a Node> {
        let found = self.maybe(key);
        if found.is_none() {
            self.fault(key, self.place, "missing: expected this key");
        }
        found
    }

    /// Every key that nothing asked for is a fault; the nearest known one is named.
    pub(super) fn finish(self) {
        for pair in self.pairs {
            if self.known.contains(&pair.key) {
                continue;
            }
            let shown: String = pair.key.chars().take(60).collect();
            // A key without its unit is the commonest slip.
            let with_unit = self.known.iter().find(|known| {
                known.strip_prefix(pair.key.as_str()).is_some_and(|rest| rest.starts_with('-'))
            });
            let known = self.known.iter().map(String::as_str);
            let hint = with_unit.map(String::as_str).or_else(|| nearest(&pair.key, known));
            let says = match hint {
                Some(name) => format!("no such key; did you mean \"{name}\"?"),
                None if self.known.len() <= 12 => {
                    format!("no such key; expected one of: {}", self.known.join(", "))
                }
                None => "no such key; the template lists every key".to_owned(),
            };
            self.fault(&shown, pair.place, says);
        }
    }

    /// A table of its own under a key.
    pub(super) fn table(&mut self, key: &str) -> Option<Table<'a>> {
        let node = self.need(key)?;
        Table::of(node, self.field(key), self.notes)
    }

    pub(super) fn maybe_table(&mut self, key: &str) -> Option<Table<'a>> {
        let node = self.maybe(key)?;
        Table::of(node, self.field(key), self.notes)
    }

    /// The tables of a list under a key; none when it is missing.
    pub(super) fn tables(&mut self, key: &str, most: usize) -> Vec<Table<'a>> {
        let Some(node) = self.maybe(key) else { return Vec::new() };
        let Kind::List(list) = &node.kind else {
            self.fault(key, node.place, format!("found {}, expected tables", node.kind.words()));
            return Vec::new();
        };
        if list.len() > most {
            self.fault(key, node.place, format!("found {}, expected at most {most}", list.len()));
        }
        let numbered = list.iter().take(most).enumerate();
        numbered
            .filter_map(|(place, node)| {
                Table::of(node, format!("{} {}: ", self.field(key), place + 1), self.notes)
            })
            .collect()
    }

    pub(super) fn text(&mut self, key: &str) -> Option<String> {
        let node = self.need(key)?;
        self.text_of(key, node)
    }

    pub(super) fn maybe_text(&mut self, key: &str) -> Option<String> {
        let node = self.maybe(key)?;
        self.text_of(key, node)
    }

    fn text_of(&self, key: &str, node: &Node) -> Option<String> {
        let Kind::Text(text) = &node.kind else {
            self.fault(key, node.place, format!("found {}, expected text", node.kind.words()));
            return None;
        };
        let length = text.chars().count();
        if length == 0 || length > LONGEST_TEXT {
            let says = format!("found {length} characters, expected 1 to {LONGEST_TEXT}");
            self.fault(key, node.place, says);
            return None;
        }
        if text.chars().any(char::is_control) {
            self.fault(
                key,
                node.place,
                "found a control character or a line break, expected one line of text",
            );
            return None;
        }
        Some(text.clone())
    }

    /// A number within a range. NaN and infinities are refused by name.
    pub(super) fn number(&mut self, key: &str, range: RangeInclusive<f64>) -> Option<f64> {
        let node = self.need(key)?;
        self.number_of(key, node, &range)
    }

    pub(super) fn maybe_number(&mut self, key: &str, range: RangeInclusive<f64>) -> Option<f64> {
        let node = self.maybe(key)?;
        self.number_of(key, node, &range)
    }

    fn number_of(&self, key: &str, node: &Node, range: &RangeInclusive<f64>) -> Option<f64> {
        let value = match &node.kind {
            #[expect(clippy::cast_precision_loss, reason = "checked against a small range next")]
            Kind::Whole(value) => *value as f64,
            Kind::Number(value) => *value,
            other => {
                self.fault(key, node.place, format!("found {}, expected a number", other.words()));
                return None;
            }
        };
        let (low, high) = (range.start(), range.end());
        if range.contains(&value) {
            return Some(value + 0.0);
        }
        let found = Found(value);
        self.fault(key, node.place, format!("found {found}, expected {low} to {high}"));
        None
    }

    pub(super) fn mm(&mut self, key: &str, range: RangeInclusive<f64>) -> Option<Mm> {
        self.number(key, range).and_then(|value| Mm::checked(value).ok())
    }

    pub(super) fn maybe_mm(&mut self, key: &str, range: RangeInclusive<f64>) -> Option<Mm> {
        self.maybe_number(key, range).and_then(|value| Mm::checked(value).ok())
    }

    pub(super) fn degrees(&mut self, key: &str, most: f64) -> Option<Deg> {
        self.number(key, -most..=most).and_then(|value| Deg::checked(value).ok())
    }

    /// A whole number within a range.
    pub(super) fn whole(&mut self, key: &str, range: RangeInclusive<i64>) -> Option<i64> {
        let node = self.need(key)?;
        self.whole_of(key, node, &range)
    }

    pub(super) fn maybe_whole(&mut self, key: &str, range: RangeInclusive<i64>) -> Option<i64> {
        let node = self.maybe(key)?;
        self.whole_of(key, node, &range)
    }

    fn whole_of(&self, key: &str, node: &Node, range: &RangeInclusive<i64>) -> Option<i64> {
        let (low, high) = (range.start(), range.end());
        match &node.kind {
            Kind::Whole(value) if range.contains(value) => Some(*value),
            Kind::Whole(value) => {
                self.fault(key, node.place, format!("found {value}, expected {low} to {high}"));
                None
            }
            other => {
                let says = format!(
                    "found {}, expected a whole number from {low} to {high}",
                    other.words()
                );
                self.fault(key, node.place, says);
                None
            }
        }
    }

    pub(super) fn truth(&mut self, key: &str) -> Option<bool> {
        let node = self.need(key)?;
        self.truth_of(key, node)
    }

    pub(super) fn maybe_truth(&mut self, key: &str) -> Option<bool> {
        let node = self.maybe(key)?;
        self.truth_of(key, node)
    }

    fn truth_of(&self, key: &str, node: &Node) -> Option<bool> {
        if let Kind::Truth(value) = node.kind {
            return Some(value);
        }
        self.fault(key, node.place, format!("found {}, expected true or false", node.kind.words()));
        None
    }

    /// One of a closed list of words.
    pub(super) fn one<T: Copy>(&mut self, key: &str, words: &[(&'static str, T)]) -> Option<T> {
        let node = self.need(key)?;
        self.one_of(key, node, words)
    }

    pub(super) fn maybe_one<T: Copy>(
        &mut self,
        key: &str,
        words: &[(&'static str, T)],
    ) -> Option<T> {
        let node = self.maybe(key)?;
        self.one_of(key, node, words)
    }

    fn one_of<T: Copy>(&self, key: &str, node: &Node, words: &[(&'static str, T)]) -> Option<T> {
        let Kind::Text(found) = &node.kind else {
            self.fault(key, node.place, format!("found {}, expected a word", node.kind.words()));
            return None;
        };
        let chosen = words.iter().find(|(word, _)| word == found).map(|(_, value)| *value);
        if chosen.is_none() {
            let known = words.iter().map(|(word, _)| *word);
            let says = unknown_word(found, known);
            self.fault(key, node.place, says);
        }
        chosen
    }

    /// The elements of a list.
    pub(super) fn list_of(&self, key: &str, node: &'a Node, most: usize) -> Option<&'a [Node]> {
        let Kind::List(list) = &node.kind else {
            self.fault(key, node.place, format!("found {}, expected a list", node.kind.words()));
            return None;
        };
        if list.len() > most {
            let says = format!("found {} elements, expected at most {most}", list.len());
            self.fault(key, node.place, says);
            return None;
        }
        Some(list)
    }

    /// N numbers in a list.
    pub(super) fn row<const N: usize>(
        &self,
        key: &str,
        node: &'a Node,
        range: &RangeInclusive<f64>,
    ) -> Option<[f64; N]> {
        let list = self.list_of(key, node, N)?;
        if list.len() != N {
            self.fault(key, node.place, format!("found {} numbers, expected {N}", list.len()));
            return None;
        }
        let read: Vec<Option<f64>> =
            list.iter().map(|node| self.number_of(key, node, range)).collect();
        let values: Vec<f64> = read.into_iter().collect::<Option<_>>()?;
        values.try_into().ok()
    }

    /// A fixed number of lengths.
    pub(super) fn lengths<const N: usize>(
        &mut self,
        key: &str,
        range: RangeInclusive<f64>,
    ) -> Option<[Mm; N]> {
        let node = self.need(key)?;
        let row = self.row::<N>(key, node, &range)?;
        Some(row.map(Mm::new))
    }

    /// A point `[x, y, z]`.
    pub(super) fn point(&mut self, key: &str) -> Option<P3> {
        let node = self.need(key)?;
        let [x, y, z] = self.row::<3>(key, node, &(-60.0..=60.0))?;
        Some(P3::new(x, y, z))
    }

    pub(super) fn maybe_point(&mut self, key: &str) -> Option<P3> {
        let node = self.maybe(key)?;
        let [x, y, z] = self.row::<3>(key, node, &(-60.0..=60.0))?;
        Some(P3::new(x, y, z))
    }

    /// A polyline `[[a, b], ...]` with strictly rising `a`.
    pub(super) fn polyline(&mut self, key: &str) -> Option<Vec<P2>> {
        let node = self.need(key)?;
        let list = self.list_of(key, node, MOST_POINTS)?;
        if list.len() < 2 {
            self.fault(
                key,
                node.place,
                format!("found {} points, expected at least 2", list.len()),
            );
            return None;
        }
        let rows: Vec<Option<[f64; 2]>> =
            list.iter().map(|row| self.row::<2>(key, row, &(-80.0..=80.0))).collect();
        let rows: Vec<[f64; 2]> = rows.into_iter().collect::<Option<_>>()?;
        for (pair, node) in rows.windows(2).zip(list.iter().skip(1)) {
            if pair[1][0] <= pair[0][0] {
                let says = format!(
                    "found {} after {}, expected rising first numbers",
                    pair[1][0], pair[0][0]
                );
                self.fault(key, node.place, says);
                return None;
            }
        }
        Some(rows.into_iter().map(|[a, b]| P2::new(a, b)).collect())
    }

    /// An outline `[[s, t], ...]` in millimetres on the map's grid of 0.1.
    pub(super) fn outline_of(&self, key: &str, node: &'a Node) -> Option<Outline> {
        // One more than allowed is read, so that the outline itself says how many came.
        let list = self.list_of(key, node, MOST_POINTS)?;
        let rows: Vec<Option<[i32; 2]>> = list
            .iter()
            .map(|row| {
                let at = self.row::<2>(key, row, &(-80.0..=80.0))?;
                let grid = at.map(|part| libm::round(part * 10.0));
                if at.iter().zip(grid).any(|(part, whole)| (part * 10.0 - whole).abs() > 1e-6) {
                    self.fault(
                        key,
                        row.place,
                        "found a vertex off the grid, expected steps of 0.1 mm",
                    );
                    return None;
                }
                // Small by the range above.
                #[expect(clippy::cast_possible_truncation, reason = "at most 800 by the range")]
                Some(grid.map(|whole| whole as i32))
            })
            .collect();
        let vertices: Vec<[i32; 2]> = rows.into_iter().collect::<Option<_>>()?;
        match Outline::new(vertices) {
            Ok(outline) => Some(outline),
            Err(fault) => {
                self.fault(key, node.place, fault.to_string());
                None
            }
        }
    }
}

/// *found "x", expected one of ...; did you mean ...*
pub(super) fn unknown_word<'b>(found: &str, known: impl Iterator<Item = &'b str>) -> String {
    let shown: String = found.chars().take(60).collect();
    let words: Vec<&str> = known.collect();
    match nearest(found, words.iter().copied()) {
        Some(name) => format!("found \"{shown}\"; did you mean \"{name}\"?"),
        None if words.len() > 60 => format!("found \"{shown}\", which is not known"),
        None => format!("found \"{shown}\", expected one of: {}", words.join(", ")),
    }
}
