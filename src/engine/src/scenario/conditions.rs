//! Under what conditions a set is sat: what is read before it, when its verdicts come, for how long, how
//! often.

use super::Mode;
use super::read::Table;
use crate::hash::Fnv;
use serde::{Deserialize, Serialize};

/// The longest time that a set may give, minutes: a working day.
pub const MOST_MINUTES: u16 = 480;
/// The most attempts at a case that a set may count.
pub const MOST_ATTEMPTS: u16 = 20;

/// Under what conditions a set is sat. Nothing here is a lock: a page in the learner's own browser can
/// hold back, and it can tell; it cannot compel.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "kebab-case")]
pub struct Conditions {
    /// What a learner reads before the first case; empty for nothing.
    #[serde(skip_serializing_if = "String::is_empty")]
    pub opening: String,
    /// When verdicts come, where they wait for the end of a case or longer.
    #[serde(skip_serializing_if = "Verdicts::is_after_each_case")]
    pub verdicts: Verdicts,
    /// How long the whole set may take, minutes, before any extra time.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub minutes: Option<u16>,
    /// How many attempts at each case the page offers.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub attempts: Option<u16>,
}

/// When the verdicts of an assessment come.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Verdicts {
    /// With the end of each case.
    #[default]
    AfterCase,
    /// With the end of the last case.
    AfterSet,
    /// With a word that the instructor says; of it only its mark is here, so that who reads the set
    /// has to guess.
    AtWord(String),
}

impl Verdicts {
    const fn is_after_each_case(&self) -> bool {
        matches!(self, Self::AfterCase)
    }

    /// That come with this word.
    #[must_use]
    pub fn at_word(word: &str) -> Self {
        Self::AtWord(mark(word))
    }

    /// Whether this is the word that they wait for; small letters or capitals, spaces about it or none.
    #[must_use]
    pub fn come_with(&self, word: &str) -> bool {
        matches!(self, Self::AtWord(awaited) if *awaited == mark(word))
    }
}

/// The mark of a word: a hash that tells two words apart. A short word is found by trying.
fn mark(word: &str) -> String {
    let mut hash = Fnv::new();
    hash.text("the instructor's word");
    // Other alphabets' capitals would bring tables of them into every page.
    hash.text(&word.trim().to_ascii_lowercase());
    format!("{:016x}", hash.value())
}

impl Conditions {
    /// Whether there are none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// In one line, for a set on its way to a page: when verdicts come (`case`, `set`, or the mark of a
    /// word), minutes and attempts (0 for no limit), and the rest what is read first.
    #[must_use]
    pub fn line(&self) -> String {
        let verdicts = match &self.verdicts {
            Verdicts::AfterCase => "case",
            Verdicts::AfterSet => "set",
            Verdicts::AtWord(mark) => mark,
        };
        let [minutes, attempts] = [self.minutes, self.attempts].map(Option::unwrap_or_default);
        format!("{verdicts} {minutes} {attempts} {}", self.opening)
    }

    /// Out of such a line; an empty one has none.
    ///
    /// # Errors
    /// A sentence.
    pub fn of_line(line: &str) -> Result<Self, String> {
        if line.is_empty() {
            return Ok(Self::default());
        }
        let mut parts = line.splitn(4, ' ');
        let mut part = || parts.next().unwrap_or_default();
        let verdicts = match part() {
            "case" => Verdicts::AfterCase,
            "set" => Verdicts::AfterSet,
            mark if mark.len() == 16 => Verdicts::AtWord(mark.to_owned()),
            _ => return Err(strange(line)),
        };
        let mut number = |most: u16| match part().parse::<u16>() {
            Ok(0) => Ok(None),
            Ok(number) if number <= most => Ok(Some(number)),
            _ => Err(strange(line)),
        };
        let (minutes, attempts) = (number(MOST_MINUTES)?, number(MOST_ATTEMPTS)?);
        Ok(Self { opening: part().to_owned(), verdicts, minutes, attempts })
    }

    /// What a learner is told of them, a sentence each.
    #[must_use]
    pub fn words(&self) -> Vec<String> {
        let verdicts = match self.verdicts {
            Verdicts::AfterCase => None,
            Verdicts::AfterSet => Some("Verdicts come when every case of the set is at its end."),
            Verdicts::AtWord(_) => Some("Verdicts come with a word that your instructor says."),
        };
        let minutes = self.minutes.map(|minutes| {
            format!(
                "There are {minutes} minutes for the whole set, and more where that was agreed."
            )
        });
        let attempts = self.attempts.map(|attempts| match attempts {
            1 => "There is one attempt at each case.".to_owned(),
            some => format!("There are {some} attempts at each case."),
        });
        [minutes, attempts, verdicts.map(str::to_owned)].into_iter().flatten().collect()
    }
}

