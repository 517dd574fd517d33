//! What a set tests, and what it leaves out.

use engine::cases;
use engine::debrief::CAUTION;
use engine::rules::all;
use engine::scenario::Set;
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;

/// What `wallwise set blueprint --json` prints.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Blueprint {
    /// What stands beside every verdict.
    pub caution: &'static str,
    /// The set's title.
    pub title: String,
    /// Its cases in order.
    pub cases: Vec<BlueprintCase>,
    /// Rules that one answer off the sound plan of some case breaks, in the order of the register.
    pub rules: Vec<BlueprintRule>,
    /// Ids of the others.
    pub left_out: Vec<&'static str>,
}

/// A case.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct BlueprintCase {
    /// Its place, from 1.
    pub place: usize,
    /// Its title, or why there is none.
    pub title: String,
    /// Tooth, two digits; null where there is no case.
    pub tooth: Option<u8>,
    /// How hard, 0 to 1; null where no sound plan is known.
    pub difficulty: Option<f64>,
    /// How many rules are in play.
    pub rules: usize,
}

/// A rule.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct BlueprintRule {
    /// Id.
    pub rule: &'static str,
    /// Key of its skill.
    pub skill: &'static str,
    /// The places of the cases in which it is in play.
    pub cases: Vec<usize>,
}

impl Blueprint {
    /// Of a set.
    #[must_use]
    pub fn of(set: &Set) -> Self {
        let local = set.local();
        let mut in_play: BTreeMap<&'static str, Vec<usize>> = BTreeMap::new();
        let mut cases = Vec::new();
        for (entry, place) in set.cases.iter().zip(1..) {
            let case = entry.case(local.clone());
            let sound = case.as_ref().ok().and_then(cases::proof);
            let hard = case
                .as_ref()
                .ok()
                .zip(sound)
                .and_then(|(case, sound)| cases::difficulty(case, &sound.draft));
            for rule in hard.iter().flat_map(|hard| &hard.rules) {
                in_play.entry(rule.id).or_default().push(place);
            }
            cases.push(BlueprintCase {
                place,
                tooth: case.as_ref().ok().map(|case| case.site.tooth.iso()),
                title: case.map_or_else(|why| why.to_string(), |case| case.title),
                difficulty: hard.as_ref().map(cases::Difficulty::value),
                rules: hard.map_or(0, |hard| hard.rules.len()),
            });
        }
        let rules = all().filter_map(|rule| {
            let cases = in_play.get(rule.id)?.clone();
            Some(BlueprintRule { rule: rule.id, skill: rule.skill.key(), cases })
        });
        Self {
            caution: CAUTION,
            title: set.title.clone(),
            cases,
            rules: rules.collect(),
            left_out: all().map(|rule| rule.id).filter(|id| !in_play.contains_key(id)).collect(),
        }
    }
}
