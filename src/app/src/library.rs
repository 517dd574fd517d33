//! Cases for the bench: generated from an address, or out of a shipped set.

use crate::judging::Judging;
use crate::route::{CaseRoute, From};
use engine::cases;
use engine::chart::{Address, Case};
use engine::debrief::counted;
use engine::rules::{Level, Local};
use engine::session::{Mode, Shown};
use serde::{Deserialize, Serialize};
use std::rc::Rc;

/// The shipped sets.
#[derive(Debug, Clone, PartialEq)]
pub enum Library {
    /// Not here yet.
    Coming,
    /// Could not be fetched or read.
    Trouble(String),
    /// Here.
    Here(Rc<Vec<ShippedSet>>),
}

/// A set as the build ships it, as a link holds it, and as it lies on the desk of who writes it.
#[derive(Debug, Clone, PartialEq, Default, Deserialize, Serialize)]
pub struct ShippedSet {
    /// Its file's name without ending, or the name that it has got here.
    #[serde(default)]
    pub name: String,
    /// Its title.
    pub title: String,
    /// What it is for.
    pub aim: String,
    /// For whom.
    pub level: String,
    /// Who does its cases: `worked` nobody, as they are shown; else the learner, with verdicts at the end
    /// (`assessment`) or, at anything else, as each step is carried out.
    #[serde(default)]
    pub mode: String,
    /// What it decides otherwise than the rules, as text: read by what comes with the judge; empty
    /// where it decides nothing.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub protocol: String,
    /// Whether each learner gets cases of their own in place of these.
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub forms: bool,
    /// Under what conditions it is sat, as text: read by what comes with the judge; empty where there
    /// are none.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub conditions: String,
    /// The word that its verdicts wait for: for who writes the set, never handed out.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub word: String,
    /// The code that its link opens with, likewise; empty where it opens for everybody.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub code: String,
    /// Titles of its cases.
    pub cases: Vec<String>,
    /// Their addresses, in the same order.
    pub addresses: Vec<Address>,
    /// What to ask after each: for who writes the set, never handed out by link.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub asks: Vec<String>,
}

impl ShippedSet {
    /// For whom it is.
    #[must_use]
    pub fn whom(&self) -> Level {
        if self.level == "resident" { Level::Resident } else { Level::Student }
    }

    /// For whom it is and how long, in words.
    #[must_use]
    pub fn about(&self) -> String {
        format!("For {}s · {}", self.level, counted(self.cases.len(), "case"))
    }

    /// The way to the case at a place, from 1, as the set has it sat.
    #[must_use]
    pub fn case(&self, place: usize) -> CaseRoute {
        let from = From::Set(self.name.clone(), place);
        let shown = self.is_worked().then_some(Shown::Whole);
        CaseRoute { mode: self.when(), shown, ..CaseRoute::study(from) }
    }

    /// Whether its cases are shown, act by act.
    #[must_use]
    pub fn is_worked(&self) -> bool {
        self.mode == "worked"
    }

    /// When its verdicts come.
    #[must_use]
    pub fn when(&self) -> Mode {
        if self.mode == "assessment" { Mode::Assessment } else { Mode::Study }
    }
}

/// Opens a case; `Ok(None)` while its set, or for all but the address of a teaching case the judge, is
/// coming.
///
/// # Errors
/// A sentence that says why it cannot be opened and what to do.
pub fn open(
    asked: &CaseRoute,
    library: &Library,
    judging: Option<Judging>,
) -> Result<Option<Case>, String> {
    if asked.shown.is_some() && judging.is_none() {
        // What is shown of it comes with the judge.
        return Ok(None);
    }
    match &asked.from {
        From::Seed(seed, within) => {
            judging.map(|judging| (judging.generate)(*seed, *within)).transpose()
        }
        From::Address(address) => replayed(*address, judging),
        From::Set(name, place) => match of_set(name, *place, library)? {
            None => Ok(None),
            Some((set, address)) => {
                Ok(replayed(address, judging)?.and_then(|case| under(case, set, judging)))
            }
        },
    }
}

/// Teaching cases are drawn here and now; what draws any other comes with the judge, so that the
/// first visit does not carry it.
fn replayed(address: Address, judging: Option<Judging>) -> Result<Option<Case>, String> {
    if !cases::is_drawn_with_the_judge(address) {
        return cases::teaching_at(address).map(Some).map_err(|fault| fault.to_string());
    }
    judging.map(|judging| (judging.replay)(address)).transpose()
}

/// The case as its set gives it; `None` while who reads what the set decides is coming.
fn under(case: Case, set: &ShippedSet, judging: Option<Judging>) -> Option<Case> {
    let mut local = Local { level: Some(set.whom()), ..Local::NONE };
    if !set.conditions.is_empty() {
        // Who knows whether the set has been begun comes with it.
        judging?;
    }
    if !set.protocol.is_empty() {
        local.protocol = (judging?.decides)(&set.protocol);
    }
    Some(case.under(local))
}

/// When the verdicts of a case come: as its set has it where that holds them back, else as it was asked
/// for.
pub fn mode(asked: &CaseRoute, library: &Library) -> Mode {
    let From::Set(name, place) = &asked.from else { return asked.mode };
    match of_set(name, *place, library) {
        Ok(Some((set, _))) if set.when() == Mode::Assessment => Mode::Assessment,
        _ => asked.mode,
    }
}

fn of_set<'a>(
    name: &str,
    place: usize,
    library: &'a Library,
) -> Result<Option<(&'a ShippedSet, Address)>, String> {
    let sets = match library {
        Library::Coming => return Ok(None),
        Library::Trouble(why) => return Err(why.clone()),
        Library::Here(sets) => sets,
    };
    let set = sets.iter().find(|set| set.name == name).ok_or_else(|| {
        let names: Vec<_> = sets.iter().map(|set| set.name.as_str()).collect();
        format!("found the set \"{name}\", expected one of {}", names.join(", "))
    })?;
    let case = set.addresses.get(place - 1).ok_or_else(|| {
        format!("found case {place} of \"{}\", expected 1 to {}", set.title, set.addresses.len())
    })?;
    Ok(Some((set, *case)))
}
