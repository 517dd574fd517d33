//! TOML into the raw form, with every fault of the text at once.

use super::node::{Fault, Faults, Kind, Node, Pair, Place};
use toml::de::{DeTable, DeValue};

/// The longest file that is read, in bytes.
pub const LONGEST_FILE: usize = 1 << 20;

/// Reads a text.
///
/// # Errors
/// Every place where the text is no TOML; or that it is too long.
pub(super) fn read(text: &str) -> Result<Node, Faults> {
    if text.len() > LONGEST_FILE {
        return Err(Faults(vec![Fault {
            place: Place { line: 1, column: 1 },
            field: String::new(),
            says: format!(
                "found {} kB, expected at most {} kB: split the set",
                text.len() / 1024,
                LONGEST_FILE / 1024
            ),
        }]));
    }
    let lines = Lines::of(text);
    let (table, errors) = DeTable::parse_recoverable(text);
    if !errors.is_empty() {
        let mut faults: Vec<Fault> = errors
            .iter()
            .map(|error| Fault {
                place: lines.place(error.span().map_or(0, |span| span.start)),
                field: String::new(),
                says: error.message().split_whitespace().collect::<Vec<_>>().join(" "),
            })
            .collect();
        faults.sort();
        return Err(Faults(faults));
    }
    let place = lines.place(table.span().start);
    Ok(Node { place, kind: Kind::Table(pairs(table.get_ref(), &lines)) })
}

fn pairs(table: &DeTable<'_>, lines: &Lines<'_>) -> Vec<Pair> {
    table
        .iter()
        .map(|(key, value)| Pair {
            key: key.get_ref().to_string(),
            place: lines.place(key.span().start),
            value: node(value.get_ref(), lines.place(value.span().start), lines),
        })
        .collect()
}

fn node(value: &DeValue<'_>, place: Place, lines: &Lines<'_>) -> Node {
    let kind = match value {
        DeValue::String(text) => Kind::Text(text.to_string()),
        DeValue::Integer(number) => {
            let digits: String = number.as_str().chars().filter(|c| *c != '_').collect();
            i64::from_str_radix(&digits, number.radix())
                .map_or(Kind::Other("a whole number that is too large"), Kind::Whole)
        }
        DeValue::Float(number) => {
            let digits: String = number.as_str().chars().filter(|c| *c != '_').collect();
            digits.parse().map_or(Kind::Other("a number that cannot be read"), Kind::Number)
        }
        DeValue::Boolean(truth) => Kind::Truth(*truth),
        DeValue::Datetime(_) => Kind::Other("a date"),
        DeValue::Array(list) => Kind::List(
            list.iter()
                .map(|value| node(value.get_ref(), lines.place(value.span().start), lines))
                .collect(),
        ),
        DeValue::Table(table) => Kind::Table(pairs(table, lines)),
    };
    Node { place, kind }
}

/// Where lines begin.
struct Lines<'a> {
    text: &'a str,
    starts: Vec<usize>,
}

impl<'a> Lines<'a> {
    fn of(text: &'a str) -> Self {
        let breaks = text.bytes().enumerate().filter(|(_, byte)| *byte == b'\n');
        Self { text, starts: core::iter::once(0).chain(breaks.map(|(at, _)| at + 1)).collect() }
    }

    fn place(&self, offset: usize) -> Place {
        let line = self.starts.partition_point(|start| *start <= offset).max(1);
        let start = self.starts.get(line - 1).copied().unwrap_or(0);
        let column = self.text.get(start..offset).map_or(0, |part| part.chars().count());
        let counted = |number: usize| u32::try_from(number).unwrap_or(u32::MAX);
        Place { line: counted(line), column: counted(column + 1) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn values_keep_their_places() {
        let node = read("format = 1\n[site]\n  tooth = 11\n").unwrap();
        let Kind::Table(pairs) = node.kind else { panic!("a table") };
        let site = pairs.iter().find(|pair| pair.key == "site").unwrap();
        let Kind::Table(inner) = &site.value.kind else { panic!("a table") };
        assert_eq!(inner[0].place, Place { line: 3, column: 3 });
        assert_eq!(inner[0].value.place, Place { line: 3, column: 11 });
        assert_eq!(inner[0].value.kind, Kind::Whole(11));
    }

    #[test]
    fn all_slips_of_the_text_are_told_at_once() {
        let faults = read("a = \nb = 2\nc = [1, \nd = = 3\n").unwrap_err();
        assert!(faults.0.len() >= 2, "{faults}");
        assert_eq!(faults.0[0].place.line, 1);
    }

    #[test]
    fn a_file_over_the_limit_is_refused_before_it_is_read() {
        let long = "#".repeat(LONGEST_FILE + 1);
        assert!(read(&long).unwrap_err().to_string().contains("at most 1024 kB"));
    }
}
