//! Sets: which cases, for whom, and what is expected of them.

use super::conditions::{self, Conditions};
use super::constraints::constraints;
use super::mode::Mode;
use super::node::Kind as Raw;
use super::read::{Table, unknown_word};
use super::{case_of, plan, protocol};
use crate::cases::{self, Constraints, NoCase, Spread};
use crate::chart::{Address, Case};
use crate::debrief::{PlanWord, judge};
use crate::plan::{Decision, Draft, Plan, Value};
use crate::rules::{self, Level, Local, Protocol, Zone};
use crate::session::Plain;
use core::fmt;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use std::collections::BTreeMap;

/// The most cases that a set holds.
pub const MOST_CASES: usize = 200;

/// A set of cases.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Set {
    /// Its title.
    pub title: String,
    /// What a learner can do after it, in one sentence.
    pub aim: String,
    /// For whom.
    pub level: Level,
    /// Who does its cases, and when explanations come.
    pub mode: Mode,
    /// What it decides otherwise than the rules.
    #[serde(default, skip_serializing_if = "Protocol::is_empty")]
    pub protocol: Protocol,
    /// Whether each learner gets cases of their own in place of these, found from the learner's code
    /// ([`cases::form`]).
    #[serde(default, skip_serializing_if = "core::ops::Not::not")]
    pub forms: bool,
    /// Under what conditions it is sat.
    #[serde(default, skip_serializing_if = "Conditions::is_empty")]
    pub conditions: Conditions,
    /// Its cases, in order.
    pub cases: Vec<SetCase>,
}

/// One case of a set.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct SetCase {
    /// Where it comes from.
    pub source: CaseSource,
    /// What an instructor should ask the class; never shown before the debrief.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ask: Option<String>,
    /// What is expected of it: checked by the project's own tests and by `wallwise set`.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub expect: Vec<Expect>,
}

/// Where a case comes from.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum CaseSource {
    /// A drawn case, replayed.
    Address(Address),
    /// A seed and what the case must meet.
    Seed {
        /// The seed.
        seed: u64,
        /// How its cases are spread.
        #[serde(default)]
        spread: Spread,
        /// What it must meet.
        constraints: Constraints,
    },
    /// Written out in full.
    Written(Box<Case>),
}

/// A plan and what the rules are expected to say of it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct Expect {
    /// The plan to begin with.
    pub plan: PlanSource,
    /// Choices changed on top of it.
    #[serde(default, skip_serializing_if = "Changes::is_empty")]
    pub change: Changes,
    /// The word for the whole plan.
    #[serde(default, skip_serializing_if = "Option::is_none", with = "word_form")]
    pub word: Option<PlanWord>,
    /// Rules that must speak, and what they must say.
    #[serde(default, skip_serializing_if = "Vec::is_empty", with = "verdicts_form")]
    pub verdicts: Vec<(String, Zone)>,
}

/// The plan to begin with.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PlanSource {
    /// The plan that proves the case solvable.
    Proof,
    /// A plan file beside the set.
    File(String),
    /// The choices themselves.
    Choices(Draft),
}

/// Choices changed on top of a plan; `None` takes an answer back.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Changes(pub Vec<(Decision, Option<Value>)>);

impl Changes {
    /// Whether nothing is changed.
    #[must_use]
    pub const fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The plan with the changes made.
    #[must_use]
    pub fn on(&self, draft: &Draft) -> Draft {
        let mut changed = draft.clone();
        for (decision, value) in &self.0 {
            match value {
                // The value was checked against its decision when it was read.
                Some(value) => drop(changed.choose(*decision, value.clone())),
                None => changed.clear(*decision),
            }
        }
        changed
    }
}

impl Serialize for Changes {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_map(self.0.iter().map(|(decision, value)| {
            (decision.key(), value.as_ref().map(|value| Plain::of(*decision, value)))
        }))
    }
}

