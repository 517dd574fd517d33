//! What a package tells its host, in both editions of SCORM from one description: names and values in
//! the order in which they are set.
//!
//! - **Status.** In the older edition one word: *incomplete* until every case is at its end, then
//!   *completed*, or *passed* or *failed* where there is a mark to reach. In the newer one completion,
//!   success and the share of cases are told apart.
//! - **Score.** The mean mark, 0 to 100, once every case is at its end; before that none.
//! - **Interactions.** One for each step that was carried out, `CASE-STEP`, and, once the case is at
//!   its end, one for each fault that its debrief charges, `CASE-rule-RULE`. Both are of the type
//!   *choice*: the letter is the worst word that counts (*a* ideal, *b* acceptable, *c* debated, *d*
//!   outside: suboptimal, *e* outside: likely to compromise, *u* unsafe), the expected one *a*; the
//!   result is right unless that word is a fault, and *neutral* while the case is not at its end or
//!   where nothing counted. They stand in order of time, so that what is set again keeps its number.
//!   A fault weighs what it costs, 3 or 1; a step weighs nothing by itself.
//! - **Exit.** *suspend* until every case is at its end.
//!
//! A host that opens a package only to look back (`review`, `browse`) is told nothing: that is for the
//! caller to hold.

mod limits;

pub use limits::{Breach, Form, check, form};

use super::outcome::{CaseOutcome, Outcome, Success, Unsayable};
use super::time::{duration, stamp, time_of_day, timespan};
use core::fmt;
use engine::rules::Zone;

/// An edition of SCORM.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Edition {
    /// SCORM 1.2.
    Older,
    /// SCORM 2004, 4th edition.
    Newer,
}

impl Edition {
    /// Its name.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Older => "SCORM 1.2",
            Self::Newer => "SCORM 2004 4th Edition",
        }
    }

    /// How many characters of attempts a host keeps.
    #[must_use]
    pub const fn most_kept(self) -> usize {
        match self {
            Self::Older => 4096,
            Self::Newer => 64_000,
        }
    }
}

/// Why nothing is handed in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refused {
    /// The outcome says what nobody can be told.
    Unsayable(Unsayable),
    /// A value is none that the edition takes.
    Breach(Breach),
}

impl fmt::Display for Refused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Unsayable(why) => why.fmt(f),
            Self::Breach(why) => why.fmt(f),
        }
    }
}

impl core::error::Error for Refused {}

/// A name of the data model and its value.
pub type Write = (String, String);

/// What to set, in this order; every value is held to the limits of the edition before any is set.
///
/// # Errors
/// [`Refused`] with the first thing that cannot be handed in.
pub fn writes(outcome: &Outcome, edition: Edition) -> Result<Vec<Write>, Refused> {
    outcome.check().map_err(Refused::Unsayable)?;
    let mut list = List(Vec::new());
    match edition {
        Edition::Older => list.older(outcome),
        Edition::Newer => list.newer(outcome),
    }
    check(edition, &list.0).map_err(Refused::Breach)?;
    Ok(list.0)
}

/// Of what is to be set now, what was not set to the same value before: a package hands in after every
/// step, and a host need not hear all of it again.
#[must_use]
pub fn news(before: &[Write], now: &[Write]) -> Vec<Write> {
    now.iter().filter(|write| !before.contains(write)).cloned().collect()
}

struct List(Vec<Write>);

/// One thing that was done, as both editions tell it.
struct Interaction {
    id: String,
    at: Option<u64>,
    spent: Option<u64>,
    worst: Option<Zone>,
    weight: &'static str,
    says: String,
}

impl List {
    fn set(&mut self, name: &str, value: impl Into<String>) {
        self.0.push((name.to_owned(), value.into()));
    }

    fn older(&mut self, outcome: &Outcome) {
        if let Some(mark) = outcome.mark() {
            self.score("cmi.core.score", mark);
        }
        let status = match outcome.success() {
            _ if !outcome.is_complete() => "incomplete",
            Success::Unknown => "completed",
            Success::Passed => "passed",
            Success::Failed => "failed",
        };
        self.set("cmi.core.lesson_status", status);
        self.set("cmi.core.lesson_location", &*outcome.place);
        self.set("cmi.suspend_data", &*outcome.kept.text);
        self.set("cmi.core.session_time", timespan(outcome.session));
        for (number, one) in interactions(outcome).into_iter().enumerate() {
            let mut set = |part: &str, value: String| {
                self.set(&format!("cmi.interactions.{number}.{part}"), value);
            };
            set("id", one.id);
            if let Some(at) = one.at {
                set("time", time_of_day(at));
            }
            set("type", "choice".to_owned());
            set("correct_responses.0.pattern", letter(Zone::Ideal).to_owned());
            set("weighting", one.weight.to_owned());
            if let Some(worst) = one.worst {
                set("student_response", letter(worst).to_owned());
            }
            set("result", result(one.worst, "wrong").to_owned());
            if let Some(spent) = one.spent {
                set("latency", timespan(spent));
            }
        }
        self.set("cmi.core.exit", if outcome.is_complete() { "" } else { "suspend" });
    }

