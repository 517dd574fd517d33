//! Files of attempts: what a learner saves, brings in elsewhere, or hands on.
//!
//! A file is `{"kind": "attempts", "format": 2, "caution": ..., "records": [...]}`, one record to a
//! line. A bare attempt, which the debrief saved before the room kept anything (format 1), is read too.
//! Each record is read by itself: one that is broken is told with its line, and the others come in.

use crate::record::{Done, Head, RECORD_FORMAT, Record};
use core::fmt;
use engine::chart::Address;
use engine::hash::Fnv;
use engine::rules::Local;
use engine::session::{Event, Mode, Written};
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::value::RawValue;

/// What kind of file this is.
const KIND: &str = "attempts";
/// What goes with every record that leaves the room.
const CAUTION: &str = "synthetic, not for treatment";
/// Longer files are refused unread, bytes.
pub const LONGEST_FILE: usize = 64 << 20;
/// Longer notes are cut, characters.
pub const LONGEST_NOTE: usize = 2000;
/// More than this is done in no attempt.
const MOST_EVENTS: usize = 5000;
/// Names of attempts are no longer than this.
const LONGEST_NAME: usize = 60;
/// Of one record no more faults than this are told.
const MOST_FAULTS: usize = 5;

/// What was read.
#[derive(Debug, Clone, PartialEq)]
pub struct Read<C> {
    /// Whose they are: the code that the learner was given, where the file names one.
    pub learner: Option<String>,
    /// Attempts that can be kept.
    pub records: Vec<Record<C>>,
    /// Everything that is wrong.
    pub faults: Vec<Fault>,
}

/// One thing that is wrong with a file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fault {
    /// The line, from 1.
    pub line: usize,
    /// What was found and what was expected.
    pub says: String,
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}: {}", self.line, self.says)
    }
}

/// The file, each record unread.
#[derive(Deserialize)]
struct Whole<'a> {
    kind: Option<String>,
    format: u32,
    learner: Option<String>,
    #[serde(borrow)]
    records: Option<Vec<&'a RawValue>>,
}

/// A bare attempt of format 1.
#[derive(Deserialize)]
#[serde(rename_all = "kebab-case")]
struct Bare<C> {
    case: BareCase<C>,
    #[serde(default)]
    local: Local,
    mode: Mode,
    events: Vec<Written>,
    rule_set: String,
    verdicts: String,
}

#[derive(Deserialize)]
#[serde(rename_all = "kebab-case")]
enum BareCase<C> {
    Address(Address),
    Written(C),
}

/// Reads a file.
pub fn read<C: DeserializeOwned>(text: &str) -> Read<C> {
    let mut read = Read { learner: None, records: Vec::new(), faults: Vec::new() };
    match open(text) {
        Ok(mut opened) => {
            read.learner = opened.learner.take();
            while let Some(next) = opened.following() {
                match next {
                    Ok(record) => read.records.push(record),
                    Err(faults) => read.faults.extend(faults),
                }
            }
        }
        Err(fault) => read.faults.push(fault),
    }
    read
}

/// A file of which one record is read after the other: whoever has to answer in between can.
#[derive(Debug)]
pub struct Opened<'a> {
    /// Whose they are: the code that the learner was given, where the file names one.
    pub learner: Option<String>,
    text: &'a str,
    /// What is still to be read, the last first; nothing of a bare attempt but the attempt.
    left: Option<Vec<&'a RawValue>>,
    /// Up to where lines are counted, bytes, and how many there are up to there.
    counted: (usize, usize),
}

/// Opens a file.
///
/// # Errors
/// What is wrong with it as a whole.
pub fn open(text: &str) -> Result<Opened<'_>, Fault> {
    let (learner, left) = match parts(text)? {
        Parts::Bare => (None, None),
        Parts::Records(learner, mut records) => {
            records.reverse();
            (learner, Some(records))
        }
    };
    Ok(Opened { learner, text, left, counted: (0, 1) })
}

impl Opened<'_> {
    /// The next record, or everything that is wrong with it; nothing once all are read.
    pub fn following<C: DeserializeOwned>(&mut self) -> Option<Result<Record<C>, Vec<Fault>>> {
        let Some(left) = &mut self.left else {
            self.left = Some(Vec::new());
            let read = bare(self.text).map_err(|why| vec![of_json(1, &why)]);
            return Some(read.and_then(|record| sound(1, record)));
        };
        let raw = left.pop()?;
        let line = self.line_of(raw);
        let read = serde_json::from_str(raw.get()).map_err(|why| vec![of_json(line, &why)]);
        Some(read.and_then(|record| sound(line, record)))
    }

    /// The line on which a record begins.
    fn line_of(&mut self, raw: &RawValue) -> usize {
        // Both are parts of one text, and records come in its order.
        let offset = (raw.get().as_ptr() as usize).saturating_sub(self.text.as_ptr() as usize);
        let (from, line) = self.counted;
        let between = self.text.as_bytes().get(from..offset).unwrap_or_default();
        let line = line + between.iter().filter(|byte| **byte == b'\n').count();
        self.counted = (from.max(offset), line);
        line
    }
}

enum Parts<'a> {
    Bare,
    /// Whose, and each unread.
    Records(Option<String>, Vec<&'a RawValue>),
}

