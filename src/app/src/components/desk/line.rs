//! The school's own line: limits that the set moves, and sides that it takes.

use super::Desk;
use super::limits::{is_open, of_rule};
use crate::components::decided::{self, decides};
use crate::components::fields::{one_of, words};
use crate::components::hold::use_held;
use crate::components::plain::{el, folded, line, status};
use crate::prose::Prose;
use engine::debrief::protocol;
use engine::rules::{Local, Moved, Protocol, all, find};
use learning::class::told;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct LineProps {
    /// The desk.
    pub desk: Desk,
}

/// The part of the desk.
#[component]
pub fn OwnLine(props: &LineProps) -> Html {
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let chosen = use_held(String::new);
    let says = use_held(String::new);
    let desk = &props.desk;
    let now = decides(&desk.set.protocol);
    let change = {
        let (desk, says, now) = (desk.clone(), says.clone(), now.clone());
        Callback::from(move |to: Box<dyn Fn(&mut Protocol)>| {
            let mut local = Local { level: Some(desk.set.whom()), protocol: now.clone() };
            to(&mut local.protocol);
            match local.check() {
                Err((rule, why)) => says.set(format!("{rule}: {why}")),
                Ok(()) => {
                    says.set(String::new());
                    desk.change(|set| set.protocol = text(&local.protocol));
                }
            }
        })
    };
    let local = Local { level: Some(desk.set.whom()), protocol: now.clone() };
    let lines = protocol(&local);
    let mut parts = vec![line(
        "p",
        "",
        "A set may move a limit inside what is published, one of safety to the stricter side only, and take a side where sources differ. Every verdict that it changes says so.",
    )];
    parts.push(el("ul", "", lines.iter().map(|one| decided::told(one, &prose)).collect()));
    let note = change.reform(|note: String| -> Box<dyn Fn(&mut Protocol)> {
        Box::new(move |to| to.note = Some(note.trim().to_owned()).filter(|note| !note.is_empty()))
    });
    parts.push(words(
        "desk-note",
        "Why, in a sentence; shown with each case",
        now.note.as_deref().unwrap_or_default(),
        note,
    ));
    let open = all().filter(|rule| is_open(rule));
    let open: Vec<(&str, String)> = open.map(|rule| (rule.id, prose.statement(rule))).collect();
    let mut rules = vec![("", "choose one")];
    rules.extend(open.iter().map(|(id, words)| (*id, words.as_str())));
    let pick = {
        let chosen = chosen.clone();
        Callback::from(move |id: String| chosen.set(id))
    };
    parts.push(one_of("desk-rule", "A rule to decide otherwise", &rules, &chosen, pick));
    if let Some(rule) = find(&chosen) {
        parts.extend(of_rule(rule, &now, &prose, &change));
    }
    parts.push(status((*says).clone()));
    folded(
        "desk-line",
        format!("A line of your own ({})", told::counted(lines.len(), "rule")),
        parts,
    )
}

/// As a set holds it, and as [`decides`] reads it. Numbers are written here: the library would bring
/// several kilobytes of its own for them.
fn text(protocol: &Protocol) -> String {
    if protocol.is_empty() {
        return String::new();
    }
    let bands = protocol.bands.iter().map(|Moved { rule, from, to }| {
        format!("{{\"rule\":\"{rule}\",\"from\":{from},\"to\":{to}}}")
    });
    let bands = bands.collect::<Vec<_>>().join(",");
    let note = serde_json::to_string(&protocol.note).unwrap_or_default();
    let positions = serde_json::to_string(&protocol.positions).unwrap_or_default();
    format!("{{\"note\":{note},\"bands\":[{bands}],\"positions\":{positions}}}")
}
