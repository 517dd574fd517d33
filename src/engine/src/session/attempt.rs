//! A stored attempt: choices, never marks.

use super::{Event, Mode, Session, Unreadable, Written};
use crate::chart::{Address, Case};
use crate::debrief::{RULE_SET, hash_of, judge};
use crate::rules::{Local, Unfit};
use core::fmt;
use serde::{Deserialize, Serialize};

/// Version of the stored form.
pub const ATTEMPT_FORMAT: u32 = 1;

/// Which case an attempt is at.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CaseRef {
    /// By address.
    Address(Address),
    /// Written out in full.
    Written(Box<Case>),
}

/// An attempt as it is stored or handed in.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Attempt {
    /// Version of this form.
    pub format: u32,
    /// Says what it is.
    pub caution: String,
    /// At which case.
    pub case: CaseRef,
    /// How the set that gave the case has it judged; nothing where no set gave it.
    #[serde(default, skip_serializing_if = "Local::is_none")]
    pub local: Local,
    /// When verdicts were shown.
    pub mode: Mode,
    /// What was done.
    pub events: Vec<Written>,
    /// The rule set it was judged by.
    pub rule_set: String,
    /// Hash of its verdicts, hexadecimal.
    pub verdicts: String,
}

/// Why an attempt cannot be replayed.
#[derive(Debug, Clone, PartialEq)]
pub enum Broken {
    /// A later version wrote it.
    Format {
        /// As it came.
        found: u32,
    },
    /// An event cannot be read.
    Event {
        /// Which, from 0.
        place: usize,
        /// Why.
        why: Unreadable,
    },
    /// The set would have a rule otherwise than it may.
    Local {
        /// Which.
        rule: String,
        /// Why it may not.
        why: Unfit,
    },
}

impl fmt::Display for Broken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Format { found } => write!(
                f,
                "found an attempt of format {found}, expected {ATTEMPT_FORMAT}: open it with a newer version of this room"
            ),
            Self::Local { rule, why } => write!(f, "the protocol of its set: {rule}: {why}"),
            Self::Event { place, why } => write!(f, "event {}: {why}", place + 1),
        }
    }
}

impl core::error::Error for Broken {}

impl Attempt {
    /// The attempt that a session is so far.
    #[must_use]
    pub fn of(session: &Session) -> Self {
        let case = session.opened();
        Self {
            format: ATTEMPT_FORMAT,
            caution: "synthetic, not for treatment".to_owned(),
            case: case
                .address
                .map_or_else(|| CaseRef::Written(Box::new(as_it_stands(case))), CaseRef::Address),
            local: Local::clone(&case.local),
            mode: session.mode(),
            events: session.events().iter().map(Event::written).collect(),
            rule_set: RULE_SET.to_owned(),
            verdicts: format!("{:016x}", hash_of(&judge(case, session.plan()))),
        }
    }

    /// The case as its set gave it, from the case as it was drawn or written.
    ///
    /// # Errors
    /// [`Broken::Local`] where the set would have a rule otherwise than it may.
    pub fn given(&self, case: Case) -> Result<Case, Broken> {
        self.local.check().map_err(|(rule, why)| Broken::Local { rule, why })?;
        Ok(case.under(self.local.clone()))
    }

    /// Its events.
    ///
    /// # Errors
    /// [`Broken`] by the first thing that cannot be read.
    pub fn read_events(&self) -> Result<Vec<Event>, Broken> {
        if self.format != ATTEMPT_FORMAT {
            return Err(Broken::Format { found: self.format });
        }
        self.events
            .iter()
            .enumerate()
            .map(|(place, written)| {
                Event::try_from(written).map_err(|why| Broken::Event { place, why })
            })
            .collect()
    }
}

/// A case without its set, which an attempt names by itself.
fn as_it_stands(case: &Case) -> Case {
    case.clone().under(Local::NONE)
}
