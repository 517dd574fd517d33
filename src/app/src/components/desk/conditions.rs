//! Under what conditions a set is sat: when verdicts come, for how long, how often, what is read first.

use super::Desk;
use crate::components::fields::{one_of, words};
use crate::library::ShippedSet;
use crate::sat::conditions;
use engine::scenario::{Conditions, MOST_ATTEMPTS, MOST_MINUTES, Verdicts};
use yew::prelude::*;

/// Who does the cases and when verdicts come: keys and words.
const WHEN: [(&str, &str); 5] = [
    (WORKED, "are shown each case, act by act"),
    (STUDY, "decide; verdicts after each step"),
    (CASE, "decide; verdicts after each case"),
    (SET, "decide; verdicts after the set"),
    (WORD, "decide; verdicts with your word"),
];
const WORKED: &str = "worked";
const STUDY: &str = "study";
const CASE: &str = "assessment";
const SET: &str = "set";
const WORD: &str = "word";

/// The fields.
pub fn sat(desk: &Desk) -> Vec<Html> {
    let set = &*desk.set;
    let now = conditions(set);
    let change = |to: fn(&mut Conditions, &str)| {
        let desk = desk.clone();
        Callback::from(move |text: String| desk.change(|set| with(set, |now| to(now, &text))))
    };
    let when = {
        let desk = desk.clone();
        Callback::from(move |key: String| desk.change(|set| come(set, &key)))
    };
    let is_sat = set.mode == CASE;
    let chosen = match now.verdicts {
        _ if set.is_worked() => WORKED,
        _ if !is_sat => STUDY,
        Verdicts::AfterCase => CASE,
        Verdicts::AfterSet => SET,
        Verdicts::AtWord(_) => WORD,
    };
    let mut parts = vec![one_of("desk-mode", "Learners", &WHEN, chosen, when)];
    if chosen == WORD {
        let desk = desk.clone();
        let told = Callback::from(move |word: String| {
            desk.change(|set| {
                set.word = word;
                come(set, WORD);
            });
        });
        parts.push(words("desk-word", "The word: it stays with you", &set.word, told));
    }
    let number = |value: Option<u16>| value.map(|value| value.to_string()).unwrap_or_default();
    if is_sat {
        let told = change(|now, text| now.minutes = counted(text, MOST_MINUTES));
        let name = "Minutes for the whole set; empty for no limit";
        parts.push(words("desk-minutes", name, &number(now.minutes), told));
    }
    let told = change(|now, text| now.attempts = counted(text, MOST_ATTEMPTS));
    let name = "Attempts at each case; empty for any number";
    parts.push(words("desk-attempts", name, &number(now.attempts), told));
    let told = change(|now, text| text.trim().clone_into(&mut now.opening));
    let name = "What a learner reads before the first case, if anything";
    parts.push(words("desk-opening", name, &now.opening, told));
    parts
}

/// Has the verdicts of a set come then; what only an assessment has goes with it.
fn come(set: &mut ShippedSet, key: &str) {
    let told_at_once = matches!(key, WORKED | STUDY);
    (if told_at_once { key } else { CASE }).clone_into(&mut set.mode);
    let verdicts = match key {
        SET => Verdicts::AfterSet,
        WORD => Verdicts::at_word(&set.word),
        _ => Verdicts::AfterCase,
    };
    with(set, |now| {
        now.verdicts = verdicts;
        now.minutes = now.minutes.filter(|_| !told_at_once);
    });
}

fn with(set: &mut ShippedSet, change: impl FnOnce(&mut Conditions)) {
    let mut now = conditions(set);
    change(&mut now);
    set.conditions = if now.is_empty() { String::new() } else { now.line() };
}

/// A number from 1 up to the most; nothing where there is none.
fn counted(text: &str, most: u16) -> Option<u16> {
    text.trim().parse::<u16>().ok().filter(|count| *count > 0).map(|count| count.min(most))
}
