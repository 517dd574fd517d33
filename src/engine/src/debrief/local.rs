//! The words of a set's own protocol: with the case, at each verdict that it has changed, and of what
//! may be changed at all.

use super::verdict::Verdict;
use super::words::{plain, with_unit};
use crate::rules::{Cut, Here, Local, Movable, Reading, Rule, Scale, Side, Zone, find, movable};

/// The position that the set takes on the rule of a verdict, as the rule states it; empty where it
/// takes none, or where the texts of rules are not at hand.
pub(super) fn position(verdict: &Verdict) -> &'static str {
    let side = verdict.here.as_ref().and_then(|here| here.held);
    side.map_or("", |side| stated(verdict.rule, side))
}

const fn stated(rule: &Rule, side: Side) -> &'static str {
    match (rule.positions, side) {
        (Some(both), Side::One) => both.one,
        (Some(both), Side::Other) => both.other,
        (None, _) => "",
    }
}

/// What the set that gives the case has decided otherwise about a verdict, and what would be said
/// without it; empty where it has decided nothing. `position` is the side that it takes, as the rule
/// states it.
#[must_use]
pub fn decided(verdict: &Verdict, position: &str) -> String {
    let Some(here) = &verdict.here else { return String::new() };
    let unit = verdict.bands().map_or("", |bands| bands.unit);
    let mut said: Vec<String> =
        here.moved.iter().map(|(cut, to)| limit_moved(cut, *to, unit)).collect();
    let unmoved = verdict.zone_unmoved();
    if here.held.is_some() && unmoved == Zone::Debated && verdict.zone != unmoved {
        said.push(side_taken(position));
    }
    // Where only a side was taken, and on another situation than this one, there is nothing to say.
    if said.is_empty() {
        return String::new();
    }
    said.push(if unmoved == verdict.zone {
        "The verdict is the same without it.".to_owned()
    } else {
        format!("Without it this would be {}.", unmoved.word())
    });
    said.join(" ")
}

/// *Here your set asks 2.5 mm, not 2 mm; published figures run from 2 to 3 mm.*
fn limit_moved(cut: &Cut, to: f64, unit: &str) -> String {
    let [least, most] = cut.published;
    let figures = if least < most {
        format!("published figures run from {} to {}", plain(least), with_unit(&plain(most), unit))
    } else {
        "between the two, sources differ".to_owned()
    };
    let (here, there) = (with_unit(&plain(to), unit), with_unit(&plain(cut.at), unit));
    format!("Here your set draws the limit at {here}, not at {there}; {figures}.")
}

fn side_taken(position: &str) -> String {
    let position = position.trim_end_matches('.');
    if position.is_empty() {
        "Sources differ here, and your set takes a side.".to_owned()
    } else {
        format!("Sources differ here, and your set holds: \u{201c}{position}\u{201d}.")
    }
}

/// One thing that a set decides otherwise.
#[derive(Debug, Clone, PartialEq)]
pub struct Line {
    /// The rule.
    pub rule: &'static Rule,
    /// The limits that were moved, a sentence each; empty where a side is taken.
    pub moved: String,
    /// The side that is taken.
    pub holds: Option<Side>,
    /// What that makes of what is debated, a sentence.
    pub makes: String,
}

/// What a set decides otherwise, in the order in which it says so.
#[must_use]
pub fn protocol(local: &Local) -> Vec<Line> {
    let ids = local.protocol.bands.iter().map(|one| &one.rule);
    let mut rules: Vec<&'static Rule> = Vec::new();
    for rule in ids.chain(local.protocol.positions.iter().map(|one| &one.rule)) {
        // Each once, however many of its limits are moved.
        rules.extend(find(rule).filter(|rule| !rules.contains(rule)));
    }
    let line = |rule| local.of(rule).map(|here| line(rule, &here));
    rules.into_iter().filter_map(line).collect()
}

fn line(rule: &'static Rule, here: &Here) -> Line {
    let unit = unit(rule);
    let moved: Vec<String> =
        here.moved.iter().map(|(cut, to)| limit_moved(cut, *to, unit)).collect();
    let makes = here.held.map_or_else(String::new, |_| makes(rule, here));
    Line { rule, moved: moved.join(" "), holds: here.held, makes }
}

/// What a side makes of what is debated: *What is debated of it is acceptable.*
fn makes(rule: &Rule, here: &Here) -> String {
    if let Some(worth) = here.worth {
        return format!("What is debated of it is {}.", worth.zone().word());
    }
    let Scale::Situations(all) = &rule.scale else { return String::new() };
    let debated = all.iter().filter(|one| one.zone == Zone::Debated);
    let said: Vec<String> = debated
        .filter_map(|one| {
            let zone = here.zone_of(Reading::Situation(one.key))?;
            (zone != one.zone).then(|| format!("Where {}, that is {}.", one.words, zone.word()))
        })
        .collect();
    said.join(" ")
}

const fn unit(rule: &Rule) -> &'static str {
    match &rule.scale {
        Scale::Bands(bands) => bands.unit,
        Scale::Situations(_) => "",
    }
}

/// How far a set may move each limit of a rule, a sentence each; none where all stay.
#[must_use]
pub fn allowed(rule: &Rule) -> Vec<String> {
    let unit = unit(rule);
    let said = |one: Movable| {
        let [least, most] = one.allowed.map(plain);
        let at = with_unit(&plain(one.cut.at), unit);
        format!("A set may move the limit at {at} from {least} to {}.", with_unit(&most, unit))
    };
    movable(rule).into_iter().filter(Movable::moves).map(said).collect()
}