    fn newer(&mut self, outcome: &Outcome) {
        let complete = outcome.is_complete();
        self.set("cmi.completion_status", if complete { "completed" } else { "incomplete" });
        self.set(
            "cmi.success_status",
            match outcome.success() {
                Success::Unknown => "unknown",
                Success::Passed => "passed",
                Success::Failed => "failed",
            },
        );
        self.set("cmi.progress_measure", decimal(outcome.progress(), 4));
        if let Some(mark) = outcome.mark() {
            self.set("cmi.score.scaled", decimal(mark / 100.0, 4));
            self.score("cmi.score", mark);
        }
        self.set("cmi.location", &*outcome.place);
        self.set("cmi.suspend_data", &*outcome.kept.text);
        self.set("cmi.session_time", duration(outcome.session));
        for (number, one) in interactions(outcome).into_iter().enumerate() {
            let mut set = |part: &str, value: String| {
                self.set(&format!("cmi.interactions.{number}.{part}"), value);
            };
            set("id", one.id);
            set("type", "choice".to_owned());
            if let Some(at) = one.at {
                set("timestamp", stamp(at));
            }
            set("correct_responses.0.pattern", letter(Zone::Ideal).to_owned());
            set("weighting", one.weight.to_owned());
            if let Some(worst) = one.worst {
                set("learner_response", letter(worst).to_owned());
            }
            set("result", result(one.worst, "incorrect").to_owned());
            if let Some(spent) = one.spent {
                set("latency", duration(spent));
            }
            set("description", one.says);
        }
        self.set("cmi.exit", if complete { "normal" } else { "suspend" });
    }

    fn score(&mut self, name: &str, mark: f64) {
        self.set(&format!("{name}.raw"), decimal(mark, 2));
        self.set(&format!("{name}.min"), "0");
        self.set(&format!("{name}.max"), "100");
    }
}

/// A number with so many decimals at most, without zeros at its end.
fn decimal(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

const fn letter(zone: Zone) -> &'static str {
    match zone {
        Zone::Ideal => "a",
        Zone::Acceptable => "b",
        Zone::Debated => "c",
        Zone::Suboptimal => "d",
        Zone::Compromising => "e",
        Zone::Unsafe => "u",
    }
}

