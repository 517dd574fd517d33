//! A set of drawn cases written out.

use super::page::Page;
use crate::chart::Address;

/// What a set says of itself, and its cases by their addresses.
#[derive(Debug, Clone, Copy)]
pub struct Listed<'a> {
    /// Its title.
    pub title: &'a str,
    /// What a learner can do after it, in one sentence.
    pub aim: &'a str,
    /// For whom: `student` or `resident`.
    pub level: &'a str,
    /// When explanations come: `study` or `assessment`.
    pub mode: &'a str,
    /// Whether each learner gets cases of their own.
    pub forms: bool,
    /// Each case, and what to ask after it; empty for nothing.
    pub cases: &'a [(Address, &'a str)],
}

/// The set as a file: it reads back the same. Its words stand on one line each, as files have them: a
/// break in them becomes a space.
#[must_use]
pub fn write_set(set: &Listed<'_>) -> String {
    let mut page = Page::new("set");
    page.text("title", &one_line(set.title), "");
    page.text("aim", &one_line(set.aim), "");
    page.text("level", set.level, "");
    page.text("mode", set.mode, "");
    if set.forms {
        page.put("forms", true, "each learner's own cases, from their code");
    }
    for (address, ask) in set.cases {
        page.0.push_str("\n[[case]]\n");
        page.text("address", &address.to_string(), "");
        if !ask.is_empty() {
            page.text("ask", &one_line(ask), "");
        }
    }
    page.0
}

fn one_line(text: &str) -> String {
    text.chars().map(|letter| if letter.is_control() { ' ' } else { letter }).collect()
}

#[cfg(test)]
#[cfg(feature = "toml")]
mod tests {
    use super::*;
    use crate::scenario::{CaseSource, Level, Mode, parse_set};

    #[test]
    fn a_written_set_reads_back_the_same_but_for_breaks_in_its_words() {
        let cases: Vec<(Address, &str)> = [
            ("1.1.2024.2591", "Which \"wall\"?\nAnd why? \\ # no comment"),
            ("1.3.77.0", ""),
            ("1.1.2024.0.facial-loss.45", "\u{7f}\u{1}é"),
        ]
        .map(|(address, ask)| (address.parse().unwrap(), ask))
        .into();
        let title = "Walls = \"one\" # two";
        let listed = Listed {
            title,
            aim: "A\tb",
            level: "resident",
            mode: "assessment",
            forms: true,
            cases: &cases,
        };
        let set = parse_set(&write_set(&listed)).unwrap();
        assert_eq!((set.title.as_str(), set.aim.as_str()), (title, "A b"));
        assert_eq!((set.level, set.mode), (Level::Resident, Mode::Assessment));
        assert!(set.forms);
        assert_eq!(set.cases.len(), cases.len());
        for (read, (address, ask)) in set.cases.iter().zip(&cases) {
            assert_eq!(read.source, CaseSource::Address(*address));
            assert_eq!(read.ask.as_deref().unwrap_or_default(), one_line(ask));
        }
    }
}
