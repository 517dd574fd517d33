//! The kept attempts as the pages about them are given them.

use crate::effects;
use crate::library::Library;
use crate::route::{From, Route};
use learning::date::Clock;
use learning::past::Past;
use std::rc::Rc;

/// Attempts with what belongs to them.
#[derive(Debug, Clone)]
pub struct Shelf {
    /// Every attempt, the oldest first.
    pub pasts: Rc<Vec<Past>>,
    /// What the learner wrote to themselves: id of the attempt, text.
    pub notes: Rc<Vec<(String, String)>>,
    /// What cannot be read: the attempt's name, and why. It stays as it is.
    pub aside: Rc<Vec<(String, String)>>,
    /// How many attempts are left out because their verdicts wait.
    pub waiting: usize,
    /// Now, milliseconds since 1970, universal time.
    pub now: u64,
    /// The clock of this place.
    pub clock: Clock,
    /// The shipped sets: they name cases.
    pub library: Library,
}

impl PartialEq for Shelf {
    /// Lists are never compared part by part: each change makes new ones.
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.pasts, &other.pasts)
            && Rc::ptr_eq(&self.notes, &other.notes)
            && match (&self.library, &other.library) {
                (Library::Here(a), Library::Here(b)) => Rc::ptr_eq(a, b),
                (Library::Here(_), _) | (_, Library::Here(_)) => false,
                _ => true,
            }
    }
}

impl Shelf {
    /// Of nothing yet.
    #[must_use]
    pub fn empty(library: Library) -> Self {
        let clock = Clock(effects::minutes_east());
        let (pasts, notes, aside) = (Rc::default(), Rc::default(), Rc::default());
        Self { pasts, notes, aside, waiting: 0, now: effects::now(), clock, library }
    }

    /// What a case is called: its title in its set, else its address.
    #[must_use]
    pub fn title(&self, past: &Past) -> String {
        if let (Route::Case(case), Library::Here(sets)) =
            (Route::read(&past.head.at), &self.library)
            && let From::Set(name, place) = case.from
        {
            let set = sets.iter().find(|set| set.name == name);
            if let Some(title) = set.and_then(|set| set.cases.get(place - 1)) {
                return title.clone();
            }
        }
        past.head
            .address
            .map_or_else(|| "A case without an address".to_owned(), |at| format!("Case {at}"))
    }

    /// What a set is called: its title, else its name.
    #[must_use]
    pub fn set_title(&self, name: &str) -> String {
        let Library::Here(sets) = &self.library else { return name.to_owned() };
        let set = sets.iter().find(|set| set.name == name);
        set.map_or_else(|| name.to_owned(), |set| set.title.clone())
    }

    /// On which day it was begun, in words.
    #[must_use]
    pub fn day(&self, past: &Past) -> String {
        let day = |at| self.clock.date(at).words();
        past.when().map_or_else(|| "date not known".to_owned(), day)
    }

    /// Day and case.
    #[must_use]
    pub fn named(&self, past: &Past) -> String {
        format!("{}: {}", self.day(past), self.title(past))
    }

    /// What the learner wrote about an attempt; empty where nothing was written.
    #[must_use]
    pub fn note(&self, id: &str) -> &str {
        let note = self.notes.iter().find(|(other, _)| other == id);
        note.map_or("", |(_, text)| text)
    }
}

/// Where an attempt is opened, at the verdict of a rule where one is named.
#[must_use]
pub fn kept(id: &str, rule: Option<&str>) -> String {
    match rule {
        Some(rule) => format!("#/kept/{id}/{rule}"),
        None => format!("#/kept/{id}"),
    }
}
