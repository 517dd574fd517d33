//! What each edition lets a package set: our own table, because hosts are laxer than the standards and
//! one host's patience is another's refusal.
//!
//! From the SCORM 1.2 Run-Time Environment (ADL, 2001) and the SCORM 2004 4th Edition Run-Time
//! Environment (ADL, 2009); forms and lengths from memory, held to the package `scorm-again` in
//! `tests/outside` as far as that goes. Stricter than either where both are kept to: identifiers are
//! letters, digits and hyphens.

use super::Edition;
use core::fmt;

/// The form of a value.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Form {
    /// One of these.
    Words(&'static [&'static str]),
    /// Characters, so many at most, none of them a control character.
    Text(usize),
    /// An identifier: letters, digits and hyphens, 255 at most.
    Id,
    /// A number between these, with so many decimals at most.
    Number(f64, f64, usize),
    /// *HHHH:MM:SS.SS*, two to four digits of hours.
    Timespan,
    /// *HH:MM:SS.SS*.
    TimeOfDay,
    /// *PT1H2M3.45S*.
    Duration,
    /// *2026-11-24T14:03:59.00Z*.
    Stamp,
    /// One letter that stands for a choice.
    Letter,
}

type Row = (&'static str, Form);

const MARK: Form = Form::Number(0.0, 100.0, 2);

/// SCORM 1.2; `#` is a whole number.
const OLDER: &[Row] = &[
    ("cmi.core.score.raw", MARK),
    ("cmi.core.score.min", MARK),
    ("cmi.core.score.max", MARK),
    (
        "cmi.core.lesson_status",
        Form::Words(&["passed", "completed", "failed", "incomplete", "browsed"]),
    ),
    ("cmi.core.lesson_location", Form::Text(255)),
    ("cmi.suspend_data", Form::Text(4096)),
    ("cmi.core.session_time", Form::Timespan),
    ("cmi.core.exit", Form::Words(&["suspend", "logout", "time-out", ""])),
    ("cmi.interactions.#.id", Form::Id),
    ("cmi.interactions.#.time", Form::TimeOfDay),
    ("cmi.interactions.#.type", Form::Words(&["choice", "performance", "numeric"])),
    ("cmi.interactions.#.correct_responses.#.pattern", Form::Letter),
    ("cmi.interactions.#.weighting", Form::Number(0.0, 100.0, 2)),
    ("cmi.interactions.#.student_response", Form::Letter),
    ("cmi.interactions.#.result", Form::Words(&["correct", "wrong", "unanticipated", "neutral"])),
    ("cmi.interactions.#.latency", Form::Timespan),
];

/// SCORM 2004, 4th edition.
const NEWER: &[Row] = &[
    (
        "cmi.completion_status",
        Form::Words(&["completed", "incomplete", "not attempted", "unknown"]),
    ),
    ("cmi.success_status", Form::Words(&["passed", "failed", "unknown"])),
    ("cmi.progress_measure", Form::Number(0.0, 1.0, 7)),
    ("cmi.score.scaled", Form::Number(-1.0, 1.0, 7)),
    ("cmi.score.raw", MARK),
    ("cmi.score.min", MARK),
    ("cmi.score.max", MARK),
    ("cmi.location", Form::Text(1000)),
    ("cmi.suspend_data", Form::Text(64_000)),
    ("cmi.session_time", Form::Duration),
    ("cmi.exit", Form::Words(&["suspend", "normal", "logout", "time-out", ""])),
    ("cmi.interactions.#.id", Form::Id),
    ("cmi.interactions.#.type", Form::Words(&["choice", "performance", "numeric"])),
    ("cmi.interactions.#.timestamp", Form::Stamp),
    ("cmi.interactions.#.correct_responses.#.pattern", Form::Letter),
    ("cmi.interactions.#.weighting", Form::Number(0.0, 100.0, 2)),
    ("cmi.interactions.#.learner_response", Form::Letter),
    (
        "cmi.interactions.#.result",
        Form::Words(&["correct", "incorrect", "unanticipated", "neutral"]),
    ),
    ("cmi.interactions.#.latency", Form::Duration),
    ("cmi.interactions.#.description", Form::Text(250)),
];

/// A value that an edition does not take.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Breach {
    /// The name of the element.
    pub element: String,
    /// The value, shortened.
    pub found: String,
    /// What the edition takes there.
    pub expected: String,
}

impl fmt::Display for Breach {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self { element, found, expected } = self;
        write!(
            f,
            "{element}: found \"{found}\", expected {expected}; nothing was handed in: save the results as a file instead"
        )
    }
}

impl core::error::Error for Breach {}

impl fmt::Display for Form {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Words(words) => write!(f, "one of \"{}\"", words.join("\", \"")),
            Self::Text(most) => write!(f, "at most {most} characters, none a control character"),
            Self::Id => f.write_str("letters, digits and hyphens, 255 at most"),
            Self::Number(least, most, decimals) => {
                write!(f, "a number from {least} to {most} with at most {decimals} decimals")
            }
            Self::Timespan => f.write_str("HHHH:MM:SS.SS"),
            Self::TimeOfDay => f.write_str("HH:MM:SS.SS"),
            Self::Duration => f.write_str("PT1H2M3.45S with at most two decimals"),
            Self::Stamp => f.write_str("2026-11-24T14:03:59.00Z, a fraction before the zone"),
            Self::Letter => f.write_str("one small letter"),
        }
    }
}

