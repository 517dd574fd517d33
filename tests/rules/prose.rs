//! The long text of each rule: its headings, what stands under them, and that it agrees with the rule.

use crate::registered::family_folder;
use engine::rules::{FAMILIES, Rule, all, prose};
use std::fs;

const HEADINGS: [&str; 6] = [
    "What it asks",
    "Why",
    "How it is measured",
    "Evidence",
    "Where sources differ",
    "Limits of this rule",
];

/// Heading and text of each section, in order.
fn sections(text: &str) -> Vec<(&str, String)> {
    let mut sections: Vec<(&str, String)> = Vec::new();
    for line in text.lines() {
        if let Some(heading) = line.strip_prefix("## ") {
            sections.push((heading, String::new()));
        } else if let Some((_, body)) = sections.last_mut() {
            body.push_str(line);
            body.push('\n');
        }
    }
    sections
}

fn text(rule: &Rule) -> &'static str {
    prose(rule.id).unwrap_or_else(|| panic!("{} has no long text", rule.id))
}

#[test]
fn the_text_that_is_built_in_is_the_one_beside_the_rule() {
    for (family, rules) in FAMILIES {
        for rule in *rules {
            let path = family_folder(*family).join(rule.id.replace('-', "_")).with_extension("md");
            assert_eq!(text(rule), fs::read_to_string(&path).unwrap(), "{}", path.display());
        }
    }
}

#[test]
fn every_text_has_the_six_headings_in_order_and_something_under_each() {
    for rule in all() {
        let sections = sections(text(rule));
        let headings: Vec<_> = sections.iter().map(|(heading, _)| *heading).collect();
        assert_eq!(headings, HEADINGS, "{}", rule.id);
        for (heading, body) in sections {
            assert!(body.trim().len() > 4, "{}: nothing under {heading}", rule.id);
        }
    }
}

#[test]
fn nothing_stands_before_the_first_heading() {
    for rule in all() {
        assert!(text(rule).starts_with("## What it asks\n"), "{}", rule.id);
    }
}

#[test]
fn the_evidence_of_a_text_carries_as_many_marks_as_the_rule_has_sources_or_more() {
    for rule in all() {
        let sections = sections(text(rule));
        let (_, evidence) = &sections[3];
        let lowered = evidence.to_lowercase();
        let marked = ["confirmed", "from memory", "no source", "ours", "our own", "partly"]
            .iter()
            .any(|mark| lowered.contains(mark));
        assert!(marked, "{}: no mark of confirmation under Evidence", rule.id);
    }
}

#[test]
fn one_sentence_stands_on_a_line() {
    for rule in all() {
        for line in text(rule).lines() {
            let inner = line.trim_end_matches('.');
            let breaks = inner.match_indices(". ").filter(|(at, _)| {
                // A full stop after a word of four letters or more, followed by a capital, ends a
                // sentence; initials, abbreviations and figures do not.
                let before: String = inner[..*at].chars().rev().take(4).collect();
                let after = inner[at + 2..].chars().next();
                before.chars().count() == 4
                    && before.chars().all(char::is_lowercase)
                    && after.is_some_and(char::is_uppercase)
            });
            assert_eq!(breaks.count(), 0, "{}: two sentences on a line: {line}", rule.id);
        }
    }
}

/// What the page fetches after the first case is marked where it stands, or it weighs on the first
/// visit.
#[test]
fn every_long_text_of_a_rule_is_marked_as_one() {
    for rule in all() {
        let path = family_folder(rule.family).join(format!("{}.rs", rule.id.replace('-', "_")));
        let source = fs::read_to_string(&path).unwrap_or_else(|fault| panic!("{fault}"));
        for field in ["statement:", "why:", "mend:", "one:", "other:"] {
            let lines = source.lines().map(str::trim_start);
            for line in lines.filter(|line| line.starts_with(field)) {
                assert!(
                    line[field.len()..].trim_start().starts_with("long!("),
                    "{}: {field} is to stand in long!(...)",
                    rule.id
                );
            }
        }
    }
}
