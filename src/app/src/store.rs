//! The state of the room and the one function that changes it.

mod keeping;

pub use crate::bench::{Bench, Said};
use crate::judging::Judging;
use crate::keep::Kept;
use crate::keep::key::Key;
use crate::keep::told::Told;
use crate::keep::trouble::Trouble;
use crate::library::{self, Library};
use crate::route::{CaseRoute, From, Route};
use engine::cases;
use engine::plan::{Decision, Value};
use engine::rules::Rule;
use engine::session::{Event, Mode, Session};
use std::rc::Rc;
use yew::Reducible;

/// Everything the room shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Room {
    /// Where the learner is.
    pub route: Route,
    /// The case on the bench, when there is one.
    pub bench: Option<Rc<Bench>>,
    /// Why the case could not be opened.
    pub trouble: Option<String>,
    /// The shipped sets, once they have arrived.
    pub library: Library,
    /// The judge, once it has arrived.
    pub judging: Option<Judging>,
    /// How often the judge was asked for again.
    pub retries: u32,
    /// Whether the briefing has been read in this browser.
    pub briefed: bool,
    /// How teeth are named.
    pub notation: Notation,
    /// Whether what is done is kept in this browser.
    pub kept: Kept,
    /// Whether attempts were kept here before the page was loaded.
    pub kept_before: bool,
    /// How often the browser was asked to keep it.
    pub asked_to_keep: u32,
    /// The kept attempt that is being fetched for the bench.
    pub fetching: Option<Key>,
    /// How many cases have been on the bench.
    pub benches: u32,
    /// How often a set was begun, or its verdicts let be seen: that itself is kept beside the attempts.
    pub sat: u32,
}

/// How teeth are named.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Notation {
    /// Two digits of ISO 3950.
    TwoDigits,
    /// 1 to 32.
    OneToThirtyTwo,
}

/// What can happen to the room.
#[derive(Debug, Clone, PartialEq)]
pub enum Action {
    /// The address changed.
    Go(Route),
    /// The learner did something.
    Do(Event),
    /// A step is carried out as it was shown.
    Follow(Vec<Event>),
    /// One of any number of answers is chosen or taken back: this bit is turned over.
    Turn(Decision, u32),
    /// A drag tries a choice out, or lets go of it.
    Try(Vec<Event>),
    /// Something is said; what was being tried out is let go of.
    Say(Said),
    /// A fault is lit in the figures, or none.
    Light(Option<&'static Rule>),
    /// The same case once more, from the beginning.
    Again,
    /// The shipped sets arrived.
    Library(Library),
    /// The judge arrived, or why it did not.
    Judge(Result<Box<Judging>, String>),
    /// The judge did not arrive, and is asked for again.
    AskAgain,
    /// The briefing was read.
    Briefed,
    /// Teeth are named the other way.
    Name(Notation),
    /// A set was begun, or its verdicts may be seen now.
    Sat,
    /// What keeps things tells something.
    Keep(Told),
}

impl Room {
    /// The room as it opens.
    #[must_use]
    pub fn open(route: Route, briefed: bool, kept_before: bool) -> Self {
        let empty = Self {
            route: Route::Home,
            bench: None,
            trouble: None,
            library: Library::Coming,
            judging: None,
            retries: 0,
            briefed,
            notation: Notation::TwoDigits,
            kept: Kept::Opening,
            kept_before,
            asked_to_keep: 0,
            fetching: None,
            benches: 0,
            sat: 0,
        };
        empty.at(route)
    }

    /// The room at another place; a case that is already on the bench stays as it is.
    fn at(&self, route: Route) -> Self {
        let mut room = Self { route: route.clone(), trouble: None, ..self.clone() };
        match route {
            Route::Case(asked) => {
                let same = room.bench.as_ref().is_some_and(|bench| bench.asked == asked);
                if !same {
                    room.bring(asked);
                }
            }
            Route::Attempt(id, _) => room.bring_back(&id),
            _ => {}
        }
        room
    }

    /// Brings a case to the bench: where an attempt at it is kept, that one as it was left.
    fn bring(&mut self, mut asked: CaseRoute) {
        asked.mode = library::mode(&asked, &self.library);
        if asked.mode == Mode::Assessment {
            asked.shown = None;
        }
        (self.bench, self.fetching) = (None, None);
        if self.kept == Kept::Opening && self.kept_before {
            return;
        }
        match self.kept.latest_at(&Route::Case(asked.clone()).fragment()) {
            Some(key) => self.fetching = Some(key),
            None => self.bring_anew(asked),
        }
    }

    /// Brings back the kept attempt of this name.
    fn bring_back(&mut self, id: &str) {
        if self
            .bench
            .as_ref()
            .and_then(|bench| bench.head.as_ref())
            .is_some_and(|head| head.id == id)
        {
            return;
        }
        (self.bench, self.fetching) = (None, self.kept.named(id));
        if self.fetching.is_none() && self.kept != Kept::Opening {
            self.trouble = Some("No attempt of that name is kept in this browser.".to_owned());
        }
    }