impl Form {
    /// Whether a value has this form.
    #[must_use]
    pub fn takes(self, value: &str) -> bool {
        match self {
            Self::Words(words) => words.contains(&value),
            Self::Text(most) => {
                value.chars().count() <= most && !value.chars().any(char::is_control)
            }
            Self::Id => {
                let fits = |byte: u8| byte.is_ascii_alphanumeric() || byte == b'-';
                (1..=255).contains(&value.len()) && value.bytes().all(fits)
            }
            Self::Number(least, most, decimals) => {
                number(value, decimals).is_some_and(|number| (least..=most).contains(&number))
            }
            Self::Timespan => ["00:", "000:", "0000:"].iter().any(|hours| {
                is_like(value, &format!("{hours}00:00.00")) && below_sixty(value, hours.len())
            }),
            Self::TimeOfDay => {
                is_like(value, "00:00:00.00") && below_sixty(value, 3) && value < "24"
            }
            Self::Duration => duration(value),
            Self::Stamp => {
                is_like(value, "0000-00-00T00:00:00.00Z")
                    && value.get(11..22).is_some_and(|time| Self::TimeOfDay.takes(time))
                    && value.get(5..10).is_some_and(|day| ("01-01".."12-32").contains(&day))
            }
            Self::Letter => matches!(value.as_bytes(), [b'a'..=b'z']),
        }
    }
}

/// A number as the standards write it: digits, a point, no exponent.
fn number(value: &str, decimals: usize) -> Option<f64> {
    let digits = value.strip_prefix('-').unwrap_or(value);
    let (whole, part) = digits.split_once('.').unwrap_or((digits, "0"));
    let all = |text: &str| !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
    if !all(whole) || !all(part) || part.len() > decimals.max(1) || whole.len() > 9 {
        return None;
    }
    // Few digits: that is exact enough to compare, and the library's own reader weighs in the page.
    let read = |text: &str| {
        text.bytes().fold((0.0, 1.0), |(sum, unit), digit| {
            (sum * 10.0 + f64::from(digit - b'0'), unit * 10.0)
        })
    };
    let (part, unit) = read(part);
    let size = read(whole).0 + part / unit;
    Some(if digits.len() < value.len() { -size } else { size })
}

/// Whether a text is like another one: a digit for each `0`, the rest as it stands.
fn is_like(value: &str, like: &str) -> bool {
    let fits =
        |(one, like): (u8, u8)| if like == b'0' { one.is_ascii_digit() } else { one == like };
    value.len() == like.len() && value.bytes().zip(like.bytes()).all(fits)
}

/// Whether minutes and seconds, which follow so many characters, are below sixty.
fn below_sixty(value: &str, after: usize) -> bool {
    let part = |at: usize| value.get(at..at + 2).is_some_and(|two| two < "60");
    part(after) && part(after + 3)
}

fn duration(value: &str) -> bool {
    let Some(mut rest) = value.strip_prefix("PT").filter(|rest| !rest.is_empty()) else {
        return false;
    };
    for (letter, decimals) in [('H', 0), ('M', 0), ('S', 2)] {
        let Some((count, behind)) = rest.split_once(letter) else { continue };
        let whole = decimals > 0 || !count.contains('.');
        if !whole || count.starts_with('-') || number(count, decimals).is_none() {
            return false;
        }
        rest = behind;
    }
    rest.is_empty()
}

/// The form of an element.
#[must_use]
pub fn form(edition: Edition, element: &str) -> Option<Form> {
    let table = match edition {
        Edition::Older => OLDER,
        Edition::Newer => NEWER,
    };
    let is_number = |part: &str| !part.is_empty() && part.bytes().all(|byte| byte.is_ascii_digit());
    let is_it = |name: &str| {
        let (mut one, mut other) = (element.split('.'), name.split('.'));
        loop {
            match (one.next(), other.next()) {
                (None, None) => return true,
                (Some(part), Some("#")) if is_number(part) => {}
                (Some(part), Some(wanted)) if part == wanted => {}
                _ => return false,
            }
        }
    };
    table.iter().find(|(name, _)| is_it(name)).map(|(_, form)| *form)
}

