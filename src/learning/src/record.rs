//! A kept attempt: what was done, when, and under what circumstances. Choices, never marks: whoever
//! wants to know how it went replays it ([`crate::past`]).
//!
//! `C` is what holds a case written out: the tool reads one, the page hands it on unread.

use engine::chart::Address;
use engine::debrief::RULE_SET;
use engine::rules::Local;
use engine::session::{Mode, Session, Written};
use serde::{Deserialize, Serialize};

/// Version of this form. Format 1 was the bare attempt that the debrief saved as a file; it is still
/// read ([`crate::file`]).
pub const RECORD_FORMAT: u32 = 2;

/// Everything about an attempt but what was done in it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Head {
    /// Version of this form.
    pub format: u32,
    /// Its own name, unlike any other's: letters, digits and hyphens.
    pub id: String,
    /// Where in the room its case was opened: the fragment of the address.
    pub at: String,
    /// The case, where it has an address.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub address: Option<Address>,
    /// The set that gave it, by name.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub set: Option<String>,
    /// What that set decides otherwise than the rules, and for whom it is.
    #[serde(default, skip_serializing_if = "Local::is_none")]
    pub local: Local,
    /// When verdicts were shown.
    pub mode: Mode,
    /// Which attempt at this case it was in the browser that kept it, from 1.
    pub number: u32,
    /// What helped beside the explanations of study mode.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub help: Vec<Help>,
    /// The sitting that it belongs to, by name.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub sitting: Option<String>,
    /// Whether its case had been opened before in the browser that kept it, sat or only looked at.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub opened_before: bool,
    /// The time that its set gave it, where it gave one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub limit: Option<Limit>,
    /// When it was begun, milliseconds since 1970 in universal time; nothing where nobody knows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub begun: Option<u64>,
    /// When its last step was carried out, likewise; nothing before.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ended: Option<u64>,
    /// The rule set that it was sat under.
    pub rule_set: String,
    /// Hash of its verdicts under that rule set, hexadecimal; empty where none were made yet.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub verdicts: String,
    /// What it had outside or unsafe then, so that what a later rule set says otherwise can be told:
    /// rule and zone, `rule:zone`, with spaces between. For reading only: nothing is marked by it.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub faults: String,
}

/// The time that a set gives all its cases together.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Limit {
    /// When it began, milliseconds since 1970, universal time.
    pub from: u64,
    /// How long it is, minutes, the extra time that was agreed with the learner among them.
    pub minutes: u32,
}

impl Limit {
    /// When it ends, likewise.
    #[must_use]
    pub const fn end(self) -> u64 {
        self.from.saturating_add(self.minutes as u64 * 60_000)
    }

    /// By how many minutes something done then came after its end, begun ones as whole; nothing where it
    /// did not.
    #[must_use]
    pub const fn passed_by(self, at: u64) -> Option<u64> {
        match at.saturating_sub(self.end()) {
            0 => None,
            late => Some(late.div_ceil(60_000)),
        }
    }
}

/// What helps beside the explanations of study mode.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Help {
    /// Each step was talked through.
    Guided,
    /// All steps were shown.
    Worked,
    /// The first steps were shown.
    Begun,
}

impl Help {
    /// In words.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Self::Guided => "talked through",
            Self::Worked => "shown step by step",
            Self::Begun => "first steps shown",
        }
    }
}

/// One thing done, and when.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Done {
    /// Milliseconds since 1970, universal time; nothing where nobody knows.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<u64>,
    /// What.
    #[serde(rename = "do")]
    pub what: Written,
}

/// A whole record.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub struct Record<C> {
    /// All but what was done.
    pub head: Head,
    /// What was done, in order.
    pub events: Vec<Done>,
    /// The case written out.
    #[serde(default = "Option::default", skip_serializing_if = "Option::is_none")]
    pub case: Option<C>,
    /// What the learner wrote to themselves.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub note: String,
}

impl Head {
    /// The head of an attempt that begins.
    #[must_use]
    pub fn begin(id: String, at: String, session: &Session, number: u32, now: u64) -> Self {
        let case = session.opened();
        Self {
            format: RECORD_FORMAT,
            id,
            at,
            address: case.address,
            set: None,
            local: Local::clone(&case.local),
            mode: session.mode(),
            number,
            help: Vec::new(),
            sitting: None,
            opened_before: false,
            limit: None,
            begun: Some(now),
            ended: None,
            rule_set: RULE_SET.to_owned(),
            verdicts: String::new(),
            faults: String::new(),
        }
    }

    /// Whether verdicts of this hash are others than those that it had when it was sat; nothing where
    /// none were kept to compare.
    #[must_use]
    pub fn is_judged_otherwise(&self, verdicts: u64) -> Option<bool> {
        (!self.verdicts.is_empty()).then(|| self.verdicts != in_words(verdicts))
    }

    /// By how many minutes its last act came after the time that its set gave; nothing where it did not.
    #[must_use]
    pub fn late(&self, events: &[Done]) -> Option<u64> {
        let last = events.iter().rev().find_map(|done| done.at).or(self.ended);
        self.limit.zip(last).and_then(|(limit, last)| limit.passed_by(last))
    }

    /// Whether the learner did it alone: what was shown is nobody's answer.
    #[must_use]
    pub fn is_own(&self) -> bool {
        !self.help.iter().any(|help| matches!(help, Help::Worked | Help::Begun))
    }
}

/// A hash as a record has it.
pub(crate) fn in_words(hash: u64) -> String {
    format!("{hash:016x}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_limit_is_kept_to_the_millisecond_and_passed_in_begun_minutes() {
        let limit = Limit { from: 1_000, minutes: 40 };
        assert_eq!(limit.end(), 2_401_000);
        let passed = [0, 2_401_000, 2_401_001, 2_461_000, 2_461_001].map(|at| limit.passed_by(at));
        assert_eq!(passed, [None, None, Some(1), Some(1), Some(2)]);
        assert_eq!(Limit { from: u64::MAX, minutes: u32::MAX }.passed_by(u64::MAX), None);
    }
}
