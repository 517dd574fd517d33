//! What the set that gives a case decides otherwise than the rules.

use super::plain::{el, folded, link, said, text};
use crate::library::Library;
use crate::prose::{LongText, Prose};
use crate::route::Route;
use engine::debrief::{Line, Verdict, protocol};
use engine::rules::{Level, Local, Protocol, Side};
use yew::prelude::*;

/// Reads what a shipped set decides: the build wrote it out of a set that it had checked.
pub fn decides(text: &str) -> Protocol {
    serde_json::from_str(text).unwrap_or_default()
}

/// How a shipped set has its cases judged; `None` while the sets are coming. Without a set, or of one
/// that is not there, every rule is as it stands.
pub fn local_of(set: Option<&str>, library: &Library) -> Option<Local> {
    let Some(name) = set else { return Some(Local::NONE) };
    let sets = match library {
        Library::Coming => return None,
        Library::Trouble(_) => return Some(Local::NONE),
        Library::Here(sets) => sets,
    };
    let set = sets.iter().find(|one| one.name == name);
    Some(set.map_or(Local::NONE, |set| Local {
        level: Some(set.whom()),
        protocol: decides(&set.protocol),
    }))
}

/// The position that the set takes on a verdict's rule; empty until the long texts are here.
pub fn position<'a>(verdict: &Verdict, long: Option<&'a LongText>) -> &'a str {
    let side = verdict.here.as_ref().and_then(|here| here.held);
    side.zip(long).map_or("", |(side, long)| stated(side, long))
}

fn stated(side: Side, long: &LongText) -> &str {
    &long.positions[usize::from(side == Side::Other)]
}

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct DecidedProps {
    /// How the set has the case judged.
    pub local: Local,
}

/// The set's own protocol: folded, for it is there from the first step to the debrief.
#[component]
pub fn Decided(props: &DecidedProps) -> Html {
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let lines = protocol(&props.local);
    let whom = match props.local.level {
        Some(Level::Student) => ", for students",
        Some(Level::Resident) => ", for residents",
        None => "",
    };
    let summary = format!("This set has a protocol of its own{whom}.");
    let note = props.local.protocol.note.as_ref();
    let mut parts: Vec<Html> =
        note.map(|note| said("p", "", note.to_string())).into_iter().collect();
    parts.push(el("ul", "", lines.iter().map(|line| told(line, &prose)).collect()));
    folded("decided", summary, parts)
}

/// A rule with what the set makes of it.
pub fn told(line: &Line, prose: &Prose) -> Html {
    let position = line.holds.zip(prose.of(line.rule.id)).map(|(side, long)| stated(side, long));
    let rule = link(Route::Rule(line.rule.id.to_owned()).fragment(), prose.statement(line.rule));
    let mut parts = vec![rule, text(format!(" {}", line.moved))];
    parts.extend(position.map(|side| text(format!("Your set holds: \u{201c}{side}\u{201d} "))));
    parts.push(text(line.makes.to_string()));
    el("li", "", parts)
}
