//! Which other answers to a decision are worth trying.

use crate::plan::{Decision, Draft, Kind, Value};

/// Other answers than the draft's: every alternative; for a list each box turned by itself and the
/// list by the book; for a number both ways in growing steps, and the number by the book; for an outline
/// that by the book.
pub(super) fn others(decision: Decision, draft: &Draft, book: &Draft) -> Vec<Value> {
    let now = draft.value(decision);
    let mut all: Vec<Value> = match (decision.entry().kind, now) {
        (Kind::Number(kind), Some(Value::Number(count))) => {
            let ways = (1..=12).flat_map(|step| [step, -step]);
            ways.map(|step| count + step * stride(decision))
                .filter(|count| kind.allows(*count))
                .map(Value::Number)
                .collect()
        }
        (list, _) => list.of_list(now),
    };
    if let Some(value) = book.value(decision).filter(|value| !all.contains(value)) {
        all.push(value.clone());
    }
    all.retain(|value| now != Some(value));
    all
}

/// Answers that lie between one and another, the nearest to the first one first, both left out: numbers
/// on the way; lists of which fewer boxes are turned.
pub(super) fn between(decision: Decision, from: &Value, to: &Value) -> Vec<Value> {
    match (decision.entry().kind, from, to) {
        (Kind::Number(kind), Value::Number(from), Value::Number(to)) => {
            // At most so many are tried: of a long way every so many.
            const MOST: i32 = 16;
            let count = (to - from).abs() / kind.by;
            let stride = kind.by * (count / MOST).max(1);
            let way = if to > from { stride } else { -stride };
            let ahead = |at: &i32| (to - at).signum() == (to - from).signum();
            (1..).map(|k| from + k * way).take_while(ahead).map(Value::Number).collect()
        }
        (Kind::Many(options), Value::Many(from), Value::Many(to)) => {
            // One box back at a time: a search that goes on from what it kept finds the rest.
            let turned =
                (0..options.len()).map(|place| 1 << place).filter(|bit| (from ^ to) & bit != 0);
            turned.map(|bit| Value::Many(to ^ bit)).collect()
        }
        _ => Vec::new(),
    }
}

/// By how many counts numbers of this decision are tried.
fn stride(decision: Decision) -> i32 {
    match decision.entry().kind {
        Kind::Number(kind) if kind.unit == "mm" && kind.by == 1 => 5,
        Kind::Number(kind) if kind.unit == "degrees" => 5,
        Kind::Number(kind) => kind.by,
        _ => 1,
    }
}
