//! Writes a learner's seven weeks as a file that the room brings in: an invention with two planted
//! faults, for the browser tests of the pages that look back.
//!
//! `cargo run -p tests --example planted-learner > tests/data/planted-learner.json`
//!
//! The plans are sound but for what is planted: every patient goes home without an emergency number
//! until the fifth week, the bone of lower teeth is never sounded, and the learner is never less sure
//! than 90 %.

use engine::anatomy::Jaw;
use engine::cases::{Constraints, Spread, generate_as, proof};
use engine::chart::Case;
use engine::plan::{Decision, Draft, Value};
use engine::session::{Event, Mode, Session};
use learning::file;
use learning::record::{Done, Head, Record};
use std::io::Write;

const DAY: u64 = 24 * 60 * 60 * 1000;
/// Some Monday morning.
const START: u64 = 1_789_981_200_000;
const WEEKS: u64 = 7;
const A_WEEK: u64 = 5;

fn main() {
    let records: Vec<String> = (0..WEEKS * A_WEEK).filter_map(attempt).collect();
    // A closed pipe ends it.
    let _ = std::io::stdout().write_all(file::write(None, &records).as_bytes());
}

/// The attempt of this place in the course: one on each working day.
fn attempt(place: u64) -> Option<String> {
    let (week, day) = (place / A_WEEK, place % A_WEEK);
    let begun = START + (7 * week + day) * DAY;
    let case = generate_as(Spread::WholeMouth, 500 + place, &Constraints::default()).ok()?;
    let address = case.address?;
    let draft = planted(&case, proof(&case)?.draft, week);
    let mut session = Session::open(case, Mode::Study);
    let mut events = Vec::new();
    let mut now = begun;
    while let Some(step) = session.due() {
        // An answer may bring another question in.
        let missing = session.view().missing.first().copied();
        let sure = session.sure().iter().any(|(other, _)| *other == step);
        let event = match missing {
            Some(decision) => Event::Choose(decision, Some(draft.value(decision)?.clone())),
            None if !sure => {
                Event::Sure(step, Some(if place.is_multiple_of(3) { 100 } else { 90 }))
            }
            None => Event::CarryOut(step),
        };
        now += 9_000 + 700 * (place % 7);
        let what = event.written();
        session.apply(event).ok()?;
        events.push(Done { at: Some(now), what });
    }
    let at = format!("#/case/{address}");
    let mut head = Head::begin(format!("planted-{place:02}"), at, &session, 1, begun);
    head.ended = Some(now);
    let note = if place == 20 {
        "Ask for the number before the patient leaves.".to_owned()
    } else {
        String::new()
    };
    Some(file::record(&Record::<Case> { head, events, case: None, note }))
}

/// The sound plan with the planted faults.
fn planted(case: &Case, mut draft: Draft, week: u64) -> Draft {
    let without = |draft: &mut Draft, decision: Decision, key: &str| {
        let Ok(Value::Many(bit)) = Value::from_keys(decision, &[key]) else { return };
        if let Some(Value::Many(bits)) = draft.value(decision).cloned() {
            // What is left is still an answer.
            let _ = draft.choose(decision, Value::Many(bits & !bit));
        }
    };
    if week < 4 {
        without(&mut draft, Decision::Instructions, "emergency-number");
    }
    if case.site.tooth.jaw() == Jaw::Mandible {
        without(&mut draft, Decision::Examinations, "bone-sounding");
    }
    draft
}
