//! The state of the room and the one function that changes it.

use crate::judging::Judging;
use crate::library::{self, Library};
use crate::route::{CaseRoute, From, Route};
use engine::cases;
use engine::plan::{Decision, Refusal, Value};
use engine::rules::Rule;
use engine::session::{Event, Lesson, Session};
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
    /// How it was asked for.
    pub asked: CaseRoute,
    /// The attempt.
    pub session: Session,
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

    /// Does one thing: what was tried out and said before it is over.
    fn act(&mut self, event: Event) {
        self.tried.clear();
        self.said = None;
        self.refusal = self.session.apply(event).err();
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
}

impl Room {
    /// The room as it opens.
    #[must_use]
    pub fn open(route: Route, briefed: bool) -> Self {
        let empty = Self {
            route: Route::Home,
            bench: None,
            trouble: None,
            library: Library::Coming,
            judging: None,
            retries: 0,
            briefed,
            notation: Notation::TwoDigits,
        };
        empty.at(route)
    }

    /// The room at another place; a case that is already on the bench stays as it is.
    fn at(&self, route: Route) -> Self {
        let mut room = Self { route: route.clone(), trouble: None, ..self.clone() };
        if let Route::Case(asked) = route {
            let same = room.bench.as_ref().is_some_and(|bench| bench.asked == asked);
            if !same {
                room.bring(asked);
            }
        }
        room
    }

    fn bring(&mut self, asked: CaseRoute) {
        self.bench = None;
        match library::open(&asked, &self.library, self.judging) {
            Ok(Some(case)) => {
                let lesson = asked.shown.zip(self.judging);
                let lesson = lesson.and_then(|(shown, judging)| (judging.lesson)(&case, shown));
                let session = Session::open(case, asked.mode);
                self.bench = Some(Rc::new(Bench {
                    asked,
                    session,
                    lesson: lesson.map(Rc::new),
                    tried: Vec::new(),
                    lit: None,
                    refusal: None,
                    said: None,
                }));
            }
            // The set or the judge has not arrived yet; its arrival tries again.
            Ok(None) => {}
            Err(why) => self.trouble = Some(why),
        }
    }

    /// Whether the case that is asked for is drawn by what comes with the judge.
    #[must_use]
    pub fn waits_for_the_judge(&self) -> bool {
        let Route::Case(asked) = &self.route else { return false };
        match &asked.from {
            _ if asked.shown.is_some() => true,
            From::Seed(..) => true,
            From::Address(address) => cases::is_drawn_with_the_judge(*address),
            // A set that is here, and its case not: nothing else can be missing.
            From::Set(..) => self.bench.is_none() && matches!(self.library, Library::Here(_)),
        }
    }

    /// Tries again to open what is asked for, now that something has arrived.
    fn once_more(mut self) -> Self {
        if let (Route::Case(asked), None) = (self.route.clone(), &self.bench) {
            self.bring(asked);
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

impl Reducible for Room {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        Rc::new(match action {
            Action::Go(route) => self.at(route),
            Action::Do(event) => self.with_bench(|bench| bench.act(event)),
            Action::Follow(events) => self.with_bench(|bench| {
                for event in events {
                    bench.act(event);
                }
            }),
            Action::Turn(decision, bit) => self.with_bench(|bench| {
                let bits = match bench.session.draft().value(decision) {
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
                if let Route::Case(asked) = self.route.clone() {
                    room.bring(asked);
                }
                room
            }
            Action::Library(library) => Self { library, ..Self::clone(&self) }.once_more(),
            Action::Judge(Ok(judging)) => {
                Self { judging: Some(judging), ..Self::clone(&self) }.once_more()
            }
            Action::Judge(Err(why)) => Self { trouble: Some(why), ..Self::clone(&self) },
            Action::AskAgain => {
                Self { trouble: None, retries: self.retries + 1, ..Self::clone(&self) }
            }
            Action::Briefed => Self { briefed: true, ..Self::clone(&self) },
            Action::Name(notation) => Self { notation, ..Self::clone(&self) },
        })
    }
}
