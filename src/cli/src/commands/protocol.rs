//! What a set decides otherwise than the rules, as the tool prints it.

use engine::debrief::{Line, protocol};
use engine::rules::{Level, Local, Rule, Side};

/// The set's protocol as lines; nothing where it decides nothing otherwise.
pub fn text(local: &Local) -> String {
    if local.protocol.is_empty() {
        return String::new();
    }
    let mut text = format!("\nProtocol of this set{}\n", for_whom(local.level));
    if let Some(note) = &local.protocol.note {
        text.push_str(&format!("  {note}\n"));
    }
    for line in protocol(local) {
        text.push_str(&format!("  {}\n    {}\n", line.rule.id, said(&line)));
    }
    text.push('\n');
    text
}

const fn for_whom(level: Option<Level>) -> &'static str {
    match level {
        Some(Level::Student) => ", for students",
        Some(Level::Resident) => ", for residents",
        None => "",
    }
}

/// What is decided of one rule, in sentences.
pub fn said(line: &Line) -> String {
    let holds = line
        .holds
        .map(|side| format!("Your set holds: \u{201c}{}\u{201d}", stated(line.rule, side)));
    let parts = [line.moved.clone(), holds.unwrap_or_default(), line.makes.clone()];
    parts.into_iter().filter(|part| !part.is_empty()).collect::<Vec<_>>().join(" ")
}

/// A position of a rule as it states it.
fn stated(rule: &Rule, side: Side) -> &'static str {
    match (rule.positions, side) {
        (Some(both), Side::One) => both.one,
        (Some(both), Side::Other) => both.other,
        (None, _) => "",
    }
}
