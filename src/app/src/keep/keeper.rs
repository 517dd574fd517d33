//! Writes what is done on the bench as it is done, one thing after the other.
//!
//! The room hands over the state of the bench after each change; whatever of it is not yet on its way
//! to the database is put in line. One task works the line off, so that events are written in the order
//! in which they were done, each in a transaction of its own.

use super::Kept;
use super::channel::{Channel, Word};
use super::db::{ATTEMPTS, Db, EVENTS, Write};
use super::key::{Key, event_key, events_of, fresh_id};
use super::restore::restore;
use super::told::Told;
use super::trouble::Trouble;
use crate::bench::Restored;
use crate::effects;
use crate::results;
use crate::route::{From, Route};
use crate::sat;
use crate::store::{Action, Bench, Room};
use core::cell::{Cell, RefCell, RefMut};
use engine::session::{Event, Shown};
use learning::past::note_verdicts;
use learning::record::{Done, Head, Help};
use std::collections::VecDeque;
use std::rc::Rc;
use yew::prelude::*;

/// How long the browser may take to open its database, milliseconds.
const LONGEST_OPENING: i32 = 5000;

/// What the room is told with.
pub type Tell = UseReducerDispatcher<Room>;

/// The keeper: one for the page.
#[derive(Default)]
pub struct Keeper {
    db: RefCell<Option<Db>>,
    line: RefCell<Line>,
    channel: RefCell<Option<Channel>>,
    /// The case that was opened last, and whether it had been opened in this browser before.
    opened: Cell<(u32, bool)>,
}

/// What is still to be written.
#[derive(Default)]
struct Line {
    jobs: VecDeque<Job>,
    /// Whether somebody works it off.
    busy: bool,
    /// The case on the bench.
    serial: u32,
    /// Its circumstances.
    head: Option<Head>,
    /// How many of its events have been put in line.
    sent: usize,
    /// How many of them are kept.
    kept: usize,
    /// What was done up to here is not kept again before more is: it was erased.
    erased: usize,
    /// Whether another tab has told that it wrote in this attempt.
    news: bool,
    /// Whether what another tab wrote is on its way to the bench: nothing goes in line until it is there.
    behind: bool,
}

/// What the line is worked off in.
enum Turn {
    /// An event is written.
    Write(Job),
    /// What another tab wrote in the attempt at this case is read.
    CatchUp(u32),
}

/// One event to be written.
struct Job {
    serial: u32,
    id: String,
    place: usize,
    writes: Vec<Write>,
    /// Whether an attempt begins or ends with it.
    turn: bool,
    /// Whether the room waits for it.
    moves_on: bool,
}

thread_local! {
    static KEEPER: Rc<Keeper> = Rc::default();
}

/// The page's keeper.
pub fn keeper() -> Rc<Keeper> {
    KEEPER.with(Rc::clone)
}

/// Opens the database and the channel, and says what is kept.
pub fn open(tell: Tell) {
    wasm_bindgen_futures::spawn_local(keeper().open(tell.clone()));
    wasm_bindgen_futures::spawn_local(async move {
        effects::after(LONGEST_OPENING).await;
        tell.dispatch(Action::Keep(Told::NoAnswer));
    });
}

/// Puts in line what has been done on the bench and is not there yet.
pub fn follow(bench: &Bench, kept: &Kept, tell: &Tell) {
    keeper().follow(bench, kept, tell);
}

/// Fetches a kept attempt for the bench.
pub fn fetch(key: Key, tell: Tell) {
    wasm_bindgen_futures::spawn_local(keeper().fetch(key, tell));
}

impl Keeper {
    /// The database, where it is open.
    pub fn db(&self) -> Option<Db> {
        self.db.borrow().clone()
    }

    /// Hears that a case is shown, and whether it was in this browser before.
    pub fn opened(&self, serial: u32, before: bool) {
        self.opened.set((serial, before));
    }

    /// Tells the other tabs.
    pub fn tell_tabs(&self, word: &Word) {
        if let Some(channel) = &*self.channel.borrow() {
            channel.tell(word);
        }
    }

    async fn open(self: Rc<Self>, tell: Tell) {
        let newer = tell.clone();
        let closed = move || newer.dispatch(Action::Keep(Told::NotStored(Trouble::Newer)));
        let store = results::store();
        let kept = match Db::open(&store, closed).await {
            Ok(db) => {
                self.listen(&store, &tell);
                *self.db.borrow_mut() = Some(db.clone());
                results::resume(&db).await;
                keys(&db).await
            }
            Err(why) => Kept::Without(why),
        };
        tell.dispatch(Action::Keep(Told::Known(kept)));
    }

