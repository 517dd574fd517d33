//! A file that is being written: keys with their values and what they mean.

use crate::geometry::{Outline, P2, P3};
use crate::units::Mm;
use core::fmt::{Display, Write as _};

/// The first line of every written file.
pub const HEADER: &str = "# synthetic, not for treatment; do not enter a real patient";

/// A file that grows line by line.
pub(in crate::scenario) struct Page(pub String);

impl Page {
    pub(in crate::scenario) fn new(kind: &str) -> Self {
        Self(format!("{HEADER}\nformat = 1\nkind = \"{kind}\"\n"))
    }

    pub(in crate::scenario) fn table(&mut self, name: &str) {
        let _ = write!(self.0, "\n[{name}]\n");
    }

    /// A key with its value and what it means.
    pub(in crate::scenario) fn put(&mut self, key: &str, value: impl Display, means: &str) {
        // Writing to a string cannot fail.
        let _ = if means.is_empty() {
            writeln!(self.0, "{key} = {value}")
        } else {
            writeln!(self.0, "{key} = {value}  # {means}")
        };
    }

    pub(in crate::scenario) fn text(&mut self, key: &str, value: &str, means: &str) {
        self.put(key, quoted(value), means);
    }

    pub(in crate::scenario) fn number(&mut self, key: &str, value: f64, means: &str) {
        self.put(key, number(value), means);
    }

    pub(in crate::scenario) fn mm(&mut self, key: &str, value: Mm, means: &str) {
        self.number(key, value.get(), means);
    }

    pub(in crate::scenario) fn maybe_mm(&mut self, key: &str, value: Option<Mm>, means: &str) {
        match value {
            Some(value) => self.mm(key, value, means),
            None => {
                let _ = writeln!(self.0, "# {key} is left out: {means}");
            }
        }
    }
}

/// A number as TOML takes it: the shortest that reads back to the same bits, with a point.
pub(in crate::scenario) fn number(value: f64) -> String {
    let text = format!("{value}");
    if text.contains(['.', 'e', 'n', 'i']) { text } else { format!("{text}.0") }
}

pub(in crate::scenario) fn quoted(text: &str) -> String {
    let mut quoted = String::from("\"");
    for letter in text.chars() {
        match letter {
            '"' => quoted.push_str("\\\""),
            '\\' => quoted.push_str("\\\\"),
            letter if letter.is_control() => {
                let _ = write!(quoted, "\\u{:04X}", u32::from(letter));
            }
            letter => quoted.push(letter),
        }
    }
    quoted.push('"');
    quoted
}

pub(in crate::scenario) fn list(values: impl Iterator<Item = String>) -> String {
    format!("[{}]", values.collect::<Vec<_>>().join(", "))
}

pub(in crate::scenario) fn lengths(values: &[Mm]) -> String {
    list(values.iter().map(|value| number(value.get())))
}

pub(in crate::scenario) fn polyline(knots: &[P2]) -> String {
    list(knots.iter().map(|knot| format!("[{}, {}]", number(knot.x), number(knot.y))))
}

pub(in crate::scenario) fn point(at: P3) -> String {
    format!("[{}, {}, {}]", number(at.x), number(at.y), number(at.z))
}

pub(in crate::scenario) fn outline(outline: &Outline) -> String {
    list(outline.points().iter().map(|at| format!("[{}, {}]", number(at.x), number(at.y))))
}

/// The word of a value in its list; every value has one, which the round trip of each list tests.
pub(in crate::scenario) fn word<T: PartialEq>(
    words: &[(&'static str, T)],
    value: &T,
) -> &'static str {
    words.iter().find(|(_, one)| one == value).map_or("", |(word, _)| word)
}
