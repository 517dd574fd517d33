//! What is said of a rule at length: the build writes it into one file, and the page reads that after
//! the first case.
//!
//! A rule is a record of twelve units, parted as ASCII parts them. What the page can put together
//! itself is not written: headings, and where sources differ when both positions say so. Texts that
//! repeat one another stand side by side, which compresses best.

#[cfg(feature = "prose")]
use super::words;
#[cfg(feature = "prose")]
use crate::rules::{self, Rule};

/// Ends a rule's record.
const RECORD: char = '\u{1e}';
/// Parts its units.
const UNIT: char = '\u{1f}';
/// The headings of a rule's text, in order.
const HEADINGS: [&str; 6] = [
    "What it asks",
    "Why",
    "How it is measured",
    "Evidence",
    "Where sources differ",
    "Limits of this rule",
];
/// How a heading begins.
const HEADING: &str = "## ";

/// What is said of a rule at length.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct LongText {
    /// What the rule asks, in one sentence.
    pub statement: String,
    /// Why.
    pub why: String,
    /// What mends a fault.
    pub mend: String,
    /// The whole text, in our own small Markdown.
    pub text: String,
    /// Who says what, one a line.
    pub sources: Vec<String>,
    /// Where sources differ.
    pub differ: String,
    /// Both sides, where there are two; empty where there are none.
    pub positions: [String; 2],
}

#[cfg(feature = "prose")]
impl LongText {
    /// What is said of this rule.
    #[must_use]
    pub fn of(rule: &Rule) -> Self {
        Self {
            statement: rule.statement.to_owned(),
            why: rule.why.to_owned(),
            mend: rule.mend.to_owned(),
            text: rules::prose(rule.id).unwrap_or_default().to_owned(),
            sources: words::sources(rule),
            differ: words::differ(rule),
            positions: rule
                .positions
                .map_or_else(Default::default, |both| [both.one, both.other].map(str::to_owned)),
        }
    }

    /// The record of what is said of the rule with this id; [`read`] reads many of them, one after
    /// another.
    #[must_use]
    pub fn record(&self, id: &str) -> String {
        let [asks, why, how, evidence, sides, limits] = sections(&self.text);
        let both = self.positions.join("\n");
        let differ = if both.len() > 1 { &both } else { &self.differ };
        let sources = self.sources.join("\n");
        let (statement, mend) = (&self.statement, &self.mend);
        let units = [
            id, statement, asks, &self.why, why, mend, how, evidence, &sources, sides, differ,
            limits,
        ];
        units.join(UNIT.encode_utf8(&mut [0; 4])) + RECORD.encode_utf8(&mut [0; 4])
    }
}

/// What stands under each heading; a text with other headings whole in the first place.
#[cfg(feature = "prose")]
fn sections(text: &str) -> [&str; 6] {
    let mut sections = [""; 6];
    let mut rest = text;
    for (place, heading) in HEADINGS.iter().enumerate() {
        let own = rest
            .strip_prefix(HEADING)
            .and_then(|rest| rest.strip_prefix(heading))
            .and_then(|rest| rest.strip_prefix("\n\n"));
        let Some(own) = own else { return [text, "", "", "", "", ""] };
        let end = own.find("\n\n## ").unwrap_or(own.len().saturating_sub(1));
        sections[place] = &own[..end];
        rest = own.get(end + 2..).unwrap_or_default();
    }
    sections
}

/// The texts of a file of records, each with its rule's id; nothing where the file is damaged.
#[must_use]
pub fn read(file: &str) -> Option<Vec<(String, LongText)>> {
    file.trim_end().split_terminator(RECORD).map(read_record).collect()
}

fn read_record(record: &str) -> Option<(String, LongText)> {
    let units: Vec<&str> = record.split(UNIT).collect();
    let &[id, statement, asks, why, reason, mend, how, evidence, sources, sides, differ, limits] =
        units.as_slice()
    else {
        return None;
    };
    let positions = differ.split_once('\n').unwrap_or_default();
    Some((
        id.to_owned(),
        LongText {
            statement: statement.to_owned(),
            why: why.to_owned(),
            mend: mend.to_owned(),
            text: whole([asks, reason, how, evidence, sides, limits]),
            sources: sources.lines().map(str::to_owned).collect(),
            differ: differ.replace('\n', " "),
            positions: [positions.0.to_owned(), positions.1.to_owned()],
        },
    ))
}

/// The text that stands under its headings again.
fn whole(sections: [&str; 6]) -> String {
    let mut text = String::new();
    if sections[0].starts_with(HEADING) {
        text.push_str(sections[0]);
        return text;
    }
    for (heading, section) in HEADINGS.iter().zip(sections) {
        if !text.is_empty() {
            text.push('\n');
        }
        for part in [HEADING, heading, "\n\n", section, "\n"] {
            text.push_str(part);
        }
    }
    text
}

#[cfg(all(test, feature = "prose"))]
mod tests {
    use super::*;
    use crate::rules::ledger;

    #[test]
    fn what_the_page_reads_of_every_rule_is_what_the_rule_says() {
        let file: String = rules::all().map(|rule| LongText::of(rule).record(rule.id)).collect();
        let read = read(&file).unwrap();
        assert_eq!(read.len(), rules::all().count());
        for (rule, (id, long)) in rules::all().zip(read) {
            assert_eq!(id, rule.id);
            assert_eq!(long.sources, words::sources(rule), "{id}");
            assert_eq!(long.text, rules::prose(rule.id).unwrap(), "{id}");
            assert_eq!(long, LongText::of(rule), "{id}");
        }
    }

    #[test]
    fn no_heading_of_a_rule_is_sent() {
        for rule in rules::all() {
            assert!(!LongText::of(rule).record(rule.id).contains(HEADING), "{}", rule.id);
        }
    }

    #[test]
    fn a_text_under_other_headings_comes_back_whole() {
        let facts = LongText { text: ledger::text(), ..LongText::default() };
        let file = facts.record(ledger::FACTS);
        assert_eq!(read(&file).unwrap(), [(ledger::FACTS.to_owned(), facts)]);
    }

    #[test]
    fn an_empty_line_at_the_end_of_a_file_is_no_record() {
        let rule = rules::all().next().unwrap();
        let file = LongText::of(rule).record(rule.id);
        assert_eq!(read(&(file.clone() + "\n")), read(&file));
        assert_eq!(read("\n"), Some(Vec::new()));
    }

    #[test]
    fn a_damaged_file_is_refused() {
        let rule = rules::all().next().unwrap();
        let file = LongText::of(rule).record(rule.id);
        assert_eq!(read(&file[..file.len() / 2]), None);
        assert_eq!(read("<!doctype html>"), None);
    }
}
