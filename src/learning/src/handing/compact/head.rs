//! The circumstances of an attempt in a kept state, after those of the attempt before: most of them are
//! the same all through a set.

use super::coder::{Bits, Numbers};
use super::event::{Garbled, text};
use super::subject as about;
use crate::record::{Head, Help, Limit, RECORD_FORMAT};
use engine::rules::Local;
use engine::session::Mode;

const HELPS: [Help; 3] = [Help::Guided, Help::Worked, Help::Begun];
/// Longer texts stand in no head.
const LONGEST: usize = 200;
/// A protocol of a set, as JSON.
const LONGEST_PROTOCOL: usize = 20_000;
/// Times are kept in whole seconds: a thousandth more says nothing about a decision and costs ten bits.
const SECOND: u64 = 1000;

/// The texts of the head before, and in which version heads are written.
#[derive(Debug, Default)]
pub struct Texts {
    version: u32,
    all: [Vec<u8>; 8],
    begun: u64,
    limit: u64,
}

impl Texts {
    /// Before the first head of a state of this version.
    pub fn of(version: u32) -> Self {
        Self { version, ..Self::default() }
    }
}

/// One head.
pub fn head<B: Bits>(
    numbers: &mut Numbers<B>,
    before: &mut Texts,
    given: Option<&Head>,
) -> Result<Head, Garbled> {
    let mut optional = |subject, slot: usize, given: Option<String>, most| {
        let place = u16::try_from(slot).unwrap_or(0) << 8;
        let is_there = numbers.flag(about::THERE + place, given.is_some());
        let Some(known) = before.all.get_mut(slot).filter(|_| is_there) else { return Ok(None) };
        let given = given.unwrap_or_default();
        *known = numbers.bytes(subject, known, given.as_bytes(), most);
        text(known.clone()).map(Some)
    };
    let of = |part: fn(&Head) -> Option<String>| given.and_then(part);
    let id = optional(about::ID, 0, of(|head| Some(head.id.clone())), LONGEST)?;
    let at = optional(about::AT, 1, of(|head| Some(head.at.clone())), LONGEST)?;
    let address =
        optional(about::ADDRESS, 2, of(|head| head.address.map(|it| it.to_string())), LONGEST)?;
    let set = optional(about::SET, 3, of(|head| head.set.clone()), LONGEST)?;
    let local = optional(about::LOCAL, 4, of(protocol), LONGEST_PROTOCOL)?;
    let sitting = optional(about::SITTING, 5, of(|head| head.sitting.clone()), LONGEST)?;
    let rule_set = optional(about::RULE_SET, 6, of(|head| Some(head.rule_set.clone())), LONGEST)?;
    let verdicts = hash(numbers, given)?;
    let local: Local = match local {
        Some(text) => serde_json::from_str(&text).map_err(|_| "a protocol that is none")?,
        None => Local::NONE,
    };
    local.check().map_err(|_| "a protocol that no set may have")?;
    let address = address.map(|text| text.parse()).transpose();
    let mode = numbers.flag(about::MODE, given.is_some_and(|one| one.mode == Mode::Assessment));
    let number = numbers.size(about::NUMBER, given.map_or(0, |one| one.number.into()));
    let begun = time(numbers, about::BEGUN, before.begun, given.and_then(|one| one.begun));
    before.begun = begun.unwrap_or(before.begun);
    let ended = time(numbers, about::ENDED, before.begun, given.and_then(|one| one.ended));
    let (opened_before, limit) = conditions(numbers, before, given)?;
    Ok(Head {
        format: RECORD_FORMAT,
        id: id.unwrap_or_default(),
        at: at.unwrap_or_default(),
        address: address.map_err(|_| "an address that is none")?,
        set,
        local,
        mode: if mode { Mode::Assessment } else { Mode::Study },
        number: u32::try_from(number).map_err(|_| "more attempts than anybody makes")?,
        help: help(numbers, given),
        sitting,
        opened_before,
        limit,
        begun,
        ended,
        rule_set: rule_set.unwrap_or_default(),
        verdicts,
        // A host keeps little, and who reads there has today's.
        faults: String::new(),
    })
}

fn protocol(head: &Head) -> Option<String> {
    if head.local.is_none() { None } else { serde_json::to_string(&head.local).ok() }
}

/// What was there first in version 2.
fn conditions<B: Bits>(
    numbers: &mut Numbers<B>,
    before: &mut Texts,
    given: Option<&Head>,
) -> Result<(bool, Option<Limit>), Garbled> {
    if before.version < 2 {
        return Ok((false, None));
    }
    let opened_before =
        numbers.flag(about::OPENED_BEFORE, given.is_some_and(|one| one.opened_before));
    Ok((opened_before, limit(numbers, before, given.and_then(|one| one.limit))?))
}

/// The time of the set, which all its cases share: no news after the first.
fn limit<B: Bits>(
    numbers: &mut Numbers<B>,
    before: &mut Texts,
    given: Option<Limit>,
) -> Result<Option<Limit>, Garbled> {
    if !numbers.flag(about::LIMIT, given.is_some()) {
        return Ok(None);
    }
    let from = time(numbers, about::LIMIT_FROM, before.limit, given.map(|one| one.from));
    before.limit = from.ok_or("a time without its beginning")?;
    let minutes = numbers.size(about::MINUTES, given.map_or(0, |one| one.minutes.into()));
    let minutes = u32::try_from(minutes).map_err(|_| "more minutes than anybody has")?;
    Ok(Some(Limit { from: before.limit, minutes }))
}

/// What helped, in the order of the list.
fn help<B: Bits>(numbers: &mut Numbers<B>, given: Option<&Head>) -> Vec<Help> {
    let mut found = Vec::new();
    for (place, help) in (0..).zip(HELPS) {
        let was = given.is_some_and(|head| head.help.contains(&help));
        if numbers.flag(about::HELP + (place << 8), was) {
            found.push(help);
        }
    }
    found
}

/// The hash of the verdicts: sixteen digits, or nothing.
fn hash<B: Bits>(numbers: &mut Numbers<B>, given: Option<&Head>) -> Result<String, Garbled> {
    let given = given.map_or("", |head| head.verdicts.as_str());
    if !numbers.flag(about::VERDICTS, !given.is_empty()) {
        return Ok(String::new());
    }
    let wrong = "a hash of verdicts that is none";
    let value =
        if given.is_empty() { 0 } else { u64::from_str_radix(given, 16).map_err(|_| wrong)? };
    let mut found = 0;
    for part in (0..4).rev() {
        let part = u32::try_from((value >> (16 * part)) & 0xFFFF).unwrap_or(0);
        found = (found << 16) | u64::from(numbers.even(part));
    }
    Ok(format!("{found:016x}"))
}

/// A time in whole seconds after another; nothing where nobody knows.
pub fn time<B: Bits>(
    numbers: &mut Numbers<B>,
    subject: u16,
    after: u64,
    given: Option<u64>,
) -> Option<u64> {
    if !numbers.flag(subject, given.is_some()) {
        return None;
    }
    let seconds = |ms: u64| i64::try_from(ms / SECOND).unwrap_or(0);
    let by = seconds(given.unwrap_or(0)) - seconds(after);
    let by = numbers.signed(subject, by);
    let at = u64::try_from(seconds(after).saturating_add(by)).unwrap_or(0);
    Some(at.saturating_mul(SECOND))
}