    /// Forgets what was kept: what is on the bench is kept anew with the next thing done there.
    pub fn forget(&self) {
        let mut line = self.line.borrow_mut();
        (line.erased, line.sent) = (line.sent, 0);
    }

    /// Hears what other tabs do.
    fn listen(self: &Rc<Self>, store: &str, tell: &Tell) {
        if self.channel.borrow().is_some() {
            // The database was opened once more; one end of the channel is enough.
            return;
        }
        let (keeper, tell) = (Rc::downgrade(self), tell.clone());
        let channel = Channel::open(store, move |word| {
            let Some(keeper) = keeper.upgrade() else { return };
            wasm_bindgen_futures::spawn_local(keeper.heard(word, tell.clone()));
        });
        *self.channel.borrow_mut() = Some(channel);
    }

    async fn heard(self: Rc<Self>, word: Word, tell: Tell) {
        let Some(db) = self.db() else { return };
        match word {
            Word::Wrote(id) => {
                // It is read in its turn, between two writes of this tab's own.
                let mut line = self.line.borrow_mut();
                line.news |= line.head.as_ref().is_some_and(|head| head.id == id);
                self.work_off(line, &db, &tell);
                return;
            }
            Word::Erased => {
                self.forget();
                tell.dispatch(Action::Keep(Told::Erased { here: false }));
            }
            Word::Others => {}
        }
        tell.dispatch(Action::Keep(Told::Known(keys(&db).await)));
    }

    fn follow(self: &Rc<Self>, bench: &Bench, kept: &Kept, tell: &Tell) {
        let (Some(db), Kept::Here(_)) = (self.db(), kept) else { return };
        let events = bench.latest().events();
        let mut line = self.line.borrow_mut();
        if line.serial != bench.serial {
            line.serial = bench.serial;
            line.head = bench.head.as_deref().cloned();
            (line.sent, line.kept, line.erased) = (bench.kept, bench.kept, 0);
        }
        if line.behind || line.sent.max(line.erased) >= events.len() {
            return;
        }
        let now = effects::now();
        let opened_before = self.opened.get() == (bench.serial, true);
        let mut head = line.head.take().unwrap_or_else(|| {
            let head = head_of(bench, kept, now);
            Head { opened_before, ..head }
        });
        for (place, event) in events.iter().enumerate().skip(line.sent) {
            let last = place + 1 == events.len();
            let ends = last && matches!(event, Event::CarryOut(_)) && bench.latest().is_over();
            if ends {
                head.ended = Some(now);
                note_verdicts(&mut head, bench.latest());
            }
            line.jobs.push_back(Job::new(bench.serial, &head, place, event, now, ends));
        }
        line.sent = events.len();
        if bench.head.as_deref() != Some(&head) {
            tell.dispatch(Action::Keep(Told::Begun(bench.serial, Rc::new(head.clone()))));
        }
        line.head = Some(head);
        self.work_off(line, &db, tell);
    }

    /// Has the line worked off, unless somebody does.
    fn work_off(self: &Rc<Self>, mut line: RefMut<'_, Line>, db: &Db, tell: &Tell) {
        if !line.busy {
            line.busy = true;
            wasm_bindgen_futures::spawn_local(self.clone().work(db.clone(), tell.clone()));
        }
    }

    /// What comes next: another tab's news before what this one has to write.
    fn next(&self) -> Option<Turn> {
        let mut line = self.line.borrow_mut();
        if core::mem::take(&mut line.news) {
            return Some(Turn::CatchUp(line.serial));
        }
        line.jobs.pop_front().map(Turn::Write)
    }

    async fn work(self: Rc<Self>, db: Db, tell: Tell) {
        while let Some(turn) = self.next() {
            let job = match turn {
                Turn::Write(job) => job,
                Turn::CatchUp(serial) => {
                    // Told of its own writing in another way, or late, it has nothing to follow.
                    let _ = self.catch_up(&db, serial, &tell).await;
                    continue;
                }
            };
            match db.write(&job.writes).await {
                Ok(()) => {
                    self.written(&job);
                    if job.moves_on {
                        tell.dispatch(Action::Keep(Told::Stored(job.serial, job.place + 1)));
                    }
                    if job.place == 0 && job.serial == 1 {
                        effects::ask_to_persist();
                    }
                    if job.turn {
                        effects::remember_keeping();
                        tell.dispatch(Action::Keep(Told::Known(keys(&db).await)));
                        self.tell_tabs(&Word::Others);
                    }
                    self.tell_tabs(&Word::Wrote(job.id));
                }
                // The case has left the bench: the other tab has it.
                Err(Trouble::Taken) if self.line.borrow().serial != job.serial => {}
                Err(Trouble::Taken) if self.catch_up(&db, job.serial, &tell).await => {}
                Err(why) => {
                    self.give_up(job.place);
                    tell.dispatch(Action::Keep(Told::NotStored(why)));
                }
            }
        }
        self.line.borrow_mut().busy = false;
    }

