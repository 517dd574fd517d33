//! A stored attempt: choices, never marks.

use super::{Event, Mode, Session, Unreadable, Written};
use crate::chart::{Address, Case};
use crate::debrief::{RULE_SET, hash_of, judge};
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
}

impl fmt::Display for Broken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Format { found } => write!(
                f,
                "found an attempt of format {found}, expected {ATTEMPT_FORMAT}: open it with a newer version of this room"
            ),
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
                .map_or_else(|| CaseRef::Written(Box::new(case.clone())), CaseRef::Address),
            mode: session.mode(),
            events: session.events().iter().map(Event::written).collect(),
            rule_set: RULE_SET.to_owned(),
            verdicts: format!("{:016x}", hash_of(&judge(case, session.plan()))),
        }
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
