//! What a set has to have before it can be handed out.

use crate::library::ShippedSet;
use crate::sat::conditions;
use engine::scenario::Verdicts;

/// What it lacks, in words.
pub fn missing(set: &ShippedSet) -> Vec<&'static str> {
    let lacks = [
        (set.title.trim().is_empty(), "a title"),
        (set.aim.trim().is_empty(), "an aim"),
        (set.addresses.is_empty(), "a case"),
        (waits_for_nothing(set), "the word that verdicts wait for"),
    ];
    lacks.into_iter().filter(|(lacks, _)| *lacks).map(|(_, what)| what).collect()
}

/// Whether verdicts wait for a word, and there is none.
fn waits_for_nothing(set: &ShippedSet) -> bool {
    set.word.trim().is_empty() && matches!(conditions(set).verdicts, Verdicts::AtWord(_))
}
