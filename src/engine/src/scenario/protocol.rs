//! What a set decides otherwise than the rules: limits moved inside what is published, and sides taken
//! where sources differ.

use super::Set;
use super::node::{Kind, Node, Place};
use super::read::{Notes, Table, unknown_word};
use crate::rules::{
    self, Debated, Held, Local, Moved, Protocol, Rule, Side, Unfit, Worth, check_move, check_order,
    check_side,
};

/// The most limits that a set moves, and the most sides that it takes.
const MOST: usize = 60;
/// The largest figure of any scale is far below this.
const LARGEST: f64 = 10_000.0;

impl Set {
    /// How its cases are judged.
    #[must_use]
    pub fn local(&self) -> Local {
        Local { level: Some(self.level), protocol: self.protocol.clone() }
    }
}

/// What was read of one entry, and where.
struct Read<'a, T> {
    rule: &'static Rule,
    one: T,
    place: Place,
    keys: Vec<(&'static str, Place)>,
    path: String,
    notes: &'a Notes,
}

impl<'a, T> Read<'a, T> {
    /// Closes the table of an entry.
    fn of(rule: &'static Rule, one: T, mut table: Table<'a>, keys: &[&'static str]) -> Self {
        let place_of = |key: &&'static str| Some((*key, table.maybe(key)?.place));
        let keys = keys.iter().filter_map(place_of).collect();
        let (place, path, notes) = (table.place, table.path.clone(), table.notes);
        table.finish();
        Self { rule, one, place, keys, path, notes }
    }

    fn refuse(&self, key: &str, why: &Unfit) {
        let place = self.keys.iter().find(|(one, _)| *one == key).map_or(self.place, |one| one.1);
        self.notes.add(place, &format!("{}{key}", self.path), why.to_string());
    }
}

/// Reads it; whatever does not fit is noted, and read as it stands.
pub(super) fn read(mut table: Table<'_>) -> Protocol {
    let note = table.maybe_text("note");
    let bands = table.tables("band", MOST).into_iter().filter_map(band).collect();
    let positions = table.tables("position", MOST).into_iter().filter_map(position).collect();
    table.finish();
    Protocol { note, bands: in_order(bands), positions: once_each(positions) }
}

fn band(mut table: Table<'_>) -> Option<Read<'_, Moved>> {
    let rule = rule(&mut table);
    let from = table.number("from", -LARGEST..=LARGEST);
    let to = table.number("to", -LARGEST..=LARGEST);
    let (Some(rule), Some(from), Some(to)) = (rule, from, to) else {
        table.finish();
        return None;
    };
    let one = Moved { rule: rule.id.to_owned(), from, to };
    let read = Read::of(rule, one, table, &["rule", "from", "to"]);
    if let Err(why) = check_move(rule, &read.one) {
        let key = match why {
            Unfit::NoLimits => "rule",
            Unfit::NoLimit { .. } | Unfit::Agreed { .. } => "from",
            _ => "to",
        };
        read.refuse(key, &why);
        return None;
    }
    Some(read)
}

/// Moves that fit by themselves, held to the order of each rule's limits.
fn in_order(all: Vec<Read<'_, Moved>>) -> Vec<Moved> {
    for (place, read) in all.iter().enumerate() {
        // Once for each rule.
        if all[..place].iter().any(|other| other.rule == read.rule) {
            continue;
        }
        let of_rule: Vec<&Read<'_, Moved>> =
            all.iter().filter(|other| other.rule == read.rule).collect();
        let moved: Vec<&Moved> = of_rule.iter().map(|read| &read.one).collect();
        if let Err((number, why)) = check_order(read.rule, &moved) {
            of_rule[number].refuse(if why == Unfit::Twice { "from" } else { "to" }, &why);
        }
    }
    all.into_iter().map(|read| read.one).collect()
}

fn position(mut table: Table<'_>) -> Option<Read<'_, Held>> {
    let rule = rule(&mut table);
    let holds = table.one("holds", &[("one", Side::One), ("other", Side::Other)]);
    let debated = table.need("debated").and_then(|node| debated(&table, node));
    let (Some(rule), Some(holds), Some(debated)) = (rule, holds, debated) else {
        table.finish();
        return None;
    };
    let one = Held { rule: rule.id.to_owned(), holds, debated };
    let read = Read::of(rule, one, table, &["rule", "holds", "debated"]);
    if let Err(why) = check_side(rule, &read.one) {
        read.refuse(if why == Unfit::NotDebated { "rule" } else { "debated" }, &why);
        return None;
    }
    Some(read)
}

fn once_each(all: Vec<Read<'_, Held>>) -> Vec<Held> {
    for (place, read) in all.iter().enumerate() {
        if all[..place].iter().any(|other| other.rule == read.rule) {
            read.refuse("rule", &Unfit::Twice);
        }
    }
    all.into_iter().map(|read| read.one).collect()
}

/// One word for all that is debated, or a table by situation.
fn debated(table: &Table<'_>, node: &Node) -> Option<Debated> {
    let Kind::Table(pairs) = &node.kind else {
        return worth(table, "debated", node).map(Debated::All);
    };
    if pairs.is_empty() {
        table.fault("debated", node.place, "expected at least one situation with its worth");
        return None;
    }
    let each = pairs.iter().map(|pair| {
        let field = format!("debated.{}", pair.key.chars().take(60).collect::<String>());
        Some((pair.key.clone(), worth(table, &field, &pair.value)?))
    });
    let each: Vec<_> = each.collect();
    each.into_iter().collect::<Option<_>>().map(Debated::Each)
}

fn worth(table: &Table<'_>, field: &str, node: &Node) -> Option<Worth> {
    let keys = || Worth::ALL.iter().map(|worth| worth.zone().key());
    let Kind::Text(found) = &node.kind else {
        table.fault(field, node.place, format!("found {}, expected a word", node.kind.words()));
        return None;
    };
    let known = Worth::ALL.into_iter().find(|worth| worth.zone().key() == found);
    if known.is_none() {
        table.fault(field, node.place, unknown_word(found, keys()));
    }
    known
}

/// The rule that an entry names.
fn rule(table: &mut Table<'_>) -> Option<&'static Rule> {
    let place = table.need("rule")?.place;
    let id = table.text("rule")?;
    let found = rules::find(&id);
    if found.is_none() {
        table.fault("rule", place, unknown_word(&id, rules::all().map(|rule| rule.id)));
    }
    found
}
