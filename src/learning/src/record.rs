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
            begun: Some(now),
            ended: None,
            rule_set: RULE_SET.to_owned(),
            verdicts: String::new(),
        }
    }

    /// Whether verdicts of this hash are others than those that it had when it was sat; nothing where
    /// none were kept to compare.
    #[must_use]
    pub fn is_judged_otherwise(&self, verdicts: u64) -> Option<bool> {
        (!self.verdicts.is_empty()).then(|| self.verdicts != in_words(verdicts))
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
