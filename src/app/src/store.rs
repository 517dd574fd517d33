//! The state of the room and the one function that changes it.

use crate::judging::Judging;
use crate::keep::Kept;
use crate::keep::key::Key;
use crate::keep::trouble::Trouble;
use crate::library::{self, Library};
use crate::route::{CaseRoute, From, Route};
use engine::cases;
use engine::plan::{Decision, Refusal, Value};
use engine::rules::Rule;
use engine::session::{Event, Lesson, Session};
use learning::record::Head;
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
}

/// How teeth are named.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Notation {
    /// Two digits of ISO 3950.
    TwoDigits,
    /// 1 to 32.
    OneToThirtyTwo,
}

/// A case being worked on.
#[derive(Debug, Clone)]
pub struct Bench {
    /// Which case on the bench it is since the page was loaded.
    pub serial: u32,
    /// How it was asked for.
    pub asked: CaseRoute,
    /// The attempt as it is shown.
    pub session: Session,
    /// The attempt with a step carried out, until that is kept: the room goes on to it then.
    pub ahead: Option<Session>,
    /// How many of its events are kept.
    pub kept: usize,
    /// Under what circumstances it is kept, once its first event is.
    pub head: Option<Rc<Head>>,
    /// Whether it was begun anew on request: no earlier attempt takes its place.
    pub anew: bool,
    /// What is said above the case: that it goes on from before, or what another tab did.
    pub told: Option<String>,
    /// What is shown of it, in a worked case.
    pub lesson: Option<Rc<Lesson>>,
    /// The choices that a drag is trying out.
    pub tried: Vec<Event>,
    /// The rule whose fault is lit in the figures.
    pub lit: Option<&'static Rule>,
    /// Why the last thing was refused.
    pub refusal: Option<Refusal>,
    /// What is said of the last thing that was typed, or done to an outline on the map.
    pub said: Option<Said>,
}

impl Bench {
    /// Whether the step that is due is told, and nothing in it is the learner's to move.
    #[must_use]
    pub fn is_told(&self) -> bool {
        let due = self.session.due();
        self.lesson.as_ref().zip(due).is_some_and(|(lesson, due)| lesson.shows(due))
    }

    /// A case that has just come to the bench.
    fn new(serial: u32, asked: CaseRoute, session: Session, lesson: Option<Lesson>) -> Self {
        Self {
            serial,
            asked,
            session,
            ahead: None,
            kept: 0,
            head: None,
            anew: false,
            told: None,
            lesson: lesson.map(Rc::new),
            tried: Vec::new(),
            lit: None,
            refusal: None,
            said: None,
        }
    }

    /// The attempt with all that was done, kept or not.
    #[must_use]
    pub fn latest(&self) -> &Session {
        self.ahead.as_ref().unwrap_or(&self.session)
    }

    /// Does one thing: what was tried out and said before it is over.
    fn act(&mut self, event: Event) {
        let moves_on = matches!(event, Event::CarryOut(_));
        if moves_on && self.ahead.is_some() {
            // The step before is still being kept; a second press meant no more than the first.
            return;
        }
        self.tried.clear();
        self.said = None;
        let mut next = self.latest().clone();
        self.refusal = next.apply(event).err();
        if self.refusal.is_some() {
            return;
        }
        if moves_on || self.ahead.is_some() { self.ahead = Some(next) } else { self.session = next }
    }

    /// Goes on to what was carried out.
    fn move_on(&mut self) {
        if let Some(ahead) = self.ahead.take() {
            self.session = ahead;
        }
    }

    /// That many events are kept.
    fn keep(&mut self, count: usize) {
        self.kept = self.kept.max(count);
        if self.ahead.as_ref().is_some_and(|ahead| ahead.events().len() <= self.kept) {
            self.move_on();
        }
    }

    /// Another tab has written in this attempt: what was done here and is not kept yet follows it where
    /// it still fits.
    fn follow(&mut self, there: &Session) {
        let here: Vec<Event> = self.latest().events().iter().skip(self.kept).cloned().collect();
        let news = there.events().iter().skip(self.kept);
        let steps: Vec<&str> = news
            .filter_map(|event| match event {
                Event::CarryOut(step) => Some(step.label()),
                _ => None,
            })
            .collect();
        self.kept = there.events().len();
        self.ahead = None;
        self.session = there.clone();
        self.tried.clear();
        let all = here.len();
        let fits =
            here.into_iter().filter(|event| self.session.apply(event.clone()).is_ok()).count();
        let did = if steps.is_empty() {
            "chose something".to_owned()
        } else {
            format!("carried out {}", steps.join(", "))
        };
        let lost = if fits < all {
            " What you did here at the same moment no longer fits and was left out."
        } else {
            ""
        };
        self.told =
            Some(format!("Another tab {did} in this attempt; this one has followed.{lost}"));
    }
}

/// A kept attempt as it was fetched.
#[derive(Debug)]
pub struct Restored {
    /// Its circumstances.
    pub head: Head,
    /// How it was asked for.
    pub asked: CaseRoute,
    /// As it stands.
    pub session: Session,
}

impl PartialEq for Restored {
    /// An attempt as it was fetched at one moment.
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self, other)
    }
}

