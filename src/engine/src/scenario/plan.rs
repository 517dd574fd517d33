//! Plan files: `[step]` tables with a key for each decision, numbers in their unit.

use super::node::{Kind as Raw, Node};
use super::read::{Table, unknown_word};
use crate::plan::{Decision, Draft, Entry, Kind, Step, Value};
use crate::session::Plain;
use serde::{Deserialize, Deserializer, Serialize, Serializer, de};
use std::collections::BTreeMap;

/// The key of a decision in a file: its own, followed by its unit where it has one.
#[must_use]
pub fn file_key(entry: &Entry) -> String {
    match entry.kind {
        Kind::Number(kind) => format!("{}-{}", entry.key, kind.unit),
        Kind::Outline => format!("{}-mm", entry.key),
        Kind::One(_) | Kind::Many(_) => entry.key.to_owned(),
    }
}

/// The steps of a plan.
pub(super) fn steps(table: &mut Table<'_>) -> Draft {
    let mut draft = Draft::empty();
    for step in Step::ALL {
        let Some(mut of_step) = table.maybe_table(step.key()) else { continue };
        for entry in Decision::ALL.iter().filter(|entry| is_in(entry.step, *step)) {
            answer(&mut of_step, entry, &mut draft);
        }
        of_step.finish();
    }
    draft
}

/// Whether answers of a step stand in this table: in its own, and in that of the reviews also what
/// came after them when all of it was one step.
fn is_in(step: Step, table: Step) -> bool {
    step == table || (table == Step::Review && step > Step::Review)
}

/// Choices on top of a plan, by key and without their steps; `undecided` takes an answer back.
pub(super) fn changes(mut table: Table<'_>) -> Vec<(Decision, Option<Value>)> {
    let mut changes = Vec::new();
    for entry in Decision::ALL {
        let key = file_key(entry);
        if let Some(Raw::Text(text)) = table.maybe(&key).map(|node| &node.kind)
            && text == "undecided"
        {
            changes.push((entry.decision, None));
            continue;
        }
        let mut one = Draft::empty();
        answer(&mut table, entry, &mut one);
        if let Some(value) = one.value(entry.decision) {
            changes.push((entry.decision, Some(value.clone())));
        }
    }
    table.finish();
    changes
}

fn answer(table: &mut Table<'_>, entry: &Entry, draft: &mut Draft) {
    let key = file_key(entry);
    let Some(node) = table.maybe(&key) else { return };
    let Some(value) = value(table, &key, entry, node) else { return };
    if let Err(refusal) = draft.choose(entry.decision, value) {
        table.fault(&key, node.place, refusal.to_string());
    }
}

fn value<'a>(table: &Table<'a>, key: &str, entry: &Entry, node: &'a Node) -> Option<Value> {
    match (entry.kind, &node.kind) {
        (Kind::One(options), Raw::Text(found)) => {
            let value = Value::from_key(entry.decision, found).ok();
            if value.is_none() {
                let known = options.iter().map(|option| option.key);
                table.fault(key, node.place, unknown_word(found, known));
            }
            value
        }
        (Kind::Many(options), Raw::List(list)) => {
            let mut keys = Vec::new();
            for node in list.iter().take(64) {
                let known = options.iter().map(|option| option.key);
                match &node.kind {
                    Raw::Text(found) if options.iter().any(|option| option.key == found) => {
                        keys.push(found.as_str());
                    }
                    Raw::Text(found) => {
                        table.fault(key, node.place, unknown_word(found, known));
                    }
                    other => {
                        let says = format!("found {}, expected words", other.words());
                        table.fault(key, node.place, says);
                    }
                }
            }
            Value::from_keys(entry.decision, &keys).ok()
        }
        (Kind::Number(_), Raw::Whole(_) | Raw::Number(_)) => {
            let number = match node.kind {
                #[expect(clippy::cast_precision_loss, reason = "any such number is out of range")]
                Raw::Whole(whole) => whole as f64,
                Raw::Number(number) => number,
                _ => return None,
            };
            match Plain::Number(number).value(entry.decision) {
                Ok(value) => Some(value),
                Err(why) => {
                    table.fault(key, node.place, why.to_string());
                    None
                }
            }
        }
        (Kind::Outline, Raw::List(_)) => table.outline_of(key, node).map(Value::Outline),
        (kind, found) => {
            let expected = match kind {
                Kind::One(_) => "one word",
                Kind::Many(_) => "a list of words",
                Kind::Number(_) => "a number",
                Kind::Outline => "a list of points [s, t]",
            };
            let says = format!("found {}, expected {expected}", found.words());
            table.fault(key, node.place, says);
            None
        }
    }
}

/// A draft as plan files and packed sets hold it: decision keys with plain answers.
impl Serialize for Draft {
    fn serialize<S: Serializer>(&self, to: S) -> Result<S::Ok, S::Error> {
        to.collect_map(
            self.iter().map(|(decision, value)| (decision.key(), Plain::of(decision, value))),
        )
    }
}

impl<'de> Deserialize<'de> for Draft {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        let plain = BTreeMap::<String, Plain>::deserialize(from)?;
        let mut draft = Self::empty();
        for (key, plain) in plain {
            let decision = Decision::from_key(&key).ok_or_else(|| {
                de::Error::custom(format!("found the decision \"{key}\", which does not exist"))
            })?;
            let value = plain.value(decision).map_err(de::Error::custom)?;
            draft.choose(decision, value).map_err(de::Error::custom)?;
        }
        Ok(draft)
    }
}
