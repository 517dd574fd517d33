//! How hard a case is, from 0 to 1: how little room it leaves for an implant, how many rules are in
//! play, and how much of what they rest on is hidden.
//!
//! All three are read off the plan that proves the case solvable, on the judge itself. The scales and
//! the weights are ours; that the number means something is checked against how many plans with some
//! of their answers drawn at random are sound (`tests/difficulty`).

use super::proof::{Workshop, left_by};
use super::slips::slips;
use crate::chart::{Case, Fact, Source};
use crate::plan::choices::Examination;
use crate::plan::{Decision, Draft, Kind, Plan, Step, Value};
use crate::rules::{Known, Rule};
use crate::units::{Mm, decimal};
use core::fmt;
use core::str::FromStr;
use serde::{Deserialize, Serialize};
use std::collections::BTreeMap;

/// What the parts weigh: room, rules, hidden. Rules weigh most, because more of a plan's answers can
/// break one than can take an implant out of its room.
const WEIGHTS: [f64; 3] = [0.2, 0.5, 0.3];
/// An implant that can be moved so far is placed half as easily as one that cannot go wrong. Mm.
const HALF_ROOM: f64 = 1.0;
/// More rules than this have not been seen to turn on single answers of one plan.
const MOST_RULES: f64 = 50.0;
/// More hidden facts than this have not been seen to matter at once.
const MOST_HIDDEN: f64 = 15.0;
/// How far an implant is followed each way, tenths of a millimetre.
const FARTHEST: i32 = 30;

/// How hard a case is, with its parts.
#[derive(Debug, Clone, PartialEq)]
pub struct Difficulty {
    /// How far the implant of the sound plan may be moved, all else as it is, before a rule of where
    /// implants stand faults it: across in the section, along its axis. Millimetres, each way followed
    /// for 3 mm. `None` where that plan places none.
    pub room: Option<[Mm; 2]>,
    /// Rules that fault the sound plan with one answer changed, by their ids.
    pub rules: Vec<&'static Rule>,
    /// What these rest on and neither the chart tells unasked nor a look shows.
    pub hidden: Vec<Fact>,
}

impl Difficulty {
    /// Room, rules and hidden facts, each from 0 (easy) to 1.
    #[must_use]
    pub fn parts(&self) -> [f64; 3] {
        let room = self
            .room
            .map_or(0.0, |[across, along]| HALF_ROOM / (HALF_ROOM + across.get().min(along.get())));
        let share = |count: usize, most: f64| {
            // Far below 2^32: rules and facts are closed lists.
            (f64::from(u32::try_from(count).unwrap_or(u32::MAX)) / most).min(1.0)
        };
        [room, share(self.rules.len(), MOST_RULES), share(self.hidden.len(), MOST_HIDDEN)]
    }

    /// The number, 0 to 1. Less room, one more rule or one more hidden fact never makes it less.
    #[must_use]
    pub fn value(&self) -> f64 {
        self.parts().iter().zip(WEIGHTS).map(|(part, weight)| part * weight).sum()
    }

    /// In one sentence: *0.62: 0.4 mm of room, 41 rules in play, 9 hidden facts.*
    #[must_use]
    pub fn words(&self) -> String {
        let room = match self.room {
            Some([across, along]) => format!("{:.1} mm of room", across.get().min(along.get())),
            None => "no implant to place".to_owned(),
        };
        let count = |count: usize, one: &str, more: &str| {
            format!("{count} {}", if count == 1 { one } else { more })
        };
        format!(
            "{:.2}: {room}, {} in play, {}",
            self.value(),
            count(self.rules.len(), "rule", "rules"),
            count(self.hidden.len(), "hidden fact", "hidden facts")
        )
    }
}

/// How hard a case is whose sound plan this is; `None` where the draft is no whole plan.
#[must_use]
pub fn difficulty(case: &Case, sound: &Draft) -> Option<Difficulty> {
    let plan = Plan::from_draft(sound, case).ok()?;
    let left = left_by(case, sound);
    let site = Workshop::of(case, &left);
    let rules = in_play(case, sound);
    let room = moved(&plan).map(|placed| {
        [placed.across, placed.along].map(|decision| play(&site, sound, decision, placed.last))
    });
    Some(Difficulty { room, hidden: hidden(case, &rules), rules })
}

/// What moves an implant, and the last step of the rules that judge where it stands.
struct Moved {
    across: Decision,
    along: Decision,
    last: Step,
}

fn moved(plan: &Plan) -> Option<Moved> {
    use Decision::{Depth, LateDepth, LateFacial, OffsetFacial};
    if plan.implant_in_place().is_some() {
        return Some(Moved { across: OffsetFacial, along: Depth, last: Step::Seating });
    }
    let late = plan.later.placement.is_some();
    late.then_some(Moved { across: LateFacial, along: LateDepth, last: Step::LatePlacement })
}

