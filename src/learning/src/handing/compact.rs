//! Attempts as a short text that a host keeps between two openings of a package, at most 4096
//! characters in the older of its editions: the choices of a whole set, never a mark.
//!
//! The text is `2.`, the version of this form; then the body, numbers written by an adaptive coder
//! (`coder`) and spelt in letters that every host keeps as they are (`letters`); then six letters
//! of check over all that stands before. What is kept of an attempt is its head and its events, in the
//! order and to the value that they had; times in whole seconds. Notes and cases written out stay
//! behind: the first are nobody else's, the second come with the package.
//!
//! What comes back from a host is read as if a stranger had written it: anything but what
//! [`write()`] makes is refused, and whoever replays what was read ([`crate::past::replay`]) finds events
//! that cannot have happened.

mod alphabet;
mod coder;
mod event;
mod head;
pub mod letters;
mod subject;
#[cfg(test)]
mod tests;

use super::check::crc;
use crate::record::{Done, Head};
use alphabet::{ADDED, Alphabet};
use coder::{Coder, Numbers, Reader, Writer};
use core::fmt;
use engine::session::{Event, LONGEST_REASON, Unreadable};
use event::Garbled;

/// Version of the form that is written. Version 2 added whether a case had been opened before, and the
/// time of a set.
pub const FORMAT: u32 = 2;
/// No text that is longer is looked at: more than any host keeps.
const LONGEST: usize = 64_000;
/// Letters of the check.
const CHECK: usize = 6;
/// A set has at most 200 cases; each may be tried again.
const MOST_ATTEMPTS: u64 = 1000;
/// As in files of attempts.
const MOST_EVENTS: u64 = 5000;

/// An attempt as a host keeps it.
#[derive(Debug, Clone, PartialEq)]
pub struct Kept {
    /// Its circumstances.
    pub head: Head,
    /// What was done, in order.
    pub events: Vec<Done>,
}

/// As many attempts as fit.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Fitted {
    /// The text.
    pub text: String,
    /// How many attempts were left out, because there was no room for them.
    pub left_out: usize,
}

/// Why attempts cannot be written.
#[derive(Debug, Clone, PartialEq)]
pub enum Unwritable {
    /// An event names nothing known.
    Event {
        /// In which attempt, from 0.
        attempt: usize,
        /// Which, from 0.
        place: usize,
        /// Why.
        why: Unreadable,
    },
    /// Something in an attempt has no place in this form.
    Part {
        /// In which attempt, from 0.
        attempt: usize,
        /// What.
        found: &'static str,
    },
}

impl fmt::Display for Unwritable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Event { attempt, place, why } => {
                write!(f, "attempt {}, event {}: {why}", attempt + 1, place + 1)
            }
            Self::Part { attempt, found } => write!(
                f,
                "attempt {}: found {found}, expected what this room lets a learner do; save the attempt as a file instead",
                attempt + 1
            ),
        }
    }
}

impl core::error::Error for Unwritable {}

/// Why a text holds no attempts.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unkept {
    /// It does not begin as such a text does.
    Strange {
        /// Its beginning.
        found: String,
    },
    /// A later version wrote it.
    Newer {
        /// Which.
        found: u32,
    },
    /// It was cut or changed on its way.
    Damaged {
        /// How long it is, characters.
        length: usize,
    },
    /// Its check is right, its content is none.
    Garbled {
        /// In which attempt, from 0.
        attempt: usize,
        /// What was found there.
        found: &'static str,
    },
}

impl fmt::Display for Unkept {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        const WAY_OUT: &str = "begin the set again, or bring in a file of your attempts";
        match self {
            Self::Strange { found } => write!(
                f,
                "found a kept state that begins \"{found}\", expected \"{FORMAT}.\" and what this room handed to its host: {WAY_OUT}"
            ),
            Self::Newer { found } => write!(
                f,
                "found a kept state of form {found}, expected at most {FORMAT}: open the set with the newer version that wrote it"
            ),
            Self::Damaged { length } => write!(
                f,
                "found a kept state of {length} characters that was cut or changed, expected it as this room handed it over: {WAY_OUT}"
            ),
            Self::Garbled { attempt, found } => write!(
                f,
                "attempt {} of the kept state: found {found}, expected what this room lets a learner do: {WAY_OUT}",
                attempt + 1
            ),
        }
    }
}

impl core::error::Error for Unkept {}

/// Writes attempts.
///
/// # Errors
/// [`Unwritable`] by the first thing that has no place in the form.
pub fn write(kept: &[Kept]) -> Result<String, Unwritable> {
    let mut all = Vec::with_capacity(kept.len());
    for (attempt, one) in kept.iter().enumerate() {
        let mut events = Vec::with_capacity(one.events.len());
        for (place, done) in one.events.iter().enumerate() {
            let event = Event::try_from(&done.what).map_err(|why| Unwritable::Event {
                attempt,
                place,
                why,
            })?;
            events.push((done.at, as_it_counts(event)));
        }
        all.push((&one.head, events));
    }
    let mut numbers = Numbers::new(Coder::Writer(Writer::new()));
    attempts(&mut numbers, FORMAT, Some(&all))
        .map_err(|(attempt, found)| Unwritable::Part { attempt, found })?;
    let bytes = match numbers.bits {
        Coder::Writer(writer) => writer.bytes(),
        Coder::Reader(_) => Vec::new(),
    };
    let mut text = format!("{FORMAT}.{}", letters::spell(&bytes));
    let check = letters::spell(&crc(text.as_bytes()).to_be_bytes());
    text.push_str(&check);
    Ok(text)
}

