//! The browser's own database, as the room uses it: three stores of texts. What the texts say is
//! written and read elsewhere.
//!
//! `attempts` holds the head of each attempt under `ADDRESS AT ID`, `events` each thing done under
//! `ID/PLACE`, `notes` what a learner wrote to themselves under `ID`. An event is added, never put in
//! place of another: of two tabs that write the same place one is refused and learns of the other.

use super::trouble::Trouble;
use idb::request::OpenDatabaseRequest;
use idb::{
    Database, DatabaseEvent, Event, Factory, KeyRange, ObjectStoreParams, Query, Request,
    Transaction, TransactionMode,
};
use js_sys::{Array, Promise};
use std::rc::Rc;
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::JsFuture;

/// Version of the stores. What a later version has made is refused and left as it is.
const VERSION: u32 = 1;

/// Heads of attempts.
pub const ATTEMPTS: &str = "attempts";
/// What was done.
pub const EVENTS: &str = "events";
/// Notes of one's own.
pub const NOTES: &str = "notes";
/// All of them.
pub const STORES: [&str; 3] = [ATTEMPTS, EVENTS, NOTES];

/// One change, as part of a transaction.
#[derive(Debug, Clone)]
pub enum Write {
    /// Adds a text where none may be.
    Add(&'static str, String, String),
    /// Puts a text in place of what is there.
    Put(&'static str, String, String),
    /// Takes a text away.
    Delete(&'static str, String),
    /// Empties a store.
    Clear(&'static str),
}

/// The open database.
#[derive(Clone)]
pub struct Db(Rc<Database>);

impl Db {
    /// Opens the one of this name, and makes its stores where there are none. `closed` is told when a
    /// newer version of the room asks for it from another tab: it has been let go of then.
    ///
    /// # Errors
    /// [`Trouble`] where the browser keeps nothing.
    pub async fn open(name: &str, closed: impl FnOnce() + 'static) -> Result<Self, Trouble> {
        let factory = Factory::new().map_err(Trouble::of)?;
        let mut request = factory.open(name, Some(VERSION)).map_err(Trouble::of)?;
        request.on_upgrade_needed(|event| {
            let Ok(database) = event.database() else { return };
            let there = database.store_names();
            for store in STORES.iter().filter(|store| there.iter().all(|name| name != *store)) {
                // A refusal ends the upgrade, and the opening fails with it.
                let _ = database.create_object_store(store, ObjectStoreParams::new());
            }
        });
        let opened = opened(&mut request);
        let database = JsFuture::from(opened).await.map_err(Trouble::from_js)?;
        let mut database = Database::try_from(database).map_err(Trouble::of)?;
        database.on_version_change(move |event| {
            // What asks for it waits until it is let go of.
            let database = event.target().and_then(|target| Database::try_from(target).ok());
            if let Some(database) = database {
                database.close();
            }
            closed();
        });
        Ok(Self(Rc::new(database)))
    }

    /// All that, in one transaction: wholly or not at all.
    ///
    /// # Errors
    /// [`Trouble`]; nothing has changed then.
    pub async fn write(&self, writes: &[Write]) -> Result<(), Trouble> {
        let transaction =
            self.0.transaction(&STORES, TransactionMode::ReadWrite).map_err(Trouble::of)?;
        for write in writes {
            one(&transaction, write).map_err(Trouble::of)?;
        }
        ended(transaction).await
    }

    /// Texts of a store whose keys begin like this, in the order of their keys.
    ///
    /// # Errors
    /// [`Trouble`].
    pub async fn texts(&self, store: &'static str, begin: &str) -> Result<Vec<String>, Trouble> {
        self.read(store, begin, false).await
    }

    /// Their keys.
    ///
    /// # Errors
    /// [`Trouble`].
    pub async fn keys(&self, store: &'static str, begin: &str) -> Result<Vec<String>, Trouble> {
        self.read(store, begin, true).await
    }

    async fn read(
        &self,
        store: &'static str,
        begin: &str,
        keys: bool,
    ) -> Result<Vec<String>, Trouble> {
        let transaction =
            self.0.transaction(&[store], TransactionMode::ReadOnly).map_err(Trouble::of)?;
        let objects = transaction.object_store(store).map_err(Trouble::of)?;
        let query = beginning(begin).map_err(Trouble::of)?;
        let found = if keys {
            let request = objects.get_all_keys(query, None).map_err(Trouble::of)?;
            ended(transaction).await?;
            request.result()
        } else {
            let request = objects.get_all(query, None).map_err(Trouble::of)?;
            ended(transaction).await?;
            request.result()
        };
        let found: Array = found.map_err(Trouble::of)?.unchecked_into();
        Ok(found.iter().filter_map(|text| text.as_string()).collect())
    }
}

/// Every key that begins like this; all of them where nothing is said.
fn beginning(begin: &str) -> Result<Option<Query>, idb::Error> {
    if begin.is_empty() {
        return Ok(None);
    }
    // No key holds a character beyond this one.
    let end = format!("{begin}\u{ffff}");
    KeyRange::bound(&begin.into(), &end.into(), None, None).map(|range| Some(range.into()))
}

fn one(transaction: &Transaction, write: &Write) -> Result<(), idb::Error> {
    let store = |name: &str| transaction.object_store(name);
    match write {
        Write::Add(name, key, text) => {
            store(name)?.add(&text.as_str().into(), Some(&key.as_str().into()))?;
        }
        Write::Put(name, key, text) => {
            store(name)?.put(&text.as_str().into(), Some(&key.as_str().into()))?;
        }
        Write::Delete(name, key) => {
            store(name)?.delete(JsValue::from_str(key))?;
        }
        Write::Clear(name) => {
            store(name)?.clear()?;
        }
    }
    Ok(())
}

/// What the database answers to being opened, or why it cannot be.
fn opened(request: &mut OpenDatabaseRequest) -> Promise {
    Promise::new(&mut |resolve, reject| {
        request.on_success(move |event| {
            let found = event.database().map_or(JsValue::NULL, JsValue::from);
            let _ = resolve.call1(&JsValue::NULL, &found);
        });
        request.on_error(move |event| {
            let error = event.target().and_then(|request| request.error()).ok().flatten();
            // Said by the room, not by the console.
            web_sys::Event::from(event).prevent_default();
            let _ = reject.call1(&JsValue::NULL, &error.map_or(JsValue::NULL, JsValue::from));
        });
    })
}

/// Waits for the end of a transaction: what aborts it is what is wrong.
async fn ended(mut transaction: Transaction) -> Result<(), Trouble> {
    let promise = Promise::new(&mut |resolve, reject| {
        transaction.on_complete(move |_| {
            let _ = resolve.call0(&JsValue::NULL);
        });
        transaction.on_abort(move |event| {
            let found = event.target().and_then(|target| Transaction::try_from(target).ok());
            let error = found.and_then(|transaction| transaction.error());
            let _ = reject.call1(&JsValue::NULL, &error.map_or(JsValue::NULL, JsValue::from));
        });
    });
    JsFuture::from(promise).await.map(drop).map_err(Trouble::from_js)
}
