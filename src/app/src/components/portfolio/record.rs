//! One attempt as it is printed.

use super::With;
use crate::components::verdict::sign;
use crate::prose::Prose;
use crate::shelf::Shelf;
use engine::debrief::{RULE_SET, capital};
use engine::rules::{self, Level};
use engine::session::Mode;
use learning::date::clock;
use learning::past::{Observed, Past};
use learning::record::Help;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct RecordProps {
    /// The attempts.
    pub shelf: Shelf,
    /// Which of them, by its place.
    pub place: usize,
    /// What else is printed.
    pub with: With,
}

/// The record of one attempt.
#[component]
pub fn Record(props: &RecordProps) -> Html {
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let shelf = &props.shelf;
    let Some(past) = shelf.pasts.get(props.place) else { return Html::default() };
    let row = |(name, says): (&'static str, String)| {
        html! { <div><dt>{ name }</dt><dd>{ says }</dd></div> }
    };
    let faults: Vec<&Observed> = past.observed.iter().filter(|one| one.is_fault()).collect();
    let note = Some(shelf.note(&past.head.id)).filter(|note| props.with.notes && !note.is_empty());
    let objections = past.objections.iter().filter(|_| props.with.objections);
    html! {
        <article class="record">
            <h2>{ shelf.title(past) }</h2>
            <dl class="particulars">{ for particulars(shelf, past).into_iter().map(row) }</dl>
            <p><strong>{ word(past) }</strong>{ format!(" {}", past.word.meaning()) }</p>
            if !faults.is_empty() { <ul class="faults">{ for faults.into_iter().map(|one| fault(one, past, &prose)) }</ul> }
            <p class="from">{ judged_by(past) }</p>
            { for note.map(|note| html! { <p class="own-note"><strong>{ "Own note: " }</strong>{ note }</p> }) }
            { for objections.map(|(id, reason)| objection(id, reason, past, &prose)) }
        </article>
    }
}

fn particulars(shelf: &Shelf, past: &Past) -> Vec<(&'static str, String)> {
    let head = &past.head;
    let address = head.address.map_or_else(|| "none, written out".to_owned(), |at| at.to_string());
    let set = head.set.as_deref().map_or_else(|| "none".to_owned(), |set| shelf.set_title(set));
    let level = match head.local.level {
        None => "none named",
        Some(Level::Student) => "students",
        Some(Level::Resident) => "residents",
    };
    let mode = match head.mode {
        Mode::Study => "study",
        Mode::Assessment => "assessment",
    };
    let help = match head.help.as_slice() {
        [] => "none".to_owned(),
        help => help.iter().map(|one| Help::words(*one)).collect::<Vec<_>>().join(", "),
    };
    let ended = match head.ended {
        Some(at) => shelf.clock.date(at).words(),
        None => "not finished".to_owned(),
    };
    #[expect(clippy::cast_precision_loss, reason = "far below 2^53 milliseconds")]
    let time = match past.time() {
        0 => "not known".to_owned(),
        ms => format!("{}, pauses cut", clock(ms as f64 / 1000.0)),
    };
    vec![
        ("Tooth", format!("{}, {}", past.tooth, past.tooth.words())),
        ("Address", address),
        ("Set", set),
        ("Level", level.to_owned()),
        ("Mode", mode.to_owned()),
        ("Attempt", head.number.to_string()),
        ("Help", help),
        ("Begun", shelf.day(past)),
        ("Finished", ended),
        ("Time", time),
    ]
}

fn word(past: &Past) -> String {
    if past.is_over() {
        format!("{}.", capital(past.word.word()))
    } else {
        format!("So far {}.", past.word.word())
    }
}

fn fault(one: &Observed, past: &Past, prose: &Prose) -> Html {
    let with = if one.charged { "" } else { " (of a cause that is charged with another)" };
    let says = past.tooth.named(&prose.statement(one.rule)).into_owned();
    html! {
        <li><span class="sign" aria-hidden="true">{ sign(one.zone) }</span>{ format!(" {}: {says}{with}", capital(one.zone.word())) }</li>
    }
}

/// By which rules it was sat, and whether today's say otherwise.
fn judged_by(past: &Past) -> String {
    let sat = format!("Sat under rule set {}.", past.head.rule_set);
    let today = match past.is_judged_otherwise() {
        None => "No verdict of then was kept; what stands here is the word of",
        Some(false) => "The same verdicts under",
        Some(true) => "Judged otherwise then: what stands here is the word of",
    };
    format!("{sat} {today} today's, {RULE_SET}.")
}

fn objection(id: &str, reason: &str, past: &Past, prose: &Prose) -> Html {
    let against = rules::find(id).map_or_else(|| id.to_owned(), |rule| prose.statement(rule));
    let against = past.tooth.named(&against).into_owned();
    html! { <p class="own-note"><strong>{ format!("Held against “{against}” ") }</strong>{ reason }</p> }
}