impl<'de> Deserialize<'de> for Changes {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let plain = BTreeMap::<String, Option<Plain>>::deserialize(from)?;
        let mut changes = Vec::new();
        for (key, plain) in plain {
            let decision = Decision::from_key(&key).ok_or_else(|| {
                de::Error::custom(format!("found the decision \"{key}\", which does not exist"))
            })?;
            let value = plain.map(|plain| plain.value(decision)).transpose();
            changes.push((decision, value.map_err(de::Error::custom)?));
        }
        changes.sort_by_key(|(decision, _)| *decision);
        Ok(Self(changes))
    }
}

const WORDS: &[(&str, PlanWord)] = &[
    ("sound", PlanWord::Sound),
    ("workable", PlanWord::Workable),
    ("compromised", PlanWord::Compromised),
    ("unsafe", PlanWord::Unsafe),
];

fn spreads() -> [(&'static str, Spread); 3] {
    Spread::ALL.map(|one| (one.key(), one))
}

const ZONES: [Zone; 6] = [
    Zone::Ideal,
    Zone::Acceptable,
    Zone::Debated,
    Zone::Suboptimal,
    Zone::Compromising,
    Zone::Unsafe,
];

fn zone_of(key: &str) -> Option<Zone> {
    ZONES.into_iter().find(|zone| zone.key() == key)
}

mod word_form {
    use super::{Deserialize, Deserializer, PlanWord, Serializer, WORDS, de};

    #[expect(clippy::ref_option, reason = "the shape that serde asks for")]
    pub(super) fn serialize<S: Serializer>(
        word: &Option<PlanWord>,
        to: S,
    ) -> Result<S::Ok, S::Error> {
        match word {
            Some(word) => to.serialize_some(word.word()),
            None => to.serialize_none(),
        }
    }

    pub(super) fn deserialize<'de, D: Deserializer<'de>>(
        from: D,
    ) -> Result<Option<PlanWord>, D::Error> {
        let Some(key) = Option::<String>::deserialize(from)? else { return Ok(None) };
        let word = WORDS.iter().find(|(word, _)| *word == key).map(|(_, word)| *word);
        word.map(Some).ok_or_else(|| de::Error::custom(format!("found the word \"{key}\"")))
    }
}

mod verdicts_form {
    use super::{BTreeMap, Deserialize, Deserializer, Serializer, Zone, de, zone_of};

    pub(super) fn serialize<S: Serializer>(
        verdicts: &[(String, Zone)],
        to: S,
    ) -> Result<S::Ok, S::Error> {
        to.collect_map(verdicts.iter().map(|(rule, zone)| (rule, zone.key())))
    }

    pub(super) fn deserialize<'de, D: Deserializer<'de>>(
        from: D,
    ) -> Result<Vec<(String, Zone)>, D::Error> {
        let plain = BTreeMap::<String, String>::deserialize(from)?;
        let read = plain.into_iter().map(|(rule, key)| {
            let zone = zone_of(&key);
            zone.map(|zone| (rule, zone))
                .ok_or_else(|| de::Error::custom(format!("found the verdict \"{key}\"")))
        });
        read.collect()
    }
}

impl SetCase {
    /// The case itself, as a set with this [`Set::local`] gives it.
    ///
    /// # Errors
    /// [`NoCase`] where an address or seed gives none.
    pub fn case(&self, local: Local) -> Result<Case, NoCase> {
        let case = match &self.source {
            CaseSource::Address(address) => cases::at(*address),
            CaseSource::Seed { seed, spread, constraints } => {
                cases::generate_as(*spread, *seed, constraints)
            }
            CaseSource::Written(case) => Ok((**case).clone()),
        };
        case.map(|case| case.under(local))
    }
}

/// An expectation that did not come true.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unmet(pub String);

impl fmt::Display for Unmet {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl core::error::Error for Unmet {}

impl Expect {
    /// Judges the plan and compares. `base` is the draft that `plan` names.
    ///
    /// # Errors
    /// Every expectation that did not come true.
    pub fn check(&self, case: &Case, base: &Draft) -> Result<(), Vec<Unmet>> {
        let draft = self.change.on(base);
        let plan = Plan::from_draft(&draft, case).map_err(|refusals| {
            refusals.iter().map(|refusal| Unmet(refusal.to_string())).collect::<Vec<_>>()
        })?;
        let verdicts = judge(case, &plan);
        let mut unmet = Vec::new();
        for (rule, zone) in &self.verdicts {
            match verdicts.iter().find(|verdict| verdict.rule.id == rule) {
                None => unmet.push(Unmet(format!(
                    "{rule}: expected \"{}\", the rule does not apply",
                    zone.key()
                ))),
                Some(verdict) if verdict.zone != *zone => unmet.push(Unmet(format!(
                    "{rule}: expected \"{}\", found \"{}\" ({:?})",
                    zone.key(),
                    verdict.zone.key(),
                    verdict.reading
                ))),
                Some(_) => {}
            }
        }
        let word = PlanWord::of(&verdicts);
        if let Some(expected) = self.word.filter(|expected| *expected != word) {
            let faults: Vec<_> = verdicts
                .iter()
                .filter(|verdict| verdict.is_fault())
                .map(|verdict| format!("{} {}", verdict.rule.id, verdict.zone.key()))
                .collect();
            unmet.push(Unmet(format!(
                "expected the word \"{}\", found \"{}\" ({})",
                expected.word(),
                word.word(),
                faults.join(", ")
            )));
        }
        if unmet.is_empty() { Ok(()) } else { Err(unmet) }
    }
}

pub(super) fn read(mut table: Table<'_>) -> Option<Set> {
    let title = table.text("title");
    let aim = table.text("aim");
    let level = table.one("level", &[("student", Level::Student), ("resident", Level::Resident)]);
    let mode = table.one("mode", &Mode::KEYED);
    // Of its bare seeds; a case may say otherwise for its own.
    let spread = table.maybe_one("spread", &spreads()).unwrap_or_default();
    let protocol = table.maybe_table("protocol").map_or_else(Default::default, protocol::read);
    let forms = table.maybe_truth("forms").unwrap_or_default();
    let conditions = table.maybe_table("conditions");
    let conditions = conditions.and_then(|table| conditions::read(table, mode)).unwrap_or_default();
    let place = table.place;
    let tables = table.tables("case", MOST_CASES);
    if tables.is_empty() {
        table.fault("case", place, "a set has at least one [[case]]");
    }
    let read: Vec<Option<SetCase>> =
        tables.into_iter().map(|table| set_case(table, spread)).collect();
    table.finish();
    let cases: Option<Vec<SetCase>> = read.into_iter().collect();
    let (title, aim, level, mode) = (title?, aim?, level?, mode?);
    Some(Set { title, aim, level, mode, protocol, forms, conditions, cases: cases? })
}

fn set_case(mut table: Table<'_>, spread: Spread) -> Option<SetCase> {
    let ask = table.maybe_text("ask");
    let expect: Vec<Option<Expect>> = table.tables("expect", 40).into_iter().map(expect).collect();
    let source = source(&mut table, spread);
    table.finish();
    Some(SetCase { source: source?, ask, expect: expect.into_iter().collect::<Option<_>>()? })
}

fn source(table: &mut Table<'_>, of_set: Spread) -> Option<CaseSource> {
    let (address, seed) = (table.maybe("address"), table.maybe("seed"));
    let written = table.maybe("site");
    let spread = table.maybe_one("spread", &spreads());
    let constraints = constraints(table);
    let ways = usize::from(address.is_some())
        + usize::from(seed.is_some())
        + usize::from(written.is_some());
    if ways != 1 {
        let says = "expected exactly one of: address, seed, or the case written out (title, site, patient, readings)";
        table.fault("", table.place, says);
        return None;
    }
    if seed.is_none()
        && (spread.is_some() || constraints.is_some_and(|asked| asked != Constraints::default()))
    {
        table.fault(
            "archetype",
            table.place,
            "spread, archetype, tooth, upper, aesthetic and difficulty are for a seed; expected none of them here",
        );
        return None;
    }
    if let Some(node) = address {
        let Raw::Text(text) = &node.kind else {
            table.fault(
                "address",
                node.place,
                format!("found {}, expected text", node.kind.words()),
            );
            return None;
        };
        return match text.parse::<Address>() {
            Ok(address) => Some(CaseSource::Address(address)),
            Err(why) => {
                table.fault("address", node.place, why.to_string());
                None
            }
        };
    }
    if let Some(node) = seed {
        let seed = table.whole("seed", 0..=i64::MAX).and_then(|seed| u64::try_from(seed).ok());
        let constraints = constraints?;
        let spread = spread.unwrap_or(of_set);
        if let Err(why) = constraints.check_for(spread) {
            table.fault("seed", node.place, why.to_string());
            return None;
        }
        return Some(CaseSource::Seed { seed: seed?, spread, constraints });
    }
    case_of(table).map(|case| CaseSource::Written(Box::new(case)))
}

fn expect(mut table: Table<'_>) -> Option<Expect> {
    let source = plan_source(&mut table);
    let change = table.maybe_table("change").map(plan::changes).unwrap_or_default();
    let has_word = table.maybe("word").is_some();
    let word = table.maybe_one("word", WORDS);
    let verdicts = verdicts(&mut table);
    let place = table.place;
    if !has_word && verdicts.as_ref().is_some_and(Vec::is_empty) {
        table.fault("", place, "expected a word, or verdicts, or both");
    }
    table.finish();
    if has_word && word.is_none() {
        return None;
    }
    Some(Expect { plan: source?, change: Changes(change), word, verdicts: verdicts? })
}

fn plan_source(table: &mut Table<'_>) -> Option<PlanSource> {
    let file = table.maybe("plan-file").is_some();
    let choices = table.maybe_table("choices");
    let proof = table.maybe("plan").is_some();
    if usize::from(file) + usize::from(proof) + usize::from(choices.is_some()) != 1 {
        let says = "expected exactly one of: plan = \"proof\", plan-file, or [choices] by step";
        table.fault("plan", table.place, says);
        return None;
    }
    if let Some(mut choices) = choices {
        let draft = plan::steps(&mut choices);
        choices.finish();
        return Some(PlanSource::Choices(draft));
    }
    if file {
        let place = table.place;
        let name = table.text("plan-file")?;
        // A name beside the set: no folders, so that a set reaches nothing else.
        if name.contains(['/', '\\']) || name.starts_with('.') {
            table.fault(
                "plan-file",
                place,
                "expected the name of a file beside the set, without a folder",
            );
            return None;
        }
        return Some(PlanSource::File(name));
    }
    table.one("plan", &[("proof", ())]).map(|()| PlanSource::Proof)
}

fn verdicts(table: &mut Table<'_>) -> Option<Vec<(String, Zone)>> {
    let Some(node) = table.maybe("verdicts") else { return Some(Vec::new()) };
    let Raw::Table(pairs) = &node.kind else {
        table.fault("verdicts", node.place, "expected a table: rule = \"verdict\"");
        return None;
    };
    let mut read = Vec::new();
    let mut whole = true;
    for pair in pairs.iter().take(200) {
        let field = format!("verdicts.{}", pair.key.chars().take(60).collect::<String>());
        if rules::find(&pair.key).is_none() {
            table.fault(
                &field,
                pair.place,
                unknown_word(&pair.key, rules::all().map(|rule| rule.id)),
            );
            whole = false;
        }
        match &pair.value.kind {
            Raw::Text(key) => match zone_of(key) {
                Some(zone) => read.push((pair.key.clone(), zone)),
                None => {
                    table.fault(
                        &field,
                        pair.value.place,
                        unknown_word(key, ZONES.iter().map(|zone| zone.key())),
                    );
                    whole = false;
                }
            },
            other => {
                table.fault(
                    &field,
                    pair.value.place,
                    format!("found {}, expected a word", other.words()),
                );
                whole = false;
            }
        }
    }
    read.sort_by(|a, b| a.0.cmp(&b.0));
    whole.then_some(read)
}
