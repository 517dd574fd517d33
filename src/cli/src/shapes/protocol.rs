//! What a set decides otherwise than the rules, what it may decide otherwise, and how it was checked.

use super::Difficulty;
use engine::debrief::{CAUTION, Line, protocol};
use engine::rules::{self, Level, Local, Rule, Side};
use engine::scenario::Set;
use schemars::JsonSchema;
use serde::Serialize;

/// What a set decides otherwise than the rules.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Protocol {
    /// `student` or `resident`.
    #[schemars(extend("enum" = ["student", "resident"]))]
    pub level: &'static str,
    /// Why it differs; null where the set does not say.
    pub note: Option<String>,
    /// What it decides, a rule each.
    pub rules: Vec<Decided>,
}

/// What a set decides otherwise about one rule.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Decided {
    /// Id of the rule.
    pub rule: &'static str,
    /// Limits that it moves, in words; empty where it moves none.
    pub moved: String,
    /// The position that it holds, `one` or `other`; null where it takes none.
    #[schemars(extend("enum" = ["one", "other", null]))]
    pub holds: Option<&'static str>,
    /// What that makes of what is debated, in words.
    pub makes: String,
}

impl Protocol {
    /// Of a case under a set; `None` outside a set.
    #[must_use]
    pub fn of(local: &Local) -> Option<Self> {
        let level = level(local.level?);
        let rules = protocol(local).iter().map(Decided::of).collect();
        Some(Self { level, note: local.protocol.note.clone(), rules })
    }
}

impl Decided {
    fn of(line: &Line) -> Self {
        Self {
            rule: line.rule.id,
            moved: line.moved.clone(),
            holds: line.holds.map(|side| match side {
                Side::One => "one",
                Side::Other => "other",
            }),
            makes: line.makes.clone(),
        }
    }
}

const fn level(level: Level) -> &'static str {
    match level {
        Level::Student => "student",
        Level::Resident => "resident",
    }
}

/// A limit that a set may move.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Limit {
    /// Where it stands.
    pub at: f64,
    /// The least that a set may put it at.
    pub least: f64,
    /// The most.
    pub most: f64,
}

/// The limits of a rule that a set may move.
#[must_use]
pub fn limits(rule: &Rule) -> Vec<Limit> {
    let all = rules::movable(rule).into_iter().filter(rules::Movable::moves);
    all.map(|one| Limit { at: one.cut.at, least: one.allowed[0], most: one.allowed[1] }).collect()
}

/// What `wallwise set check --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct CheckedSet {
    /// What stands beside every verdict.
    pub caution: &'static str,
    /// Its title.
    pub title: String,
    /// What it is for.
    pub aim: String,
    /// `worked`, `study` or `assessment`.
    #[schemars(extend("enum" = ["worked", "study", "assessment"]))]
    pub mode: &'static str,
    /// For whom it is, and what it decides otherwise than the rules.
    pub protocol: Option<Protocol>,
    /// Its cases in order.
    pub cases: Vec<CheckedCase>,
}

/// One case of a set that was checked.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct CheckedCase {
    /// Its title; null where it could not be drawn, or does not do what is expected of it.
    pub title: Option<String>,
    /// How hard it is; null where it is not as expected.
    pub difficulty: Option<Difficulty>,
    /// What is not as expected; empty where all is.
    pub findings: Vec<String>,
}

impl CheckedSet {
    /// Of a set with what was found of its cases.
    #[must_use]
    pub fn of(set: &Set, cases: Vec<CheckedCase>) -> Self {
        Self {
            caution: CAUTION,
            title: set.title.clone(),
            aim: set.aim.clone(),
            mode: set.mode.key(),
            protocol: Protocol::of(&set.local()),
            cases,
        }
    }
}
