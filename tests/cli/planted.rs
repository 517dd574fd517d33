//! A class whose plans are sound but for what is planted in them.

use engine::cases::{at, proof};
use engine::chart::Case;
use engine::plan::{Decision, Draft, Value};
use engine::session::{Event, Mode, Session};
use learning::file;
use learning::past::verdicts_of;
use learning::record::{Done, Head, Record};

/// The cases that everybody sits.
pub const CASES: [&str; 4] = ["1.1.2024.0", "1.1.7.0", "1.1.11.0", "1.1.23.0"];
/// Some morning, milliseconds.
const MORNING: u64 = 1_789_981_200_000;

/// A learner, and what they get wrong.
pub struct Learner {
    pub code: String,
    /// Sends patients home without an emergency number.
    pub no_number: bool,
    /// Never sounds bone.
    pub no_sounding: bool,
}

/// What the learner hands in.
pub fn saved(learner: &Learner) -> String {
    let texts: Vec<String> = attempts(learner).iter().map(file::record).collect();
    file::write(Some(&learner.code), &texts)
}

/// One attempt at each case.
pub fn attempts(learner: &Learner) -> Vec<Record<Case>> {
    CASES.iter().zip(0..).map(|(case, place)| attempt(learner, case, place)).collect()
}

fn attempt(learner: &Learner, address: &str, place: u64) -> Record<Case> {
    let case = at(address.parse().expect("an address")).expect("a case");
    let draft = planted(proof(&case).expect("it can be solved").draft, learner);
    let mut session = Session::open(case, Mode::Assessment);
    while let Some(step) = session.due() {
        let event = match session.view().missing.first() {
            Some(decision) => Event::Choose(*decision, draft.value(*decision).cloned()),
            None => Event::CarryOut(step),
        };
        session.apply(event).expect("it can be done");
    }
    let begun = MORNING + place * 600_000;
    let id = format!("{}-{place}", learner.code);
    let mut head = Head::begin(id, format!("#/case/{address}"), &session, 1, begun);
    head.ended = Some(begun + 500_000);
    head.verdicts = verdicts_of(&session);
    let done = |(place, event): (u64, &Event)| Done {
        at: Some(begun + 1000 * place),
        what: event.written(),
    };
    let events = (1..).zip(session.events()).map(done).collect();
    Record { head, events, case: None, note: String::new() }
}

fn planted(mut draft: Draft, learner: &Learner) -> Draft {
    for (is, decision, key) in [
        (learner.no_number, Decision::Instructions, "emergency-number"),
        (learner.no_sounding, Decision::Examinations, "bone-sounding"),
    ] {
        let bit = Value::from_keys(decision, &[key]).expect("an alternative");
        if let (true, Value::Many(bit), Some(Value::Many(bits))) =
            (is, bit, draft.value(decision).cloned())
        {
            draft.choose(decision, Value::Many(bits & !bit)).expect("still an answer");
        }
    }
    draft
}