/// A sentence beside a decision, and beside the figure that it is drawn in.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Said {
    /// The decision.
    pub about: Decision,
    /// Whether it says why something cannot be.
    pub wrong: bool,
    /// The sentence.
    pub words: String,
}

impl PartialEq for Bench {
    /// Two benches are never compared part by part: each change makes a new one.
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self, other)
    }
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
    Judge(Result<Judging, String>),
    /// The judge did not arrive, and is asked for again.
    AskAgain,
    /// The briefing was read.
    Briefed,
    /// Teeth are named the other way.
    Name(Notation),
    /// Whether anything is kept, and what.
    Keeping(Kept),
    /// The browser does not answer whether it keeps anything.
    NoAnswer,
    /// It is asked once more.
    AskToKeep,
    /// An attempt has its head.
    Begun(u32, Head),
    /// So many events of a case on the bench are kept.
    Stored(u32, usize),
    /// What was done on the bench cannot be kept; the room goes on without.
    NotStored(Trouble),
    /// A kept attempt was fetched, or why not.
    Fetched(Key, Result<Rc<Restored>, String>),
    /// Another tab has written in the attempt on the bench.
    Elsewhere(u32, Rc<Restored>),
    /// Everything that was kept has been erased.
    Erased {
        /// By this tab, not by another.
        here: bool,
    },
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
    fn bring(&mut self, asked: CaseRoute) {
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

    /// A kept attempt comes to the bench as it was left.
    fn put_back(&mut self, restored: &Restored) {
        let asked = match &self.route {
            Route::Case(asked) => asked.clone(),
            _ => restored.asked.clone(),
        };
        let bench = self.put(asked, restored.session.clone());
        bench.kept = bench.session.events().len();
        bench.head = Some(Rc::new(restored.head.clone()));
        bench.told = bench.session.due().filter(|_| bench.kept > 0).map(|due| {
            format!("You had begun this case. It goes on where you left it: at {}.", due.label())
        });
    }

    /// What was fetched, where it is still wanted.
    fn fetched(&mut self, key: &Key, fetched: Result<Rc<Restored>, String>) {
        if self.fetching.as_ref() != Some(key) {
            return;
        }
        self.fetching = None;
        match (fetched, self.route.clone()) {
            (Ok(restored), _) => self.put_back(&restored),
            // What cannot be read stays as it is; the case can be done all the same.
            (Err(why), Route::Case(asked)) => {
                self.bring_anew(asked);
                if let Some(bench) = &mut self.bench {
                    Rc::make_mut(bench).told = Some(format!(
                        "An attempt at this case is kept and cannot be opened: {why}. It stays as it is; this is a new one."
                    ));
                }
            }
            (Err(why), _) => {
                self.trouble = Some(format!(
                    "This attempt is kept and cannot be opened: {why}. It stays as it is."
                ))
            }
        }
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

    /// The room once it is known whether anything is kept.
    fn keeping(&self, kept: Kept) -> Self {
        let mut room = self.clone();
        if matches!(kept, Kept::Without(_)) && room.bench.is_some() {
            room = room.with_bench(Bench::move_on);
        }
        room.kept = kept;
        // A case that nothing was done in yet goes on where it was left, wherever that was.
        let untouched = room.bench.as_ref().filter(|bench| bench.latest().events().is_empty());
        if let Some(asked) = untouched
            .filter(|bench| bench.head.is_none() && !bench.anew)
            .map(|bench| bench.asked.clone())
            && let Some(key) = room.kept.latest_at(&Route::Case(asked).fragment())
        {
            (room.bench, room.fetching) = (None, Some(key));
        }
        room.once_more()
    }

    /// The room with a change to that case, if it is still on the bench.
    fn with_that_bench(&self, serial: u32, change: impl FnOnce(&mut Bench)) -> Self {
        if self.bench.as_ref().is_some_and(|bench| bench.serial == serial) {
            self.with_bench(change)
        } else {
            self.clone()
        }
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
                Self { judging: Some(judging), ..Self::clone(&self) }.once_more()
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
            Action::Keeping(kept) => self.keeping(kept),
            Action::NoAnswer if self.kept == Kept::Opening => {
                self.keeping(Kept::Without(Trouble::Silent))
            }
            Action::NoAnswer => return self,
            Action::AskToKeep => Self {
                kept: Kept::Opening,
                asked_to_keep: self.asked_to_keep + 1,
                ..Self::clone(&self)
            },
            Action::Begun(serial, head) => {
                self.with_that_bench(serial, |bench| bench.head = Some(Rc::new(head)))
            }
            Action::Stored(serial, count) => {
                self.with_that_bench(serial, |bench| bench.keep(count))
            }
            Action::NotStored(trouble) => self.keeping(Kept::Without(trouble)),
            Action::Fetched(key, fetched) => {
                let mut room = Self::clone(&self);
                room.fetched(&key, fetched);
                room
            }
            Action::Elsewhere(serial, there) => {
                self.with_that_bench(serial, |bench| bench.follow(&there.session))
            }
            Action::Erased { here } => {
                let mut room = self.with_bench(|bench| {
                    bench.kept = 0;
                    bench.told = Some("Another tab erased everything that was kept. This attempt goes on, and is kept again with the next thing you do.".to_owned());
                });
                room.bench = room.bench.filter(|_| !here);
                Self { kept: Kept::Here(Rc::default()), ..room }
            }
        })
    }
}