/// Whether an edition takes these values, in this order.
///
/// # Errors
/// The first [`Breach`]: a value of another form, an element that cannot be set, or an interaction that
/// leaves out a number or sets anything before its identifier.
pub fn check(edition: Edition, writes: &[(String, String)]) -> Result<(), Breach> {
    let mut next = 0;
    for (element, value) in writes {
        let breach = |expected: String| Breach {
            element: element.clone(),
            found: value.chars().take(60).collect(),
            expected,
        };
        let form = form(edition, element)
            .ok_or_else(|| breach(format!("an element that can be set in {}", edition.name())))?;
        if !form.takes(value) {
            return Err(breach(form.to_string()));
        }
        let Some(rest) = element.strip_prefix("cmi.interactions.") else { continue };
        let (number, part) = rest.split_once('.').unwrap_or((rest, ""));
        if part == "id" && number == next.to_string() {
            next += 1;
        } else if next == 0 || number != (next - 1).to_string() || part == "id" {
            return Err(breach(
                "interactions numbered from 0 without a gap, each by its id first".to_owned(),
            ));
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::Edition::{Newer, Older};
    use super::*;

    fn check_one(edition: Edition, element: &str, value: &str) -> Result<(), Breach> {
        let id = ("cmi.interactions.0.id".to_owned(), "a".to_owned());
        check(edition, &[id, (element.to_owned(), value.to_owned())])
    }

    #[test]
    fn what_an_edition_takes_passes() {
        for (edition, element, value) in [
            (Older, "cmi.core.lesson_status", "incomplete"),
            (Older, "cmi.core.score.raw", "59.99"),
            (Older, "cmi.core.session_time", "0000:12:34.56"),
            (Older, "cmi.core.session_time", "12:34:56.00"),
            (Older, "cmi.core.exit", ""),
            (Older, "cmi.interactions.0.time", "23:59:59.99"),
            (Older, "cmi.interactions.0.correct_responses.0.pattern", "a"),
            (Newer, "cmi.score.scaled", "-1"),
            (Newer, "cmi.progress_measure", "0.3333333"),
            (Newer, "cmi.session_time", "PT0S"),
            (Newer, "cmi.session_time", "PT9999H59M59.99S"),
            (Newer, "cmi.interactions.0.timestamp", "2026-11-24T14:03:59.00Z"),
            (Newer, "cmi.interactions.0.result", "incorrect"),
        ] {
            assert_eq!(check_one(edition, element, value), Ok(()), "{element} {value}");
        }
    }

    #[test]
    fn what_a_lax_host_would_take_is_refused_here() {
        let long = |length: usize| "x".repeat(length);
        for (edition, element, value) in [
            (Older, "cmi.suspend_data", long(4097).as_str()),
            (Older, "cmi.core.lesson_location", &long(256)),
            (Older, "cmi.core.lesson_status", "not attempted"),
            (Older, "cmi.core.exit", "normal"),
            (Older, "cmi.core.score.raw", "100.5"),
            (Older, "cmi.core.score.raw", "59,5"),
            (Older, "cmi.core.score.raw", "1e1"),
            (Older, "cmi.core.score.raw", "NaN"),
            (Older, "cmi.core.session_time", "PT1S"),
            (Older, "cmi.core.session_time", "0000:12:34.567"),
            (Older, "cmi.core.session_time", "0000:60:00.00"),
            (Older, "cmi.interactions.0.time", "24:00:00.00"),
            (Older, "cmi.interactions.0.result", "incorrect"),
            (Older, "cmi.interactions.0.id", "case 1"),
            (Older, "cmi.interactions.0.description", "no such element here"),
            (Older, "cmi.completion_status", "completed"),
            (Newer, "cmi.suspend_data", &long(64_001)),
            (Newer, "cmi.location", &long(1001)),
            (Newer, "cmi.completion_status", "complete"),
            (Newer, "cmi.score.scaled", "1.01"),
            (Newer, "cmi.score.scaled", "85"),
            (Newer, "cmi.session_time", "PT1.234S"),
            (Newer, "cmi.session_time", "PT"),
            (Newer, "cmi.session_time", "PT1.5H"),
            (Newer, "cmi.session_time", "PT5M1H"),
            (Newer, "cmi.session_time", "0000:12:34.56"),
            (Newer, "cmi.interactions.0.timestamp", "2026-11-24T14:03:59Z"),
            (Newer, "cmi.interactions.0.timestamp", "2026-13-24T14:03:59.00Z"),
            (Newer, "cmi.interactions.0.result", "wrong"),
            (Newer, "cmi.interactions.0.learner_response", "{\"x\":1}"),
            (Newer, "cmi.interactions.0.description", "two\nlines"),
            (Newer, "cmi.learner_name", "Ada"),
        ] {
            let breach = check_one(edition, element, value).unwrap_err();
            assert_eq!(breach.element, element);
            assert!(breach.to_string().contains("expected"), "{breach}");
        }
    }

    #[test]
    fn interactions_are_dense_and_named_first() {
        let named = |numbers: &[&str]| -> Vec<(String, String)> {
            let element = |part: &&str| (format!("cmi.interactions.{part}"), "choice".to_owned());
            numbers.iter().map(element).collect()
        };
        assert!(check(Older, &named(&["0.id", "0.type", "1.id", "1.type"])).is_ok());
        for wrong in [
            &["1.id"][..],
            &["0.id", "2.id"],
            &["0.type", "0.id"],
            &["0.id", "1.type"],
            &["0.id", "1.id", "0.type"],
            &["0.id", "0.id"],
            &["00.id"],
        ] {
            assert!(check(Newer, &named(wrong)).is_err(), "{wrong:?}");
        }
    }
}
