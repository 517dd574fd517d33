//! The case on the bench, and what is done to it.

use crate::route::CaseRoute;
use engine::plan::{Decision, Refusal};
use engine::rules::Rule;
use engine::session::{Event, Lesson, Session};
use learning::record::Head;
use std::rc::Rc;

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
    /// How many events it has then.
    ahead_at: usize,
    /// How many of its events were kept when that was last told: at a step, not at each choice, because
    /// to be told draws the sheet anew, under whoever is typing in it.
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
    pub fn new(serial: u32, asked: CaseRoute, session: Session, lesson: Option<Lesson>) -> Self {
        Self {
            serial,
            asked,
            session,
            ahead: None,
            ahead_at: 0,
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
    pub fn act(&mut self, event: Event) {
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
        if moves_on {
            self.ahead_at = next.events().len();
        }
        if moves_on || self.ahead.is_some() { self.ahead = Some(next) } else { self.session = next }
    }

    /// Goes on to what was carried out.
    pub fn move_on(&mut self) {
        if let Some(ahead) = self.ahead.take() {
            self.session = ahead;
        }
    }

    /// That many events are kept.
    pub fn keep(&mut self, count: usize) {
        self.kept = self.kept.max(count);
        if self.kept >= self.ahead_at {
            self.move_on();
        }
    }

    /// Another tab has written in this attempt behind `kept` events of this one: what was done here and
    /// is not kept yet follows it where it still fits.
    pub fn follow(&mut self, there: &Session, kept: usize) {
        self.kept = kept;
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
