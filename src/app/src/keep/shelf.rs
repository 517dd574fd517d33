//! Everything that is kept, read and replayed: what pages on one's own practice are made of.

use super::db::{ATTEMPTS, Db, EVENTS, NOTES};
use super::keeper::keeper;
use super::restore::{events, head};
use crate::effects::Breath;
use crate::library::Library;
use crate::sat::hold_back;
use crate::shelf::Shelf;
use core::cell::RefCell;
use engine::cases;
use learning::past::{Past, replay};
use learning::record::Head;
use std::rc::Rc;

/// An attempt as it is kept.
#[derive(Debug, Clone)]
pub struct Raw {
    /// Its name.
    pub id: String,
    /// Its head, as text.
    pub head: String,
    /// What was done, as texts.
    pub events: Vec<String>,
}

thread_local! {
    /// What has been replayed since the page was loaded, with the number of events that it had.
    static REPLAYED: RefCell<Vec<(usize, Past)>> = const { RefCell::new(Vec::new()) };
}

/// Every attempt as it is kept, in the order of their names, which is that of time.
///
/// # Errors
/// A sentence.
pub async fn raw(db: &Db) -> Result<Vec<Raw>, String> {
    let told = |why: super::trouble::Trouble| why.to_string();
    let keys = db.keys(ATTEMPTS, "").await.map_err(told)?;
    let heads = db.texts(ATTEMPTS, "").await.map_err(told)?;
    let places = db.keys(EVENTS, "").await.map_err(told)?;
    let texts = db.texts(EVENTS, "").await.map_err(told)?;
    let mut all: Vec<Raw> = keys
        .into_iter()
        .zip(heads)
        .map(|(key, head)| {
            let id = super::key::Key::read(key).id().to_owned();
            Raw { id, head, events: Vec::new() }
        })
        .collect();
    // Heads stand by case, events by attempt.
    all.sort_unstable_by(|one, other| one.id.cmp(&other.id));
    let mut at = 0;
    for (place, text) in places.iter().zip(texts) {
        let id = place.split('/').next().unwrap_or_default();
        while all.get(at).is_some_and(|raw| raw.id.as_str() < id) {
            at += 1;
        }
        if let Some(raw) = all.get_mut(at).filter(|raw| raw.id == id) {
            raw.events.push(text);
        }
    }
    Ok(all)
}

/// Reads and replays everything, giving the page its turn now and then.
///
/// # Errors
/// A sentence.
pub async fn shelf(library: Library) -> Result<Shelf, String> {
    let db = keeper().db().ok_or("nothing is kept in this browser")?;
    let (mut pasts, mut aside) = (Vec::new(), Vec::new());
    let mut breath = Breath::now();
    for raw in raw(&db).await? {
        breath.take().await;
        match past(&raw) {
            Ok(past) => pasts.push(past),
            Err(why) => aside.push((raw.id, why)),
        }
    }
    let waiting = hold_back(&mut pasts, &library);
    let (pasts, notes, aside) = (Rc::new(pasts), Rc::new(notes(&db).await?), Rc::new(aside));
    Ok(Shelf { pasts, notes, aside, waiting, ..Shelf::empty(library) })
}

/// Notes, by attempt.
async fn notes(db: &Db) -> Result<Vec<(String, String)>, String> {
    let keys = db.keys(NOTES, "").await.map_err(|why| why.to_string())?;
    let texts = db.texts(NOTES, "").await.map_err(|why| why.to_string())?;
    Ok(keys.into_iter().zip(texts).collect())
}

fn past(raw: &Raw) -> Result<Past, String> {
    let head = head(&raw.head)?;
    let count = raw.events.len();
    let known = REPLAYED.with_borrow(|all| {
        let same = |(had, past): &&(usize, Past)| *had == count && past.head == head;
        all.iter().find(same).map(|(_, past)| past.clone())
    });
    if let Some(past) = known {
        return Ok(past);
    }
    let past = replayed(head, &raw.events)?;
    REPLAYED.with_borrow_mut(|all| {
        all.retain(|(_, other)| other.head.id != past.head.id);
        all.push((count, past.clone()));
    });
    Ok(past)
}

fn replayed(head: Head, texts: &[String]) -> Result<Past, String> {
    let address = head.address.ok_or("its case has no address")?;
    let case = cases::at(address).map_err(|why| why.to_string())?;
    let done = events(texts)?;
    let session = replay(&head, &done, case).map_err(|why| why.to_string())?;
    Ok(Past::of(head, &done, &session))
}

/// Attempts, things done in them, notes: how many there are.
pub async fn counts() -> [usize; 3] {
    let mut counts = [0; 3];
    if let Some(db) = keeper().db() {
        for (count, store) in counts.iter_mut().zip([ATTEMPTS, EVENTS, NOTES]) {
            *count = db.keys(store, "").await.map_or(0, |keys| keys.len());
        }
    }
    counts
}
