//! `wallwise set key FILE`: what an instructor holds in the hand while a class works on a set.

use crate::commands::case::truth;
use crate::{Fault, Status, Streams};
use engine::cases::{self, Slip, usual};
use engine::chart::Case;
use engine::debrief::CAUTION;
use engine::plan::{Decision, Draft, Value};
use engine::scenario::Set;
use engine::search::answer_words;
use learning::class::alternative;

/// So many faults of a case are told.
const MOST: usize = 12;

/// Prints it, case by case as each is drawn.
pub fn run(set: &Set, streams: &mut Streams<'_>) -> Result<Status, Fault> {
    streams.print(&format!(
        "Key for the instructor: {}\n{}\n{CAUTION}\nNot for learners: it tells what each case hides.\n",
        set.title, set.aim
    ))?;
    let local = set.local();
    let mut status = Status::Done;
    for (place, entry) in set.cases.iter().enumerate() {
        let text = match entry.case(local.clone()) {
            Ok(case) => one(&case, entry.ask.as_deref()),
            Err(why) => {
                status = Status::Findings;
                format!("{why}\n")
            }
        };
        streams.print(&format!("\nCase {}. {text}", place + 1))?;
    }
    Ok(status)
}

fn one(case: &Case, ask: Option<&str>) -> String {
    let sound = cases::proof(case).map(|proof| proof.draft);
    let mut text = truth(case, sound.as_ref());
    if let Some(sound) = &sound {
        let slips = cases::slips(case, sound);
        text.push_str("\nUsual faults: one answer off the sound plan, the gravest first\n");
        for slip in usual(&slips).into_iter().take(MOST) {
            text.push_str(&fault(slip, sound, case));
        }
    }
    text.push_str(&format!(
        "\nWhat to ask: {}\n",
        ask.unwrap_or("What would have to be different for you to choose otherwise?")
    ));
    text
}

fn fault(slip: &Slip, sound: &Draft, case: &Case) -> String {
    let tooth = case.site.tooth;
    let label = tooth.named(slip.decision.entry().label);
    let answer = match (sound.value(slip.decision), &slip.value) {
        (Some(Value::Many(was)), Value::Many(is)) => turned(slip.decision, *was, *is),
        _ => answer_words(slip.decision, &slip.value, tooth).trim_end().to_owned(),
    };
    format!(
        "  - {label}: {}\n    {}: {}\n",
        tooth.named(&answer),
        slip.zone.word(),
        tooth.named(slip.rule.statement)
    )
}

/// Which boxes of a list are ticked otherwise.
fn turned(decision: Decision, was: u32, is: u32) -> String {
    let named = |bits: u32| {
        let places = (0..32_u8).filter(|place| bits >> place & 1 == 1);
        places.map(|place| alternative(decision, place)).collect::<Vec<_>>().join(", ")
    };
    let parts = [("without", was & !is), ("with", is & !was)];
    let parts = parts.into_iter().filter(|(_, bits)| *bits != 0);
    parts.map(|(word, bits)| format!("{word} {}", named(bits))).collect::<Vec<_>>().join(", ")
}
