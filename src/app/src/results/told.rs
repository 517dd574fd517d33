//! The results of a package: which host there is, what it kept, what came of the set, who is told.

use super::Part;
use super::handing::{Handing, HandingProps};
use super::host::Host;
use super::outcome::{Marks, of_set};
use super::package::Package;
use super::page::{PackagePage, PackageProps};
use super::sink::Sink;
use crate::components::plain::line;
use crate::components::view::view;
use crate::effects;
use crate::keep::Kept as Keeping;
use crate::keep::db::Db;
use crate::keep::file::{BroughtIn, take};
use crate::keep::keeper::{head_of, keeper};
use crate::keep::restore::{events, head};
use crate::keep::shelf::{Raw, raw};
use crate::library::Library;
use crate::store::{Bench, Room};
use core::cell::{Cell, RefCell};
use engine::session::Event;
use learning::handing::compact::{self, Kept, Unkept};
use learning::handing::outcome::{Outcome, hash_of};
use learning::past::note_verdicts;
use learning::record::{Done, Record};
use std::rc::Rc;
use yew::prelude::*;

/// What hands in: one for the page.
pub struct Results {
    sink: Sink,
    /// The set of the package; empty where this is none.
    set: String,
    /// The name of the database that belongs to it.
    store: String,
    /// The learner's code, and the name that the host gives: shown, never kept.
    learner: [String; 2],
    /// Why the host's answer was of no use.
    trouble: Option<String>,
    /// When the page was opened.
    opened: u64,
    /// What the host kept, and what was done since where the browser keeps nothing.
    attempts: RefCell<Vec<Kept>>,
    marks: Marks,
    /// The room as it was when there was last something to hand in, until somebody does.
    waiting: RefCell<Option<UseReducerHandle<Room>>>,
    /// Whether somebody is at it.
    busy: Cell<bool>,
}

thread_local! {
    static RESULTS: Rc<Results> = Rc::new(Results::find());
}

/// The page's.
pub fn results() -> Rc<Results> {
    RESULTS.with(Rc::clone)
}

/// Whether this page was packed with one set, for a host: where nobody packed it, it is the ordinary room.
pub fn is_packaged() -> bool {
    effects::entry("data-package").is_some()
}

/// The name of the database where this page keeps what is done.
pub fn store() -> String {
    results().store.clone()
}

/// Puts what a host kept where the room keeps its attempts. What went further here stays.
pub async fn resume(db: &Db) {
    results().resume(db).await;
}

/// What the results put into a part of the room.
pub fn shown(part: Part, room: UseReducerHandle<Room>) -> Html {
    match part {
        Part::Above => view::<Handing>(HandingProps { room }),
        Part::Home => view::<PackagePage>(PackageProps { room }),
        Part::Foot => line("p", "", results().sink.foot()),
    }
}

impl Results {
    fn find() -> Self {
        let mut found = Self {
            sink: Sink::None,
            set: effects::entry("data-package").unwrap_or_default(),
            store: "wallwise".to_owned(),
            learner: ["learner".to_owned(), String::new()],
            trouble: None,
            opened: effects::now(),
            attempts: RefCell::default(),
            marks: Marks::default(),
            waiting: RefCell::default(),
            busy: Cell::default(),
        };
        if !found.set.is_empty() {
            found.sink = Sink::File;
            found.ask_the_host();
        }
        found
    }

    /// Finds the host, if there is one, and hears what it knows.
    fn ask_the_host(&mut self) {
        let mut id = String::new();
        if let Some(host) = Host::find() {
            match host.begin() {
                Ok(()) => {
                    id = host.get("id");
                    self.learner = [code_of(&id), host.get("name")];
                    let is_read = self.hear(&host.get("suspend_data"));
                    self.sink = match host.get("mode").as_str() {
                        "review" | "browse" => Sink::None,
                        // What a newer version wrote is not written over.
                        _ if !is_read => Sink::None,
                        _ => Sink::Package(Package::new(host)),
                    };
                }
                Err(why) => self.trouble = Some(why),
            }
        }
        // Two learners at one machine, or two sets of one host, never see each other's attempts; the
        // name says nothing of who it is.
        self.store = format!("wallwise-{}", hash_of(&format!("{} {id}", self.set)));
    }

    /// Reads what the host kept; whether other things may take its place.
    fn hear(&mut self, text: &str) -> bool {
        if text.is_empty() {
            return true;
        }
        match compact::read(text) {
            Ok(kept) => *self.attempts.get_mut() = kept,
            Err(why) => {
                self.trouble = Some(format!("The host's record cannot be read: {why}."));
                return !matches!(why, Unkept::Newer { .. });
            }
        }
        true
    }

