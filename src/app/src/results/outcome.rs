//! What came of a set, from its attempts: each done again and judged.

use crate::components::decided::local_of;
use crate::effects::Breath;
use crate::library::{Library, ShippedSet};
use crate::route::{From, Route};
use core::cell::RefCell;
use engine::cases;
use engine::plan::Plan;
use engine::session::{Mode, Session};
use learning::handing::compact::Kept;
use learning::handing::outcome::{CaseOutcome, Outcome};
use learning::past::{Past, replay};

/// Marks of attempts that came to their end, by their names: a mark takes a search.
pub type Marks = RefCell<Vec<(String, Option<f64>)>>;

/// What came of a set whose cases are opened by their places in it.
pub async fn of_set(
    set: &ShippedSet,
    library: &Library,
    attempts: &[Kept],
    marks: &Marks,
) -> Outcome {
    let mut told = Outcome::new("learner", &set.name, &set.title);
    let local = local_of(Some(&set.name), library).unwrap_or_default();
    let assessed = crate::effects::entry("data-assessment").is_some();
    for (place, address) in set.addresses.iter().enumerate() {
        let at_place = |one: &&Kept| match Route::read(&one.head.at) {
            Route::Case(case) => case.from == From::Set(set.name.clone(), place + 1),
            _ => false,
        };
        // Help is no answer, and what comes back from a host is held to what the set says.
        let counts = |one: &&Kept| {
            let head = &one.head;
            head.is_own()
                && head.address == Some(*address)
                && head.local == local
                && (!assessed || head.mode == Mode::Assessment)
        };
        let mut here = attempts.iter().filter(at_place).filter(counts);
        let latest = here.clone().next_back();
        // One that came to its end is not undone by another that is begun.
        let chosen = here.rfind(|one| one.head.ended.is_some()).or(latest);
        let name = format!("case-{}", place + 1);
        let case = match chosen {
            Some(one) => case_of(&name, one, marks).await,
            None => None,
        };
        told.cases
            .push(case.unwrap_or_else(|| CaseOutcome::untouched(&name, &address.to_string())));
    }
    told.total = told.cases.iter().map(|case| case.spent).sum();
    told
}

/// What came of one attempt; nothing where it cannot be done again.
pub async fn case_of(name: &str, kept: &Kept, marks: &Marks) -> Option<CaseOutcome> {
    let Kept { head, events } = kept;
    Breath::now().take_now().await;
    let case = cases::at(head.address?).ok()?;
    let session = replay(head, events, case).ok()?;
    let past = Past::of(head.clone(), events, &session);
    let known = marks.borrow().iter().find(|(id, _)| *id == head.id).map(|(_, mark)| *mark);
    let mark = match known {
        _ if !session.is_over() => None,
        Some(mark) => mark,
        None => {
            let mark = mark_of(&session);
            marks.borrow_mut().push((head.id.clone(), mark));
            mark
        }
    };
    Some(CaseOutcome::of(name, &past, &session, events, mark))
}

/// The mark that the debrief shows.
fn mark_of(session: &Session) -> Option<f64> {
    let case = session.opened();
    let sound = engine::search::sound_of(case);
    let reference = sound.and_then(|sound| Plan::from_draft(&sound, case).ok());
    session.debrief(reference.as_ref())?.mark.percent()
}