    /// One more event is kept.
    fn written(&self, job: &Job) {
        let mut line = self.line.borrow_mut();
        if line.serial == job.serial {
            line.kept = job.place + 1;
        }
    }

    /// What was in line is done again from there once the browser keeps things again.
    fn give_up(&self, place: usize) {
        let mut line = self.line.borrow_mut();
        line.jobs.clear();
        line.sent = place;
    }

    /// Another tab has written in the attempt on the bench: it is read anew, and the room puts what was
    /// done here behind it. Whether there was anything that this tab had not.
    async fn catch_up(&self, db: &Db, serial: u32, tell: &Tell) -> bool {
        let head = {
            let line = self.line.borrow();
            line.head.clone().filter(|_| line.serial == serial)
        };
        let Some(head) = head else { return false };
        let Ok(texts) = db.texts(EVENTS, &events_of(&head.id)).await else { return false };
        let kept = {
            let mut line = self.line.borrow_mut();
            if texts.len() <= line.kept {
                // This tab has followed already.
                return false;
            }
            line.jobs.retain(|job| job.serial != serial);
            let kept = line.kept;
            (line.sent, line.kept, line.behind) = (texts.len(), texts.len(), true);
            kept
        };
        tell.dispatch(match restore(&written(&head), &texts) {
            Ok(there) => Action::Keep(Told::Elsewhere { serial, there: Rc::new(there), kept }),
            Err(why) => Action::Keep(Told::NotStored(Trouble::Other(why))),
        });
        self.line.borrow_mut().behind = false;
        true
    }

    async fn fetch(self: Rc<Self>, key: Key, tell: Tell) {
        let fetched = self.fetched(&key).await.map(Rc::new);
        tell.dispatch(Action::Keep(Told::Fetched(key, fetched)));
    }

    async fn fetched(&self, key: &Key) -> Result<Restored, String> {
        let db = self.db().ok_or("the browser's database is not open")?;
        let read = |why: Trouble| why.to_string();
        let head = db.texts(ATTEMPTS, key.text()).await.map_err(read)?;
        let head = head.first().ok_or("it is no longer there")?;
        let events = db.texts(EVENTS, &events_of(key.id())).await.map_err(read)?;
        restore(head, &events)
    }
}

impl Job {
    fn new(serial: u32, head: &Head, place: usize, event: &Event, now: u64, ends: bool) -> Self {
        let done = Done { at: Some(now), what: event.written() };
        let turn = place == 0 || ends;
        let mut writes = Vec::with_capacity(2);
        if turn {
            let key = Key::new(head.address, &head.at, &head.id);
            writes.push(Write::Put(ATTEMPTS, key.text().to_owned(), written(head)));
        }
        writes.push(Write::Add(EVENTS, event_key(&head.id, place), written(&done)));
        let moves_on = matches!(event, Event::CarryOut(_));
        Self { serial, id: head.id.clone(), place, writes, turn, moves_on }
    }
}

/// What is kept now.
pub async fn keys(db: &Db) -> Kept {
    match db.keys(ATTEMPTS, "").await {
        Ok(keys) => Kept::Here(Rc::new(keys.into_iter().map(Key::read).collect())),
        Err(why) => Kept::Without(why),
    }
}

/// As text: numbers, texts and keys, nothing that JSON cannot hold.
pub fn written<T: serde::Serialize>(value: &T) -> String {
    serde_json::to_string(value).unwrap_or_default()
}

/// The circumstances of an attempt that begins.
pub fn head_of(bench: &Bench, kept: &Kept, now: u64) -> Head {
    let asked = &bench.asked;
    let address = bench.session.opened().address;
    let earlier =
        kept.keys().iter().filter(|key| address.is_some_and(|address| key.is_of(address)));
    // Far fewer than 2^32 attempts.
    let number = u32::try_from(earlier.count()).unwrap_or(u32::MAX).saturating_add(1);
    let at = Route::Case(asked.clone()).fragment();
    let mut head = Head::begin(fresh_id(now, effects::chance()), at, &bench.session, number, now);
    if let From::Set(name, _) = &asked.from {
        head.set = Some(name.clone());
        head.limit = sat::limit(name);
    }
    let shown = asked.shown.map(|shown| match shown {
        Shown::Whole => Help::Worked,
        Shown::Begun => Help::Begun,
    });
    head.help.extend(asked.guided.then_some(Help::Guided));
    head.help.extend(shown);
    head.sitting.clone_from(&asked.sitting);
    head
}
