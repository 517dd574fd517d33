//! What a set may decide of one rule: a number for each limit that may be moved, and its two positions.

use crate::components::fields::{one_of, words};
use crate::components::plain::{el, said};
use crate::prose::Prose;
use engine::debrief::with_unit;
use engine::rules::{
    Debated, Held as Position, Movable, Moved, Protocol, Rule, Scale, Side, Worth, check_side,
    movable,
};
use engine::units::decimal;
use yew::prelude::*;

/// A side, if one is taken, and what it makes of what is debated.
type Taken = Option<(Side, Worth)>;

/// Sides with what they make of what is debated, each under a key.
const SIDES: [(&str, &str, Taken); 5] = [
    ("", "takes no side", None),
    ("one-good", "the first; what is debated is good enough", Some((Side::One, Worth::Acceptable))),
    (
        "one-not",
        "the first; what is debated is not what we teach",
        Some((Side::One, Worth::Suboptimal)),
    ),
    (
        "other-good",
        "the second; what is debated is good enough",
        Some((Side::Other, Worth::Acceptable)),
    ),
    (
        "other-not",
        "the second; what is debated is not what we teach",
        Some((Side::Other, Worth::Suboptimal)),
    ),
];

/// Changes what the set decides.
pub type Change = Callback<Box<dyn Fn(&mut Protocol)>>;

/// Whether a set may decide anything of a rule.
pub fn is_open(rule: &Rule) -> bool {
    movable(rule).iter().any(Movable::moves) || has_sides(rule)
}

fn has_sides(rule: &Rule) -> bool {
    check_side(rule, &position(rule, Side::One, Worth::Suboptimal)).is_ok()
}

fn position(rule: &Rule, holds: Side, worth: Worth) -> Position {
    Position { rule: rule.id.to_owned(), holds, debated: Debated::All(worth) }
}

/// The fields of a rule: a number for each limit that may be moved, and its two positions.
pub fn of_rule(rule: &'static Rule, now: &Protocol, prose: &Prose, change: &Change) -> Vec<Html> {
    let mut parts = vec![said("p", "", prose.statement(rule))];
    for (place, one) in movable(rule).into_iter().enumerate().filter(|(_, one)| one.moves()) {
        let unit = if let Scale::Bands(bands) = &rule.scale { bands.unit } else { "" };
        let [least, most] = one.allowed;
        let from = one.cut.at;
        let moved = now
            .bands
            .iter()
            .find(|moved| moved.rule == rule.id && moved.from.to_bits() == from.to_bits());
        let name = format!(
            "The limit at {}: from {least} to {}; empty to leave it",
            with_unit(&from.to_string(), unit),
            with_unit(&most.to_string(), unit)
        );
        let value = moved.map(|moved| moved.to.to_string()).unwrap_or_default();
        let told = change.reform(move |typed: String| -> Box<dyn Fn(&mut Protocol)> {
            let to = decimal(&typed.trim().replace(',', "."));
            Box::new(move |all| {
                all.bands.retain(|moved| {
                    moved.rule != rule.id || moved.from.to_bits() != from.to_bits()
                });
                all.bands.extend(to.map(|to| Moved { rule: rule.id.to_owned(), from, to }));
            })
        });
        parts.push(words(&format!("desk-limit-{place}"), &name, &value, told));
    }
    if has_sides(rule) {
        let held = now.positions.iter().find(|held| held.rule == rule.id);
        let is =
            |side: &Taken| side.map(|(side, worth)| position(rule, side, worth)).as_ref() == held;
        let value = SIDES.iter().find(|one| is(&one.2)).map_or("", |one| one.0);
        let options: Vec<_> = SIDES.iter().map(|(key, words, _)| (*key, *words)).collect();
        let told = change.reform(move |key: String| -> Box<dyn Fn(&mut Protocol)> {
            let side = SIDES.iter().find(|one| one.0 == key).and_then(|one| one.2);
            Box::new(move |all| {
                all.positions.retain(|held| held.rule != rule.id);
                all.positions.extend(side.map(|(side, worth)| position(rule, side, worth)));
            })
        });
        if let Some(long) = prose.of(rule.id) {
            parts.push(el(
                "ol",
                "",
                long.positions.iter().map(|one| said("li", "", one.clone())).collect(),
            ));
        }
        parts.push(one_of(
            "desk-side",
            "Where sources differ, this set holds",
            &options,
            value,
            told,
        ));
    }
    parts
}
