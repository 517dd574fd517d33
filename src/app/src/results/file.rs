//! Results as a file of statements, for a set or for attempts of one's choice.

use super::outcome::{case_of, of_set};
use super::results;
use crate::effects;
use crate::keep::keeper::keeper;
use crate::keep::restore::{events, head};
use crate::keep::shelf::raw;
use crate::library::Library;
use crate::store::Room;
use learning::handing::compact::Kept;
use learning::handing::outcome::{Outcome, hash_of};
use learning::handing::xapi::{self, Speaker, uuid_of};
use wasm_bindgen_futures::spawn_local;
use yew::prelude::*;

/// Under what activities are named where the room has no address of its own.
const NOWHERE: &str = "https://wallwise.invalid/room";
/// The name of what stands outside sets.
const OUTSIDE: &str = "outside-sets";

/// Saves what came of the set of this package.
pub fn saving(room: UseReducerHandle<Room>) -> Callback<MouseEvent> {
    Callback::from(move |_| {
        let room = room.clone();
        spawn_local(async move {
            let told = results().outcome(&room).await;
            if let Ok(text) = told.and_then(|told| statements(&[told])) {
                effects::save("wallwise-results.json", &text);
            }
        });
    })
}

/// Kept attempts of these names, as a file: set by set, in a set the latest attempt at each case.
///
/// # Errors
/// A sentence.
pub async fn of_attempts(wanted: &[String], library: &Library) -> Result<String, String> {
    let db = keeper().db().ok_or("nothing is kept in this browser")?;
    let all = raw(&db).await?;
    // Whoever gathers files tells their learners apart by this, and learns no more of them.
    let first = all.first().map(|one| hash_of(&one.id)).unwrap_or_default();
    let mut sets: Vec<(String, Vec<Kept>)> = Vec::new();
    for one in all.iter().filter(|one| wanted.contains(&one.id)) {
        if let (Ok(head), Ok(events)) = (head(&one.head), events(&one.events)) {
            let set = head.set.clone().unwrap_or_else(|| OUTSIDE.to_owned());
            let kept = Kept { head, events };
            match sets.iter_mut().find(|(name, _)| *name == set) {
                Some((_, attempts)) => attempts.push(kept),
                None => sets.push((set, vec![kept])),
            }
        }
    }
    let mut outcomes = Vec::new();
    for (name, attempts) in &sets {
        let shipped = match library {
            Library::Here(sets) => sets.iter().find(|set| set.name == *name),
            _ => None,
        };
        let mut told = match shipped {
            Some(set) => of_set(set, library, attempts, &results().marks).await,
            None => of_cases(name, attempts).await,
        };
        told.learner = format!("learner-{first}");
        outcomes.push(told);
    }
    statements(&outcomes)
}

/// What came of cases that no set of the room gives, by their addresses.
async fn of_cases(name: &str, attempts: &[Kept]) -> Outcome {
    let mut told = Outcome::new("learner", name, "Cases outside sets");
    for one in attempts.iter().rev() {
        let case = one.head.address.map(|at| at.to_string().replace('.', "-")).unwrap_or_default();
        if told.cases.iter().all(|other| other.name != case)
            && let Some(case) = case_of(&case, one, &results().marks).await
        {
            told.cases.push(case);
        }
    }
    told.total = told.cases.iter().map(|case| case.spent).sum();
    told
}

fn statements(outcomes: &[Outcome]) -> Result<String, String> {
    let here = effects::address_of("");
    let base = here.split('?').next().unwrap_or_default().trim_end_matches("index.html");
    let base = base.trim_end_matches('/');
    let base = if base.starts_with("http") { base } else { NOWHERE };
    let learner = outcomes.first().map_or("", |told| told.learner.as_str());
    let registration = uuid_of(&format!("{base} {learner}"));
    let now = effects::now();
    let speaker = Speaker { base, home: base, registration: &registration, language: "en-GB", now };
    xapi::file(outcomes, &speaker).map_err(|why| why.to_string())
}
