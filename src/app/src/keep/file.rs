//! Saving what is kept as a file, and bringing a file in.

use super::Kept;
use super::channel::Word;
use super::db::{ATTEMPTS, Db, EVENTS, NOTES, Write};
use super::keeper::{head_of, keeper, keys, written};
use super::key::{Key, event_key};
use super::restore::{events, head};
use super::shelf::{Raw, raw};
use super::told::Told;
use crate::effects::{self, Breath};
use crate::store::{Action, Bench, Room};
use engine::cases;
use engine::hash::Fnv;
use learning::file::{self, Fault};
use learning::record::{Done, Head, Record};
use serde::de::IgnoredAny;
use yew::prelude::UseReducerHandle;

/// What came of bringing a file in.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct BroughtIn {
    /// Attempts that are new here.
    pub new: usize,
    /// Attempts that went further in the file than here.
    pub further: usize,
    /// Attempts that were here already.
    pub same: usize,
    /// What was left out, and why.
    pub faults: Vec<Fault>,
}

/// The file of some attempts, or of all: their cases written out, so that others can replay them, and the
/// learner's code, where it is to be in it.
///
/// # Errors
/// A sentence.
pub async fn saved(learner: Option<&str>, wanted: impl Fn(&str) -> bool) -> Result<String, String> {
    let db = keeper().db().ok_or("nothing is kept in this browser")?;
    let notes = db.keys(NOTES, "").await.map_err(|why| why.to_string())?;
    let texts = db.texts(NOTES, "").await.map_err(|why| why.to_string())?;
    let mut breath = Breath::now();
    let mut records = Vec::new();
    for raw in raw(&db).await?.into_iter().filter(|raw| wanted(&raw.id)) {
        breath.take().await;
        let note = notes.iter().position(|id| *id == raw.id).and_then(|place| texts.get(place));
        // One that this version cannot read stays where it is.
        if let (Ok(head), Ok(events)) = (head(&raw.head), events(&raw.events)) {
            records.push(record(head, events, note.cloned().unwrap_or_default()));
        }
    }
    Ok(file::write(learner, &records))
}

fn record(head: Head, events: Vec<Done>, note: String) -> String {
    let case = head.address.and_then(|address| cases::at(address).ok());
    file::record(&Record { head, events, case, note })
}

/// The file of the attempt on the bench: as it is kept, where it is.
pub async fn of_one(bench: &Bench, kept: &Kept) -> String {
    let is_kept = matches!(kept, Kept::Here(_));
    match bench.head.as_deref().filter(|_| is_kept) {
        Some(head) => {
            let file = saved(Some(&effects::code()), |id| id == head.id).await;
            file.unwrap_or_else(|_| of_bench(head.clone(), bench))
        }
        None => of_bench(head_of(bench, kept, effects::now()), bench),
    }
}

fn of_bench(head: Head, bench: &Bench) -> String {
    let events = bench.latest().events().iter();
    let events = events.map(|event| Done { at: None, what: event.written() }).collect();
    file::write(Some(&effects::code()), &[record(head, events, String::new())])
}

/// Brings a file in. What is here already stays; of two that differ both are kept.
///
/// # Errors
/// A sentence, where nothing can be kept.
pub async fn bring_in(text: &str, room: &UseReducerHandle<Room>) -> Result<BroughtIn, String> {
    let keeper = keeper();
    let db = keeper.db().ok_or("Nothing is kept in this browser.")?;
    let read = file::read::<IgnoredAny>(text);
    let mut told = BroughtIn { faults: read.faults, ..BroughtIn::default() };
    let here = raw(&db).await?;
    for record in read.records {
        take(&db, record, &here, &mut told).await.map_err(|why| why.to_string())?;
    }
    effects::remember_keeping();
    room.dispatch(Action::Keep(Told::Known(keys(&db).await)));
    keeper.tell_tabs(&Word::Others);
    Ok(told)
}

/// Takes one attempt in.
///
/// # Errors
/// [`super::trouble::Trouble`] of the database.
pub async fn take(
    db: &Db,
    mut record: Record<IgnoredAny>,
    here: &[Raw],
    told: &mut BroughtIn,
) -> Result<(), super::trouble::Trouble> {
    let id = &record.head.id;
    let refused = match record.head.address.map(cases::at) {
        Some(Ok(_)) => None,
        Some(Err(why)) => Some(why.to_string()),
        None => Some("its case has no address, and this room opens cases by address".to_owned()),
    };
    if let Some(why) = refused {
        told.faults.push(Fault { line: 1, says: format!("attempt {id}: {why}") });
        return Ok(());
    }
    let texts: Vec<String> = record.events.iter().map(written).collect();
    let mut from = 0;
    if let Some(found) = here.iter().find(|raw| raw.id == *id) {
        let both = found.events.len().min(texts.len());
        if same(&found.events[..both], &record.events[..both]) {
            if texts.len() <= found.events.len() {
                told.same += 1;
                return Ok(());
            }
            from = both;
        } else {
            record.head.id = renamed(id, &texts);
            if here.iter().any(|raw| raw.id == record.head.id) {
                told.same += 1;
                return Ok(());
            }
        }
    }
    if from == 0 {
        told.new += 1
    } else {
        told.further += 1
    }
    db.write(&writes(&record, &texts, from)).await
}

/// Whether the same was done, whenever that was.
fn same(here: &[String], there: &[Done]) -> bool {
    let what = |text: &String| serde_json::from_str::<Done>(text).ok().map(|done| done.what);
    here.iter().map(what).eq(there.iter().map(|done| Some(done.what.clone())))
}

/// The name of an attempt that shares its name with a different one: the same again for the same.
fn renamed(id: &str, texts: &[String]) -> String {
    let mut hash = Fnv::new();
    texts.iter().for_each(|text| hash.text(text));
    format!("{}-{:08x}", &id[..id.len().min(50)], hash.value() >> 32)
}

fn writes(record: &Record<IgnoredAny>, texts: &[String], from: usize) -> Vec<Write> {
    let head = &record.head;
    let key = Key::new(head.address, &head.at, &head.id).text().to_owned();
    let mut all = vec![Write::Put(ATTEMPTS, key, written(head))];
    for (place, text) in texts.iter().enumerate().skip(from) {
        all.push(Write::Put(EVENTS, event_key(&head.id, place), text.clone()));
    }
    if !record.note.is_empty() {
        all.push(Write::Put(NOTES, head.id.clone(), record.note.clone()));
    }
    all
}