    /// Brings a case to the bench as if it had never been there.
    fn bring_anew(&mut self, asked: CaseRoute) {
        (self.bench, self.fetching) = (None, None);
        match library::open(&asked, &self.library, self.judging) {
            Ok(Some(case)) => {
                let session = Session::open(case, asked.mode);
                self.put(asked, session);
            }
            // The set or the judge has not arrived yet; its arrival tries again.
            Ok(None) => {}
            Err(why) => self.trouble = Some(why),
        }
    }

    fn put(&mut self, asked: CaseRoute, session: Session) -> &mut Bench {
        let lesson = asked.shown.zip(self.judging);
        let lesson = lesson.and_then(|(shown, judging)| (judging.lesson)(session.opened(), shown));
        self.benches += 1;
        let bench = Bench::new(self.benches, asked, session, lesson);
        Rc::make_mut(self.bench.insert(Rc::new(bench)))
    }

    /// Whether the case that is asked for is drawn by what comes with the judge.
    #[must_use]
    pub fn waits_for_the_judge(&self) -> bool {
        let Route::Case(asked) = &self.route else { return self.fetching.is_some() };
        match &asked.from {
            // What is kept is read by what comes with it.
            _ if asked.shown.is_some() || self.fetching.is_some() => true,
            From::Seed(..) => true,
            From::Address(address) => cases::is_drawn_with_the_judge(*address),
            // A set that is here, and its case not: nothing else can be missing.
            From::Set(..) => self.bench.is_none() && matches!(self.library, Library::Here(_)),
        }
    }

    /// Tries again to open what is asked for, now that something has arrived.
    fn once_more(mut self) -> Self {
        if self.bench.is_none() && self.fetching.is_none() {
            match self.route.clone() {
                Route::Case(asked) => self.bring(asked),
                Route::Attempt(id, _) => self.bring_back(&id),
                _ => {}
            }
        }
        self
    }

    fn with_bench(&self, change: impl FnOnce(&mut Bench)) -> Self {
        let mut room = self.clone();
        if let Some(bench) = &self.bench {
            let mut bench = Bench::clone(bench);
            change(&mut bench);
            room.bench = Some(Rc::new(bench));
        }
        room
    }
}

impl Room {
    /// The room with things done on the bench, one after the other. Where nothing is kept nothing is
    /// waited for.
    fn do_all(&self, events: impl IntoIterator<Item = Event>) -> Self {
        let waits = !matches!(self.kept, Kept::Without(_));
        self.with_bench(|bench| {
            // Acts that follow each other in one go are carried out one after the other.
            for event in events {
                bench.act(event);
            }
            if !waits {
                bench.move_on();
            }
        })
    }
}

impl Reducible for Room {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        Rc::new(match action {
            Action::Go(route) => self.at(route),
            Action::Do(event) => self.do_all([event]),
            Action::Follow(events) => self.do_all(events),
            Action::Turn(decision, bit) => self.with_bench(|bench| {
                let bits = match bench.latest().draft().value(decision) {
                    Some(Value::Many(bits)) => *bits,
                    _ => 0,
                };
                bench.act(Event::Choose(decision, Some(Value::Many(bits ^ bit))));
            }),
            Action::Try(tried) => self.with_bench(|bench| {
                bench.said = None;
                bench.tried = tried;
            }),
            Action::Say(said) => self.with_bench(|bench| {
                bench.tried.clear();
                bench.said = Some(said);
            }),
            Action::Light(lit) => self.with_bench(|bench| bench.lit = lit),
            Action::Again => {
                let mut room = Self::clone(&self);
                if let Some(asked) = self.bench.as_ref().map(|bench| bench.asked.clone()) {
                    room.route = Route::Case(asked.clone());
                    room.bring_anew(asked);
                    if let Some(bench) = &mut room.bench {
                        Rc::make_mut(bench).anew = true;
                    }
                }
                room
            }
            Action::Library(library) => Self { library, ..Self::clone(&self) }.once_more(),
            Action::Judge(Ok(judging)) => {
                Self { judging: Some(*judging), ..Self::clone(&self) }.once_more()
            }
            Action::Judge(Err(why)) => {
                let room = self.keeping(Kept::Without(Trouble::NotFetched));
                Self { trouble: Some(why), ..room }
            }
            Action::AskAgain => Self {
                trouble: None,
                retries: self.retries + 1,
                kept: Kept::Opening,
                ..Self::clone(&self)
            },
            Action::Briefed => Self { briefed: true, ..Self::clone(&self) },
            Action::Name(notation) => Self { notation, ..Self::clone(&self) },
            Action::Sat => Self { sat: self.sat + 1, ..Self::clone(&self) },
            Action::Keep(told) => self.told(told),
        })
    }
}