/// A reason as the session keeps it, however much was written; anything else as it is.
fn as_it_counts(event: Event) -> Event {
    match event {
        Event::Dispute(rule, reason) => {
            Event::Dispute(rule, reason.trim().chars().take(LONGEST_REASON).collect())
        }
        other => other,
    }
}

/// Writes as many attempts as fit into so many characters. `kept` stands in order of time. What has no
/// room is left out whole: of those that are finished the oldest first, because their marks are with
/// the host already; then the oldest of the others. The fewest that make room.
///
/// # Errors
/// [`Unwritable`] by the first thing that has no place in the form.
pub fn fit(kept: &[Kept], most: usize) -> Result<Fitted, Unwritable> {
    let is_open = |place: &usize| kept.get(*place).is_some_and(|one| one.head.ended.is_none());
    // Within each of the two kinds they stay in order of time.
    let mut order: Vec<usize> = (0..kept.len()).filter(|place| !is_open(place)).collect();
    order.extend((0..kept.len()).filter(is_open));
    for left_out in 0..kept.len() {
        let gone = order.get(..left_out).unwrap_or_default();
        let stays = kept.iter().enumerate().filter(|(place, _)| !gone.contains(place));
        let text = write(&stays.map(|(_, one)| one.clone()).collect::<Vec<_>>())?;
        if text.len() <= most {
            return Ok(Fitted { text, left_out });
        }
    }
    Ok(Fitted { text: String::new(), left_out: kept.len() })
}

/// Reads attempts.
///
/// # Errors
/// [`Unkept`] for anything that [`write()`] did not make.
pub fn read(text: &str) -> Result<Vec<Kept>, Unkept> {
    let strange = || Unkept::Strange { found: text.chars().take(12).collect() };
    let damaged = Unkept::Damaged { length: text.chars().count() };
    let (version, _) = text.split_once('.').ok_or_else(strange)?;
    let digits = !version.is_empty() && version.bytes().all(|byte| byte.is_ascii_digit());
    let version: u32 = version.parse().ok().filter(|_| digits).ok_or_else(strange)?;
    // Before its check: how a later form is checked is for that form to say.
    if version > FORMAT {
        return Err(Unkept::Newer { found: version });
    }
    if version == 0 {
        return Err(strange());
    }
    let bytes = text.as_bytes();
    if bytes.len() > LONGEST {
        return Err(damaged);
    }
    let Some((whole, check)) = bytes.len().checked_sub(CHECK).map(|at| bytes.split_at(at)) else {
        return Err(damaged);
    };
    let begins = format!("{version}.");
    let (Some(check), Some(body)) = (letters::read(check), whole.strip_prefix(begins.as_bytes()))
    else {
        return Err(damaged);
    };
    if check != crc(whole).to_be_bytes() {
        return Err(damaged);
    }
    let body = letters::read(body).ok_or(damaged)?;
    let mut numbers = Numbers::new(Coder::Reader(Reader::new(&body)));
    let found = attempts(&mut numbers, version, None)
        .map_err(|(attempt, found)| Unkept::Garbled { attempt, found })?;
    if !matches!(&numbers.bits, Coder::Reader(reader) if reader.is_at_the_end()) {
        let attempt = found.len().saturating_sub(1);
        return Err(Unkept::Garbled { attempt, found: "more than its end" });
    }
    let done = |(at, event): (Option<u64>, Event)| Done { at, what: event.written() };
    let kept = |(head, events): (Head, Vec<_>)| Kept {
        head,
        events: events.into_iter().map(done).collect(),
    };
    Ok(found.into_iter().map(kept).collect())
}

type Given<'a> = (&'a Head, Vec<(Option<u64>, Event)>);
type Found = (Head, Vec<(Option<u64>, Event)>);

/// All attempts: a writer is given them, a reader is not and asks whether it has run dry. What is wrong
/// stands beside the number of its attempt.
fn attempts(
    numbers: &mut Numbers<Coder<'_>>,
    version: u32,
    given: Option<&[Given<'_>]>,
) -> Result<Vec<Found>, (usize, Garbled)> {
    let alphabet = Alphabet::of(version, ADDED);
    let length = |count: usize| u64::try_from(count).unwrap_or(u64::MAX);
    let count = numbers.size(subject::ATTEMPTS, given.map_or(0, |all| length(all.len())));
    if count > MOST_ATTEMPTS {
        return Err((0, "more attempts than a set takes"));
    }
    let mut texts = head::Texts::of(version);
    let mut found = Vec::new();
    for attempt in 0..usize::try_from(count).unwrap_or(0) {
        let at = |says: Garbled| (attempt, says);
        let given = given.and_then(|all| all.get(attempt));
        let head = head::head(numbers, &mut texts, given.map(|(head, _)| *head)).map_err(at)?;
        let events = given.map(|(_, events)| events.as_slice());
        let count = numbers.size(subject::EVENTS, events.map_or(0, |all| length(all.len())));
        if count > MOST_EVENTS {
            return Err(at("more events than an attempt has"));
        }
        let (mut before, mut when) = (event::Before::default(), head.begun.unwrap_or(0));
        let mut list = Vec::new();
        for place in 0..usize::try_from(count).unwrap_or(0) {
            let given = events.and_then(|all| all.get(place));
            let time = head::time(numbers, subject::WHEN, when, given.and_then(|(time, _)| *time));
            when = time.unwrap_or(when);
            let event = given.map(|(_, event)| event);
            let read = event::event(numbers, &alphabet, &mut before, event).map_err(at)?;
            if event.is_some_and(|event| *event != read) {
                return Err(at("an event beyond what can be done"));
            }
            if numbers.bits.is_spent() {
                return Err(at("less than its events"));
            }
            list.push((time, read));
        }
        found.push((head, list));
    }
    Ok(found)
}
