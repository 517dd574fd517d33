//! A set of drawn cases written out.

use super::page::{Page, quoted};
use crate::chart::Address;
use crate::rules::{Debated, Protocol, Side, Worth};
use crate::scenario::{Conditions, Verdicts};

/// What a set says of itself, and its cases by their addresses.
#[derive(Debug, Clone, Copy)]
pub struct Listed<'a> {
    /// Its title.
    pub title: &'a str,
    /// What a learner can do after it, in one sentence.
    pub aim: &'a str,
    /// For whom: `student` or `resident`.
    pub level: &'a str,
    /// Who does its cases, and when explanations come: `worked`, `study` or `assessment`.
    pub mode: &'a str,
    /// Whether each learner gets cases of their own.
    pub forms: bool,
    /// What it decides otherwise than the rules.
    pub protocol: &'a Protocol,
    /// Under what conditions it is sat, and the word, in clear, that its verdicts wait for, if one.
    pub conditions: (&'a Conditions, &'a str),
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
    write_protocol(&mut page, set.protocol);
    write_conditions(&mut page, set.conditions);
    for (address, ask) in set.cases {
        page.0.push_str("\n[[case]]\n");
        page.text("address", &address.to_string(), "");
        if !ask.is_empty() {
            page.text("ask", &one_line(ask), "");
        }
    }
    page.0
}

fn write_protocol(page: &mut Page, protocol: &Protocol) {
    if protocol.is_empty() {
        return;
    }
    page.table("protocol");
    if let Some(note) = &protocol.note {
        page.text("note", &one_line(note), "shown with each case");
    }
    for moved in &protocol.bands {
        page.0.push_str("\n[[protocol.band]]\n");
        page.text("rule", &moved.rule, "");
        page.number("from", moved.from, "");
        page.number("to", moved.to, "");
    }
    for held in &protocol.positions {
        page.0.push_str("\n[[protocol.position]]\n");
        page.text("rule", &held.rule, "");
        page.text("holds", if held.holds == Side::One { "one" } else { "other" }, "");
        let worth = |worth: &Worth| quoted(worth.zone().key());
        let debated = match &held.debated {
            Debated::All(all) => worth(all),
            Debated::Each(each) => {
                let pairs =
                    each.iter().map(|(key, one)| format!("{} = {}", quoted(key), worth(one)));
                format!("{{ {} }}", pairs.collect::<Vec<_>>().join(", "))
            }
        };
        page.put("debated", debated, "");
    }
}

fn write_conditions(page: &mut Page, (conditions, word): (&Conditions, &str)) {
    if conditions.is_empty() {
        return;
    }
    page.table("conditions");
    if !conditions.opening.is_empty() {
        page.text("opening", &one_line(&conditions.opening), "what is read before the first case");
    }
    match conditions.verdicts {
        Verdicts::AfterCase => {}
        Verdicts::AfterSet => page.text("verdicts", "after-set", ""),
        Verdicts::AtWord(_) => {
            page.text("verdicts", "at-word", "");
            page.text("word", &one_line(word), "verdicts come once it is typed");
        }
    }
    if let Some(minutes) = conditions.minutes {
        page.put("minutes", minutes, "for the whole set, before any extra time");
    }
    if let Some(attempts) = conditions.attempts {
        page.put("attempts", attempts, "at each case");
    }
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
            protocol: &Protocol::default(),
            conditions: (&Conditions::default(), ""),
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

    #[test]
    fn conditions_are_written_as_they_are_read() {
        let cases = [("1.1.2024.2591".parse().unwrap(), "")];
        for (verdicts, word) in [
            (Verdicts::AfterCase, ""),
            (Verdicts::AfterSet, ""),
            (Verdicts::at_word("Maple"), "maple"),
        ] {
            let opening = "Take \"your\" time.".to_owned();
            let conditions = Conditions { opening, verdicts, minutes: Some(45), attempts: Some(1) };
            let listed = Listed {
                title: "a",
                aim: "b",
                level: "student",
                mode: "assessment",
                forms: false,
                protocol: &Protocol::default(),
                conditions: (&conditions, word),
                cases: &cases,
            };
            assert_eq!(parse_set(&write_set(&listed)).unwrap().conditions, conditions);
        }
    }

    #[test]
    fn conditions_that_cannot_be_are_told_all_at_once() {
        let head = "format = 1\nkind = \"set\"\ntitle = \"a\"\naim = \"b\"\nlevel = \"student\"\n";
        let case = "[[case]]\naddress = \"1.1.2024.2591\"\n";
        let faults = |mode: &str, conditions: &str| {
            let text = format!("{head}mode = \"{mode}\"\n[conditions]\n{conditions}\n{case}");
            parse_set(&text).unwrap_err().to_string()
        };
        let told = faults("assessment", "minutes = 481\nattempts = 0\nverdict = \"after-set\"");
        assert!(
            told.contains("conditions.minutes") && told.contains("conditions.attempts"),
            "{told}"
        );
        assert!(told.contains("conditions.verdict: no such key"), "{told}");
        assert!(faults("study", "minutes = 40").contains("are for mode"));
        assert!(faults("study", "verdicts = \"after-set\"").contains("are for mode"));
        assert!(faults("assessment", "verdicts = \"at-word\"").contains("go together"));
        assert!(faults("assessment", "word = \"x\"").contains("go together"));
        assert!(faults("assessment", "verdicts = \"later\"").contains("after-case"));
    }

    #[test]
    fn a_protocol_is_written_as_it_is_read() {
        let text = include_str!("../../../../../scenarios/one-school-s-line.set.toml");
        let mut protocol = parse_set(text).unwrap().protocol;
        assert!(!protocol.bands.is_empty() && !protocol.positions.is_empty());
        let cases = [("1.1.2024.2591".parse().unwrap(), "")];
        for _ in 0..2 {
            let listed = Listed {
                title: "a",
                aim: "b",
                level: "student",
                mode: "study",
                forms: false,
                protocol: &protocol,
                conditions: (&Conditions::default(), ""),
                cases: &cases,
            };
            assert_eq!(parse_set(&write_set(&listed)).unwrap().protocol, protocol);
            // The other way of saying what is debated.
            for held in &mut protocol.positions {
                held.debated = Debated::All(Worth::Suboptimal);
            }
        }
    }
}