fn strange(line: &str) -> String {
    let found: String = line.chars().take(40).collect();
    format!(
        "found the conditions \"{found}\", expected when verdicts come, minutes up to {MOST_MINUTES}, attempts up to {MOST_ATTEMPTS} and what is read first"
    )
}

/// Reads them from the table of their name; `mode` is the set's.
pub(super) fn read(mut table: Table<'_>, mode: Option<Mode>) -> Option<Conditions> {
    let opening = table.maybe_text("opening").unwrap_or_default();
    let whens = [("after-case", When::Case), ("after-set", When::Set), ("at-word", When::Word)];
    let place = table.maybe("verdicts").map_or(table.place, |node| node.place);
    let when = table.maybe_one("verdicts", &whens);
    let word = table.maybe_text("word");
    let minutes = table.maybe_whole("minutes", 1..=i64::from(MOST_MINUTES)).map(small);
    let attempts = table.maybe_whole("attempts", 1..=i64::from(MOST_ATTEMPTS)).map(small);
    let held = matches!(when, Some(When::Set | When::Word));
    let other = mode.filter(|mode| *mode != Mode::Assessment && (held || minutes.is_some()));
    if let Some(other) = other {
        let says = format!(
            "time and verdicts that wait are for mode = \"assessment\"; the mode is \"{}\"",
            other.key()
        );
        table.fault("verdicts", place, &says);
    }
    if (when == Some(When::Word)) != word.is_some() {
        let says = "verdicts = \"at-word\" and word = \"…\" go together: expected both or neither";
        table.fault("word", place, says);
    }
    table.finish();
    let verdicts = match (when, word) {
        (Some(When::Word), Some(word)) => Verdicts::at_word(&word),
        (Some(When::Set), _) => Verdicts::AfterSet,
        _ => Verdicts::AfterCase,
    };
    Some(Conditions { opening, verdicts, minutes, attempts })
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum When {
    Case,
    Set,
    Word,
}

/// A number whose range has been checked.
fn small(number: i64) -> u16 {
    u16::try_from(number).unwrap_or(u16::MAX)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_word_is_known_again_and_cannot_be_read_off() {
        let verdicts = Verdicts::at_word("Maple leaf");
        assert!(verdicts.come_with("  maple LEAF "));
        assert!(!verdicts.come_with("maple") && !verdicts.come_with(""));
        assert!(!serde_json::to_string(&verdicts).unwrap().contains("aple"));
        assert!(!Verdicts::AfterSet.come_with(""));
    }

    #[test]
    fn conditions_come_back_as_they_were_and_none_take_no_room() {
        let conditions = Conditions {
            opening: "Take your time.".to_owned(),
            verdicts: Verdicts::AfterSet,
            minutes: Some(40),
            attempts: Some(1),
        };
        let text = serde_json::to_string(&conditions).unwrap();
        assert_eq!(serde_json::from_str::<Conditions>(&text).unwrap(), conditions);
        for verdicts in [Verdicts::AfterCase, Verdicts::AfterSet, Verdicts::at_word("a")] {
            let given = Conditions { verdicts, minutes: None, ..conditions.clone() };
            assert_eq!(Conditions::of_line(&given.line()), Ok(given));
        }
        assert_eq!(Conditions::of_line(""), Ok(Conditions::default()));
        for line in ["later 0 0 ", "set", "set 481 0 ", "set 0 21 ", "set x 0 ", "set 0 -1 "] {
            assert!(Conditions::of_line(line).unwrap_err().contains("minutes up to"), "{line}");
        }
        assert_eq!(serde_json::to_string(&Conditions::default()).unwrap(), "{}");
        assert!(serde_json::from_str::<Conditions>("{\"lock\":1}").is_err());
    }

    #[test]
    fn each_condition_is_told_in_a_sentence() {
        let told = |verdicts, minutes, attempts| {
            Conditions { opening: String::new(), verdicts, minutes, attempts }.words()
        };
        assert!(told(Verdicts::AfterCase, None, None).is_empty());
        let all = told(Verdicts::at_word("x"), Some(40), Some(1));
        assert_eq!(all.len(), 3);
        assert!(all[0].starts_with("There are 40 minutes") && all[1].contains("one attempt"));
        assert!(told(Verdicts::AfterSet, None, Some(3))[0].contains("3 attempts"));
    }
}
