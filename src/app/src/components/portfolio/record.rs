//! One attempt as it is printed.

use crate::components::plain::{el, line, said, text};
use crate::components::sign::signed;
use crate::prose::Prose;
use crate::shelf::Shelf;
use engine::casing::capital;
use engine::debrief::RULE_SET;
use engine::rules::{self, Level};
use engine::session::Mode;
use learning::date::clock;
use learning::past::{Observed, Past};
use yew::prelude::*;

/// The record of one attempt, with the learner's note and objections where they are wanted.
pub fn record(shelf: &Shelf, past: &Past, [notes, objections]: [bool; 2], prose: &Prose) -> Html {
    let row = |(name, says): (&'static str, String)| {
        el("div", "", vec![line("dt", "", name), said("dd", "", says)])
    };
    let faults = past.observed.iter().filter(|one| one.is_fault());
    let mut parts = vec![
        said("h2", "", shelf.title(past)),
        el("dl", "particulars", particulars(shelf, past).into_iter().map(row).collect()),
        word(past),
        el("ul", "faults", faults.map(|one| fault(one, past, prose)).collect()),
        said("p", "from", judged_by(past)),
    ];
    let note = shelf.note(&past.head.id);
    if notes && !note.is_empty() {
        parts.push(own("Own note: ".to_owned(), note));
    }
    for (id, reason) in past.objections.iter().filter(|_| objections) {
        let against = rules::find(id).map_or_else(|| id.clone(), |rule| prose.statement(rule));
        parts.push(own(format!("Held against “{}” ", past.tooth.named(&against)), reason));
    }
    el("article", "record", parts)
}

fn own(what: String, says: &str) -> Html {
    el("p", "own-note", vec![said("strong", "", what), text(says.to_owned())])
}

fn particulars(shelf: &Shelf, past: &Past) -> [(&'static str, String); 10] {
    let head = &past.head;
    let plain = |words: &str| words.to_owned();
    let level = match head.local.level {
        None => "none named",
        Some(Level::Student) => "students",
        Some(Level::Resident) => "residents",
    };
    let mode = match head.mode {
        Mode::Study => "study",
        Mode::Assessment => "assessment",
    };
    let help: Vec<&str> = head.help.iter().map(|help| help.words()).collect();
    #[expect(clippy::cast_precision_loss, reason = "far below 2^53 milliseconds")]
    let time = match past.time() {
        0 => plain("not known"),
        ms => format!("{}, pauses cut", clock(ms as f64 / 1000.0)),
    };
    [
        ("Tooth", format!("{}, {}", past.tooth, past.tooth.words())),
        ("Address", head.address.map_or_else(|| plain("none, written out"), |at| at.to_string())),
        ("Set", head.set.as_deref().map_or_else(|| plain("none"), |set| shelf.set_title(set))),
        ("Level", plain(level)),
        ("Mode", plain(mode)),
        (
            "Attempt",
            format!(
                "{}{}",
                head.number,
                if head.opened_before {
                    ", in a browser that had opened the case before"
                } else {
                    ""
                }
            ),
        ),
        ("Help", if help.is_empty() { plain("none") } else { help.join(", ") }),
        ("Begun", shelf.day(past)),
        ("Finished", finished(shelf, past)),
        ("Time", time),
    ]
}

fn finished(shelf: &Shelf, past: &Past) -> String {
    let Some(at) = past.head.ended else { return "not finished".to_owned() };
    let late = past.head.late(&[]);
    let late = late.map(|by| format!(", {by} min after the time of its set"));
    format!("{}{}", shelf.clock.date(at).words(), late.unwrap_or_default())
}

fn word(past: &Past) -> Html {
    let word = past.word.word();
    let word = if past.is_over() { capital(word) } else { format!("So far {word}") };
    let meaning = format!(". {}", past.word.meaning());
    el("p", "", vec![said("strong", "", word), text(meaning)])
}

fn fault(one: &Observed, past: &Past, prose: &Prose) -> Html {
    let with = if one.charged { "" } else { " (of a cause that is charged with another)" };
    let says = prose.statement(one.rule);
    let says = format!(" {}: {}{with}", capital(one.zone.word()), past.tooth.named(&says));
    el("li", "", vec![signed(one.zone), text(says)])
}

/// By which rules it was sat, and whether today's say otherwise.
fn judged_by(past: &Past) -> String {
    let today = match past.is_judged_otherwise() {
        None => "No verdict of then was kept; what stands here is the word of",
        Some(false) => "The same verdicts under",
        Some(true) => "Judged otherwise then: what stands here is the word of",
    };
    format!("Sat under rule set {}. {today} today's, {RULE_SET}.", past.head.rule_set)
}