/// How far one number of the sound plan may go both ways together.
fn play(site: &Workshop<'_>, sound: &Draft, decision: Decision, last: Step) -> Mm {
    let placed = [decision.step(), last];
    let Some(Value::Number(own)) = sound.value(decision) else { return Mm::ZERO };
    let stands = |count: i32| {
        let mut other = sound.clone();
        let fits = other.choose(decision, Value::Number(count)).is_ok();
        // How much graft goes beside it is chosen after that.
        fits && site.faults(&other).is_some_and(|faults| {
            let of_place = |rule: &Rule| rule.step <= last && reads_a_place(rule, placed[0]);
            !faults.iter().any(|fault| of_place(fault.rule))
        })
    };
    let free = |way: i32| (1..=FARTHEST).take_while(|k| stands(own + way * k)).last().unwrap_or(0);
    Mm::from_tenths(free(-1) + free(1))
}

/// Whether a rule reads any number that places an implant in this step.
fn reads_a_place(rule: &Rule, step: Step) -> bool {
    let number = |read: &Decision| matches!(read.entry().kind, Kind::Number(_));
    rule.reads.iter().any(|read| read.step() == step && number(read))
}

/// Rules that fault the plan once one of its answers is another, by their ids.
fn in_play(case: &Case, sound: &Draft) -> Vec<&'static Rule> {
    let found: BTreeMap<&'static str, &'static Rule> =
        slips(case, sound).iter().map(|slip| (slip.rule.id, slip.rule)).collect();
    found.into_values().collect()
}

/// What the rules rest on that has to be asked or looked for.
fn hidden(case: &Case, rules: &[&'static Rule]) -> Vec<Fact> {
    let nothing = Plan::default();
    let known = Known::of(case, &nothing);
    let plain = |fact: Fact| fact.shown_by().contains(&Source::Examination(Examination::Look));
    let rests = |fact: Fact| rules.iter().any(|rule| rule.rests_on.contains(&fact));
    Fact::ALL
        .iter()
        .copied()
        .filter(|fact| rests(*fact) && !known.is_seen(*fact) && !plain(*fact))
        .collect()
}

/// A stretch of difficulty, in hundredths: what sets and fresh cases ask for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(try_from = "[u8; 2]", into = "[u8; 2]")]
pub struct Within {
    from: u8,
    to: u8,
}

/// Why two numbers are no stretch of difficulty.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotWithin {
    found: String,
}

impl fmt::Display for NotWithin {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "found the difficulty {}, expected two numbers from 0 to 1, the smaller first and at least 0.05 apart, such as 0.3-0.6",
            self.found
        )
    }
}

impl core::error::Error for NotWithin {}

impl Within {
    /// From one number to another, both 0 to 1; hundredths count.
    ///
    /// # Errors
    /// [`NotWithin`] where they are not, or where less than 0.05 lies between them.
    pub fn new(from: f64, to: f64) -> Result<Self, NotWithin> {
        let wrong = || NotWithin { found: format!("{from} to {to}") };
        let whole = |number: f64| {
            (0..=100_u8).find(|count| (f64::from(*count) / 100.0 - number).abs() < 0.005)
        };
        let (from, to) = whole(from).zip(whole(to)).ok_or_else(wrong)?;
        if to < from + 5 { Err(wrong()) } else { Ok(Self { from, to }) }
    }

    /// Both ends.
    #[must_use]
    pub fn ends(self) -> [f64; 2] {
        [self.from, self.to].map(|count| f64::from(count) / 100.0)
    }

    /// Whether it holds a difficulty.
    #[must_use]
    pub fn holds(self, difficulty: f64) -> bool {
        let [from, to] = self.ends();
        (from..=to).contains(&difficulty)
    }
}

impl TryFrom<[u8; 2]> for Within {
    type Error = NotWithin;

    fn try_from([from, to]: [u8; 2]) -> Result<Self, NotWithin> {
        Self::new(f64::from(from) / 100.0, f64::from(to) / 100.0)
    }
}

impl From<Within> for [u8; 2] {
    fn from(within: Within) -> Self {
        [within.from, within.to]
    }
}

impl fmt::Display for Within {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let [from, to] = self.ends();
        write!(f, "{from}-{to}")
    }
}

impl FromStr for Within {
    type Err = NotWithin;

    fn from_str(text: &str) -> Result<Self, NotWithin> {
        let wrong =
            || NotWithin { found: format!("\"{}\"", text.chars().take(30).collect::<String>()) };
        let (from, to) = text.split_once('-').ok_or_else(wrong)?;
        let (Some(from), Some(to)) = (decimal(from.trim()), decimal(to.trim())) else {
            return Err(wrong());
        };
        Self::new(from, to)
    }
}

#[cfg(test)]
mod tests;