fn result(worst: Option<Zone>, wrong: &'static str) -> &'static str {
    match worst {
        None => "neutral",
        Some(zone) if zone.is_fault() => wrong,
        Some(_) => "correct",
    }
}

/// All interactions in order of time; what has no time stands behind what has one.
fn interactions(outcome: &Outcome) -> Vec<Interaction> {
    let when = |one: &Interaction| one.at.unwrap_or(u64::MAX);
    let mut all: Vec<Interaction> = Vec::new();
    for one in outcome.cases.iter().flat_map(of_case) {
        let at = all.partition_point(|other| when(other) <= when(&one));
        all.insert(at, one);
    }
    all
}

fn of_case(case: &CaseOutcome) -> Vec<Interaction> {
    let name = &case.name;
    let steps = case.steps.iter().map(|step| {
        // Before the end a later step may still change what is said of this one.
        let worst = step.counts.worst().filter(|_| case.is_over);
        let said = worst.map_or("not judged", Zone::word);
        Interaction {
            id: format!("{name}-{}", step.step.key()),
            at: step.at,
            spent: Some(step.spent).filter(|spent| *spent > 0),
            worst,
            weight: "0",
            says: format!("{}: {said}", step.step.label()),
        }
    });
    let faults = case.faults.iter().filter(|_| case.is_over).map(|fault| Interaction {
        id: format!("{name}-rule-{}", fault.rule),
        at: case.ended,
        spent: None,
        worst: Some(fault.zone),
        weight: if fault.zone == Zone::Suboptimal { "1" } else { "3" },
        says: format!("{}: {}: {}", fault.step.label(), fault.rule, fault.zone.word()),
    });
    steps.chain(faults).collect()
}

#[cfg(test)]
mod tests {
    use super::Edition::{Newer, Older};
    use super::*;
    use crate::handing::trial::outcome;

    fn value<'a>(writes: &'a [Write], name: &str) -> Option<&'a str> {
        writes.iter().find(|(one, _)| one == name).map(|(_, value)| value.as_str())
    }

    #[test]
    fn a_finished_set_is_told_in_both_editions() {
        let mut told = outcome(3);
        told.cases.iter_mut().for_each(|case| (case.mark, case.hurts) = (Some(80.5), Vec::new()));
        let [older, newer] = [Older, Newer].map(|edition| writes(&told, edition).unwrap());
        for (name, expected) in [
            ("cmi.core.score.raw", "80.5"),
            ("cmi.core.score.max", "100"),
            ("cmi.core.lesson_status", "passed"),
            ("cmi.core.session_time", "0000:12:34.56"),
            ("cmi.core.exit", ""),
            ("cmi.interactions.0.id", "case-1-chart"),
        ] {
            assert_eq!(value(&older, name), Some(expected), "{name}");
        }
        for (name, expected) in [
            ("cmi.completion_status", "completed"),
            ("cmi.success_status", "passed"),
            ("cmi.progress_measure", "1"),
            ("cmi.score.scaled", "0.805"),
            ("cmi.score.raw", "80.5"),
            ("cmi.session_time", "PT12M34.56S"),
            ("cmi.exit", "normal"),
            ("cmi.interactions.0.type", "choice"),
        ] {
            assert_eq!(value(&newer, name), Some(expected), "{name}");
        }
        assert_eq!(older.last().unwrap().0, "cmi.core.exit");
        let ids = |list: &[Write]| list.iter().filter(|(name, _)| name.ends_with(".id")).count();
        let faults: usize =
            told.cases.iter().map(|case| case.faults.len() + case.steps.len()).sum();
        assert_eq!((ids(&older), ids(&newer)), (faults, faults));
        assert!(older.iter().any(|(_, value)| value == "wrong"));
    }

    #[test]
    fn an_unsafe_act_fails_the_set_whatever_the_mark() {
        let mut told = outcome(2);
        told.cases.iter_mut().for_each(|case| (case.mark, case.hurts) = (Some(100.0), Vec::new()));
        told.cases[0].hurts.push("drilling-into-the-canal");
        assert_eq!(value(&writes(&told, Older).unwrap(), "cmi.core.lesson_status"), Some("failed"));
        assert_eq!(value(&writes(&told, Newer).unwrap(), "cmi.success_status"), Some("failed"));
        told.pass = None;
        let older = writes(&told, Older).unwrap();
        assert_eq!(value(&older, "cmi.core.lesson_status"), Some("completed"));
    }

    #[test]
    fn an_unfinished_set_is_suspended_without_a_mark_and_judges_no_open_case() {
        let mut told = outcome(3);
        told.cases[2].is_over = false;
        let [older, newer] = [Older, Newer].map(|edition| writes(&told, edition).unwrap());
        assert_eq!(value(&older, "cmi.core.lesson_status"), Some("incomplete"));
        assert_eq!(value(&older, "cmi.core.exit"), Some("suspend"));
        assert_eq!(value(&newer, "cmi.progress_measure"), Some("0.6667"));
        assert_eq!(value(&newer, "cmi.success_status"), Some("unknown"));
        for list in [&older, &newer] {
            assert!(list.iter().all(|(name, _)| !name.contains("score")));
            assert!(list.iter().all(|(_, value)| !value.starts_with("case-3-rule")));
            let number = list.iter().find(|(_, value)| value == "case-3-chart").unwrap();
            let result = number.0.replace("id", "result");
            assert_eq!(value(list, &result), Some("neutral"));
            assert_eq!(value(list, &number.0.replace("id", "student_response")), None);
        }
    }

    #[test]
    fn what_is_set_again_keeps_its_number() {
        let whole = outcome(3);
        let mut part = whole.clone();
        let last = &mut part.cases[2];
        last.steps.truncate(4);
        last.is_over = false;
        let ids = |told: &Outcome| -> Vec<String> {
            let all = writes(told, Newer).unwrap();
            all.into_iter().filter(|(name, _)| name.ends_with(".id")).map(|(_, id)| id).collect()
        };
        let (before, after) = (ids(&part), ids(&whole));
        assert_eq!(before, after[..before.len()]);
        let [before, after] = [&part, &whole].map(|told| writes(told, Newer).unwrap());
        let news = news(&before, &after);
        assert!(news.len() < after.len() / 2 && !news.is_empty());
        assert!(news.iter().all(|write| after.contains(write) && !before.contains(write)));
    }

    #[test]
    fn what_an_edition_cannot_hold_hands_in_nothing() {
        let mut told = outcome(1);
        told.kept.text = "x".repeat(4097);
        assert!(matches!(writes(&told, Older), Err(Refused::Breach(_))));
        assert!(writes(&told, Newer).is_ok());
        told.place = "x".repeat(1001);
        let says = writes(&told, Newer).unwrap_err().to_string();
        assert!(says.contains("cmi.location") && says.contains("1000"), "{says}");
        told.learner = "Ada Lovelace".to_owned();
        assert!(matches!(writes(&told, Newer), Err(Refused::Unsayable(_))));
    }
}