fn parts(text: &str) -> Result<Parts<'_>, Fault> {
    let fault = |says: String| Fault { line: 1, says };
    if text.len() > LONGEST_FILE {
        return Err(fault(format!(
            "found {} MB, expected a file of at most {} MB",
            text.len() >> 20,
            LONGEST_FILE >> 20
        )));
    }
    let whole: Whole<'_> = serde_json::from_str(text).map_err(|why| of_json(1, &why))?;
    if whole.format > RECORD_FORMAT {
        return Err(fault(format!(
            "found format {}, expected at most {RECORD_FORMAT}: open it with a newer version of this room",
            whole.format
        )));
    }
    match (whole.kind.as_deref(), whole.records) {
        (Some(KIND), Some(records)) => match whole.learner {
            Some(code) if !is_name(&code) => Err(fault(format!(
                "found the learner's code \"{}\", expected letters, digits and hyphens, {LONGEST_NAME} at most",
                code.chars().take(LONGEST_NAME).collect::<String>()
            ))),
            learner => Ok(Parts::Records(learner, records)),
        },
        (None, None) if whole.format == 1 => Ok(Parts::Bare),
        (kind, _) => {
            let found: String = kind.unwrap_or("nothing").chars().take(LONGEST_NAME).collect();
            Err(fault(format!(
                "found the kind \"{found}\", expected \"{KIND}\" with its records: a file that this room saved"
            )))
        }
    }
}

fn of_json(line: usize, why: &serde_json::Error) -> Fault {
    // The place stands before the sentence here.
    let says = why.to_string();
    let says = says.rsplit_once(" at line ").map_or(says.as_str(), |(says, _)| says);
    let cut = if why.is_eof() { ": it did not come whole" } else { "" };
    let says = format!("column {}: {says}{cut}", why.column());
    Fault { line: line + why.line().max(1) - 1, says }
}

fn bare<C: DeserializeOwned>(text: &str) -> Result<Record<C>, serde_json::Error> {
    let bare: Bare<C> = serde_json::from_str(text)?;
    // The same file brought in twice is the same attempt.
    let mut name = Fnv::new();
    name.text(text);
    let (address, case) = match bare.case {
        BareCase::Address(address) => (Some(address), None),
        BareCase::Written(case) => (None, Some(case)),
    };
    let at = address.map_or_else(|| "#/".to_owned(), |address| format!("#/case/{address}"));
    let head = Head {
        format: RECORD_FORMAT,
        id: format!("file-{:016x}", name.value()),
        at,
        address,
        set: None,
        local: bare.local,
        mode: bare.mode,
        number: 1,
        help: Vec::new(),
        sitting: None,
        opened_before: false,
        limit: None,
        begun: None,
        ended: None,
        rule_set: bare.rule_set,
        verdicts: bare.verdicts,
        faults: String::new(),
    };
    let events = bare.events.into_iter().map(|what| Done { at: None, what }).collect();
    Ok(Record { head, events, case, note: String::new() })
}

/// A record that can be kept, or everything that is wrong with it.
fn sound<C>(line: usize, mut record: Record<C>) -> Result<Record<C>, Vec<Fault>> {
    let faults = faults_of(&record);
    if !faults.is_empty() {
        return Err(faults.into_iter().map(|says| Fault { line, says }).collect());
    }
    record.head.format = RECORD_FORMAT;
    record.note = record.note.chars().take(LONGEST_NOTE).collect();
    Ok(record)
}

fn faults_of<C>(record: &Record<C>) -> Vec<String> {
    let head = &record.head;
    let mut faults = Vec::new();
    if head.format > RECORD_FORMAT {
        faults.push(format!("found an attempt of format {}, expected at most {RECORD_FORMAT}: open it with a newer version of this room", head.format));
    }
    if !is_name(&head.id) || head.sitting.as_deref().is_some_and(|name| !is_name(name)) {
        let found: String = head.id.chars().take(LONGEST_NAME).collect();
        faults.push(format!("found the name \"{found}\", expected letters, digits and hyphens, {LONGEST_NAME} at most"));
    }
    if head.at.len() > 200 || !head.at.starts_with("#/") {
        faults.push(
            "found no place in the room, expected a fragment such as #/case/1.1.2024.0".to_owned(),
        );
    }
    if head.address.is_none() && record.case.is_none() {
        faults.push("found neither the address of a case nor a case written out".to_owned());
    }
    if record.events.is_empty() || record.events.len() > MOST_EVENTS {
        faults.push(format!("found {} events, expected 1 to {MOST_EVENTS}", record.events.len()));
    }
    if let Err((rule, why)) = head.local.check() {
        faults.push(format!("the protocol of its set: {rule}: {why}"));
    }
    for (place, done) in record.events.iter().enumerate() {
        if let Err(why) = Event::try_from(&done.what) {
            faults.push(format!("event {}: {why}", place + 1));
        }
    }
    faults.truncate(MOST_FAULTS);
    faults
}

/// Whether this can be the name of an attempt or a sitting.
#[must_use]
pub fn is_name(text: &str) -> bool {
    let allowed = |byte: u8| byte.is_ascii_alphanumeric() || byte == b'-';
    !text.is_empty() && text.len() <= LONGEST_NAME && text.bytes().all(allowed)
}

/// Writes a file of records, each as text; a learner's code that can be none is left out.
#[must_use]
pub fn write(learner: Option<&str>, records: &[String]) -> String {
    let learner = learner.filter(|code| is_name(code));
    let learner = learner.map_or_else(String::new, |code| format!("\"learner\":\"{code}\","));
    format!(
        "{{\"kind\":\"{KIND}\",\"format\":{RECORD_FORMAT},\"caution\":\"{CAUTION}\",{learner}\"records\":[\n{}\n]}}\n",
        records.join(",\n")
    )
}

/// One record as text.
#[must_use]
pub fn record<C: Serialize>(record: &Record<C>) -> String {
    // Numbers, keys and texts: nothing that JSON cannot hold.
    serde_json::to_string(record).unwrap_or_default()
}
