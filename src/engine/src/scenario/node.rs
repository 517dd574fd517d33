//! The raw form of a file: values with the place where each stands, before anything is believed.

use core::fmt;

/// A place in a text, counted from 1.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub struct Place {
    /// Line.
    pub line: u32,
    /// Column, in characters.
    pub column: u32,
}

/// A value and where it stands.
#[derive(Debug, Clone, PartialEq)]
pub struct Node {
    /// Where.
    pub place: Place,
    /// What.
    pub kind: Kind,
}

/// What a value is.
#[derive(Debug, Clone, PartialEq)]
pub enum Kind {
    /// Text.
    Text(String),
    /// A whole number.
    Whole(i64),
    /// Any other number; may be NaN or infinite here.
    Number(f64),
    /// True or false.
    Truth(bool),
    /// Values in order.
    List(Vec<Node>),
    /// Keys with their values, in any order.
    Table(Vec<Pair>),
    /// Something that no field holds: a date, or a number too large.
    Other(&'static str),
}

/// A key with its value.
#[derive(Debug, Clone, PartialEq)]
pub struct Pair {
    /// The key.
    pub key: String,
    /// Where the key stands.
    pub place: Place,
    /// Its value.
    pub value: Node,
}

impl Kind {
    /// In words.
    #[must_use]
    pub const fn words(&self) -> &'static str {
        match self {
            Self::Text(_) => "text",
            Self::Whole(_) => "a whole number",
            Self::Number(_) => "a number",
            Self::Truth(_) => "true or false",
            Self::List(_) => "a list",
            Self::Table(_) => "a table",
            Self::Other(what) => what,
        }
    }
}

/// One thing that is wrong in a file.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Fault {
    /// Where.
    pub place: Place,
    /// Which field: `case 2: site.root.length-mm`; empty for the file as a whole.
    pub field: String,
    /// What was found, what was expected, and the way out.
    pub says: String,
}

/// Everything that is wrong in a file, in the order of its lines.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Faults(pub Vec<Fault>);

/// A text without characters that would move a terminal's cursor: a file may hold any.
struct Visible<'a>(&'a str);

impl fmt::Display for Visible<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for letter in self.0.chars() {
            if letter.is_control() {
                fmt::Display::fmt(&letter.escape_default(), f)?;
            } else {
                fmt::Write::write_char(f, letter)?;
            }
        }
        Ok(())
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Place { line, column } = self.place;
        let (field, says) = (Visible(&self.field), Visible(&self.says));
        if self.field.is_empty() {
            write!(f, "{line}:{column}: {says}")
        } else {
            write!(f, "{line}:{column}: {field}: {says}")
        }
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (count, fault) in self.0.iter().enumerate() {
            if count > 0 {
                writeln!(f)?;
            }
            fault.fmt(f)?;
        }
        Ok(())
    }
}

impl core::error::Error for Fault {}
impl core::error::Error for Faults {}

/// The known name nearest to one that is not known: at most two slips away, or a third of its length.
#[must_use]
pub fn nearest<'a>(found: &str, known: impl IntoIterator<Item = &'a str>) -> Option<&'a str> {
    let found: String = found.chars().take(60).collect();
    let allowed = (found.chars().count() / 3).max(2);
    known
        .into_iter()
        .map(|name| (distance(&found, name), name))
        .filter(|(away, name)| *away <= allowed && *away < name.chars().count())
        .min()
        .map(|(_, name)| name)
}

/// How many letters must be put in, left out, changed or swapped with the next.
fn distance(a: &str, b: &str) -> usize {
    let (a, b): (Vec<char>, Vec<char>) = (a.chars().collect(), b.chars().collect());
    let mut before: Vec<usize> = Vec::new();
    let mut last: Vec<usize> = (0..=b.len()).collect();
    for (i, ca) in a.iter().enumerate() {
        let mut row = vec![i + 1];
        for (j, cb) in b.iter().enumerate() {
            let change = last[j] + usize::from(ca != cb);
            let mut least = change.min(last[j + 1] + 1).min(row[j] + 1);
            if i > 0 && j > 0 && *ca == b[j - 1] && a[i - 1] == *cb {
                least = least.min(before[j - 1] + 1);
            }
            row.push(least);
        }
        before = last;
        last = row;
    }
    last.last().copied().unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_slip_of_the_pen_finds_the_name_that_was_meant() {
        let known = ["length-mm", "width-mm", "neck-mm", "taper"];
        assert_eq!(nearest("lenght-mm", known), Some("length-mm"));
        assert_eq!(nearest("length", known), None);
        assert_eq!(nearest("tapre", known), Some("taper"));
        assert_eq!(nearest("x", known), None);
    }

    #[test]
    fn distances_are_those_of_the_textbook_examples() {
        assert_eq!(distance("kitten", "sitting"), 3);
        assert_eq!(distance("ab", "ba"), 1);
        assert_eq!(distance("", "abc"), 3);
    }
}
