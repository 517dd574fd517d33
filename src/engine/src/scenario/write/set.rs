//! A set of drawn cases written out.

use super::page::Page;
use crate::chart::Address;
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
    /// When explanations come: `study` or `assessment`.
    pub mode: &'a str,
    /// Whether each learner gets cases of their own.
    pub forms: bool,
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
}
