//! How hard a case is.

use engine::cases;
use schemars::JsonSchema;
use serde::Serialize;

/// How hard a case is, with its parts: read off the plan that proves it solvable.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Difficulty {
    /// 0 easy to 1 hard: 0.2 of it room, 0.5 rules, 0.3 hidden facts.
    pub value: f64,
    /// How far the implant may be moved across in the section; null where none is placed.
    pub room_across_mm: Option<f64>,
    /// How far along its axis.
    pub room_along_mm: Option<f64>,
    /// Rules that fault that plan with one answer changed.
    pub rules: Vec<&'static str>,
    /// What they rest on that has to be asked or looked for.
    pub hidden: Vec<&'static str>,
    /// The same in words.
    pub words: String,
}

impl From<&cases::Difficulty> for Difficulty {
    fn from(found: &cases::Difficulty) -> Self {
        let room = |place: usize| found.room.map(|room| room[place].get());
        Self {
            value: found.value(),
            room_across_mm: room(0),
            room_along_mm: room(1),
            rules: found.rules.iter().map(|rule| rule.id).collect(),
            hidden: found.hidden.iter().map(|fact| fact.words()).collect(),
            words: found.words(),
        }
    }
}