    /// The learner's name as the host gives it; empty where none does.
    pub fn name(&self) -> &str {
        &self.learner[1]
    }

    /// Why the host could not be heard.
    pub fn trouble(&self) -> String {
        self.trouble.clone().unwrap_or_default()
    }

    /// What the learner is asked to do, under the set.
    pub fn acts(&self, room: &UseReducerHandle<Room>) -> Vec<Html> {
        self.sink.acts(room)
    }

    async fn resume(&self, db: &Db) {
        let kept = self.attempts.borrow().clone();
        if kept.is_empty() {
            return;
        }
        let here = raw(db).await.unwrap_or_default();
        let mut told = BroughtIn::default();
        for Kept { head, events } in kept {
            let record = Record { head, events, case: None, note: String::new() };
            // Where the database refuses, the first thing done in the room tells of it.
            let _ = take(db, record, &here, &mut told).await;
        }
    }

    /// Every attempt in the order of time.
    async fn attempts(&self, room: &Room) -> Result<Vec<Kept>, String> {
        if let (Some(db), Keeping::Here(_)) = (keeper().db(), &room.kept) {
            let read = |one: Raw| {
                Some(Kept { head: head(&one.head).ok()?, events: events(&one.events).ok()? })
            };
            return Ok(raw(&db).await?.into_iter().filter_map(read).collect());
        }
        let mut all = self.attempts.borrow_mut();
        if let Some(bench) = room.bench.as_ref().filter(|it| !it.latest().events().is_empty()) {
            put(&mut all, bench, room, self.opened);
        }
        Ok(all.clone())
    }

    /// What came of the set.
    ///
    /// # Errors
    /// A sentence; an empty one while something is on its way.
    pub async fn outcome(&self, room: &Room) -> Result<Outcome, String> {
        let (Library::Here(sets), true) = (&room.library, room.kept != Keeping::Opening) else {
            return Err(String::new());
        };
        let set = sets.iter().find(|set| set.name == self.set).ok_or("the set is not here")?;
        let mut attempts = self.attempts(room).await?;
        let [code, _] = &self.learner;
        let mut told = of_set(set, &room.library, code, &attempts, &self.marks).await;
        told.hash = effects::entry("data-hash").unwrap_or_default();
        told.pass = effects::entry("data-pass").and_then(|pass| pass.parse().ok());
        told.place = room.route.fragment();
        told.session = effects::now().saturating_sub(self.opened);
        if let Some(most) = self.sink.most_kept() {
            attempts.retain(|one| one.head.set.as_ref() == Some(&self.set));
            let fitted = compact::fit(&attempts, most);
            told.kept = fitted.map_err(|why| why.to_string())?;
        }
        Ok(told)
    }

    /// Hands in what came of the set so far, and returns what is to be said of it; nothing where
    /// somebody is at it already, who then does it once more.
    pub async fn hand_in(&self, room: UseReducerHandle<Room>) -> Option<String> {
        self.waiting.replace(Some(room));
        if self.busy.replace(true) {
            return None;
        }
        let mut says = String::new();
        while let Some(room) = self.waiting.take() {
            let told = self.outcome(&room).await.and_then(|outcome| self.sink.tell(outcome));
            says = told.err().unwrap_or_default();
        }
        self.busy.set(false);
        Some(if says.is_empty() { self.trouble() } else { says })
    }
}

/// The host's name for a learner, where every standard takes it; else a code that is made of it.
fn code_of(id: &str) -> String {
    if learning::file::is_name(id) { id.to_owned() } else { format!("learner-{}", hash_of(id)) }
}

/// The attempt on the bench, where the browser keeps none.
fn put(all: &mut Vec<Kept>, bench: &Bench, room: &Room, opened: u64) {
    let (session, now) = (bench.latest(), effects::now());
    let mut head = head_of(bench, &room.kept, now);
    // The bench has no name of its own then: its number in this page is one.
    head.id = format!("{:011x}-{:08x}", opened, bench.serial);
    if let Some(old) = all.iter().find(|one| one.head.id == head.id) {
        head.begun = old.head.begun;
    }
    if session.is_over() {
        head.ended = Some(now);
        note_verdicts(&mut head, session);
    }
    let done = |event: &Event| Done { at: Some(now), what: event.written() };
    let events = session.events().iter().map(done).collect();
    all.retain(|one| one.head.id != head.id);
    all.push(Kept { head, events });
}
