//! What is handed in about one sitting at a set. Every way of handing in says these facts and no other.

use super::compact::Fitted;
use crate::file::is_name;
use crate::past::{Observed, Past};
use crate::record::Done;
pub use crate::review::ZONES;
use core::fmt;
use engine::debrief::RULE_SET;
use engine::hash::Fnv;
use engine::plan::Step;
use engine::rules::Zone;
use engine::session::{Event, Session};

/// One sitting at a set.
#[derive(Debug, Clone, PartialEq)]
pub struct Outcome {
    /// The learner's code: letters, digits and hyphens, at most 60; never a name or an address.
    pub learner: String,
    /// The set's name in addresses: letters, digits and hyphens, at most 60.
    pub set: String,
    /// The set's title, for people.
    pub title: String,
    /// Which version of the set it was: [`hash_of`] what was handed out.
    pub hash: String,
    /// The rule set that everything was judged by.
    pub rule_set: String,
    /// The mark to reach, 0 to 100; none where nothing is to be passed.
    pub pass: Option<u8>,
    /// Every case of the set in its order, those that were not begun too.
    pub cases: Vec<CaseOutcome>,
    /// Where the learner goes on: the fragment of an address in the room.
    pub place: String,
    /// The attempts as the host is to keep them, and how many had no room.
    pub kept: Fitted,
    /// Milliseconds since the set was opened this time.
    pub session: u64,
    /// Milliseconds spent on the set in all.
    pub total: u64,
}

/// One case of it.
#[derive(Debug, Clone, PartialEq)]
pub struct CaseOutcome {
    /// Its name within the set, unlike the others': letters, digits and hyphens, at most 60.
    pub name: String,
    /// Its address; empty where it is written out in the set.
    pub address: String,
    /// The steps that were carried out, in order.
    pub steps: Vec<StepOutcome>,
    /// Faults as the debrief charges them, by cause, in the order of care.
    pub faults: Vec<FaultOutcome>,
    /// Ids of the rules whose verdict is *unsafe* and counts.
    pub hurts: Vec<&'static str>,
    /// The mark that the debrief shows, 0 to 100; none before the end, or where nothing was to be marked.
    pub mark: Option<f64>,
    /// Whether it came to its end.
    pub is_over: bool,
    /// When it was begun, milliseconds since 1970 in universal time.
    pub begun: Option<u64>,
    /// When it came to its end, likewise.
    pub ended: Option<u64>,
    /// Milliseconds spent on it, pauses cut.
    pub spent: u64,
}

/// One step that was carried out.
#[derive(Debug, Clone, PartialEq)]
pub struct StepOutcome {
    /// Which.
    pub step: Step,
    /// What its rules said.
    pub counts: Counts,
    /// When it was carried out, milliseconds since 1970 in universal time.
    pub at: Option<u64>,
    /// Milliseconds spent on it, pauses cut.
    pub spent: u64,
}

/// One fault.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct FaultOutcome {
    /// Id of the rule.
    pub rule: &'static str,
    /// Its step.
    pub step: Step,
    /// Its word.
    pub zone: Zone,
}

/// How many verdicts said what.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Counts {
    /// Those that count, by their place in [`ZONES`].
    pub of: [u16; 6],
    /// Those that were told and never counted: debated, or beyond what could be known.
    pub set_aside: u16,
}

/// Whether the set was passed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Success {
    /// Nothing is to be passed, or it is not at its end.
    Unknown,
    /// The mark was reached and nothing done that can hurt a patient.
    Passed,
    /// One of the two does not hold.
    Failed,
}

/// What makes an outcome one that nobody can be told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unsayable {
    /// What part of it.
    pub part: &'static str,
    /// What stands there.
    pub found: String,
    /// What may stand there.
    pub expected: &'static str,
}

impl fmt::Display for Unsayable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let found: String = self.found.chars().take(60).collect();
        let Self { part, expected, .. } = self;
        write!(f, "{part}: found \"{found}\", expected {expected}; change it and hand in again")
    }
}

impl core::error::Error for Unsayable {}

/// A short name for exactly this text, sixteen hexadecimal digits.
#[must_use]
pub fn hash_of(text: &str) -> String {
    let mut hash = Fnv::new();
    hash.text(text);
    format!("{:016x}", hash.value())
}

impl Counts {
    /// The worst word of those that count; none where none does.
    #[must_use]
    pub fn worst(&self) -> Option<Zone> {
        let found = self.of.iter().zip(ZONES).rev().find(|(count, _)| **count > 0);
        found.map(|(_, zone)| zone)
    }

    fn take(&mut self, zone: Zone, counts: bool) {
        let place = ZONES.iter().position(|one| *one == zone).filter(|_| counts);
        let count = place.and_then(|place| self.of.get_mut(place)).unwrap_or(&mut self.set_aside);
        *count = count.saturating_add(1);
    }
}

impl CaseOutcome {
    /// A case that was not begun.
    #[must_use]
    pub fn untouched(name: &str, address: &str) -> Self {
        Self {
            name: name.to_owned(),
            address: address.to_owned(),
            steps: Vec::new(),
            faults: Vec::new(),
            hurts: Vec::new(),
            mark: None,
            is_over: false,
            begun: None,
            ended: None,
            spent: 0,
        }
    }

    /// What an attempt at a case came to. `mark`: what its debrief shows, percent.
    #[must_use]
    pub fn of(
        name: &str,
        past: &Past,
        session: &Session,
        events: &[Done],
        mark: Option<f64>,
    ) -> Self {
        let (is_over, done) = (session.is_over(), session.done());
        let charged = past.observed.iter().filter(|one| one.charged);
        let fault = |one: &Observed| FaultOutcome {
            rule: one.rule.id,
            step: one.rule.step,
            zone: one.zone,
        };
        let hurt = past.observed.iter().filter(|one| one.counts && one.zone == Zone::Unsafe);
        Self {
            steps: done.iter().map(|step| step_of(*step, past, done, events)).collect(),
            faults: charged.map(fault).collect(),
            hurts: hurt.map(|one| one.rule.id).collect(),
            mark: mark
                .filter(|mark| is_over && mark.is_finite())
                .map(|mark| mark.clamp(0.0, 100.0)),
            is_over,
            begun: past.head.begun,
            ended: past.head.ended.filter(|_| is_over),
            spent: past.time(),
            ..Self::untouched(name, &past.head.address.map(|it| it.to_string()).unwrap_or_default())
        }
    }

    /// Whether anything was done in it.
    #[must_use]
    pub const fn is_begun(&self) -> bool {
        self.begun.is_some() || !self.steps.is_empty()
    }
}

fn step_of(step: Step, past: &Past, done: &[Step], events: &[Done]) -> StepOutcome {
    let mut counts = Counts::default();
    // What is said of a step that a course passes over belongs to the one before it.
    let belongs = |one: &&Observed| {
        done.iter().rev().find(|other| **other <= one.rule.step).or(done.first()) == Some(&step)
    };
    for one in past.observed.iter().filter(belongs) {
        counts.take(one.zone, one.counts);
    }
    let carried_out =
        |done: &&Done| Event::try_from(&done.what).is_ok_and(|it| it == Event::CarryOut(step));
    StepOutcome {
        step,
        counts,
        // A step that weighs what it finds is carried out twice; the second time is its end.
        at: events.iter().rev().find(carried_out).and_then(|done| done.at),
        spent: past.spent.iter().find(|(one, _)| *one == step).map_or(0, |(_, spent)| *spent),
    }
}

impl Outcome {
    /// An outcome without a case, under today's rules.
    #[must_use]
    pub fn new(learner: &str, set: &str, title: &str) -> Self {
        Self {
            learner: learner.to_owned(),
            set: set.to_owned(),
            title: title.to_owned(),
            hash: String::new(),
            rule_set: RULE_SET.to_owned(),
            pass: None,
            cases: Vec::new(),
            place: String::new(),
            kept: Fitted::default(),
            session: 0,
            total: 0,
        }
    }

    /// The same with these cases, and the time that they took.
    #[must_use]
    pub fn with(mut self, cases: Vec<CaseOutcome>) -> Self {
        self.total = cases.iter().map(|case| case.spent).sum();
        self.cases = cases;
        self
    }

    /// Whether every case came to its end.
    #[must_use]
    pub fn is_complete(&self) -> bool {
        !self.cases.is_empty() && self.cases.iter().all(|case| case.is_over)
    }

    /// The share of cases that came to their end, 0 to 1.
    #[must_use]
    pub fn progress(&self) -> f64 {
        let count = |count: usize| u32::try_from(count).map_or(f64::INFINITY, f64::from);
        let over = self.cases.iter().filter(|case| case.is_over).count();
        if self.cases.is_empty() { 0.0 } else { count(over) / count(self.cases.len()) }
    }

    /// The mean mark of the cases, to a hundredth; none before the set is complete, so that no host
    /// takes the first case for the whole, and none where nothing was to be marked.
    #[must_use]
    pub fn mark(&self) -> Option<f64> {
        let marks = || self.cases.iter().filter_map(|case| case.mark);
        let count = u32::try_from(marks().count()).ok().filter(|count| *count > 0)?;
        let mean = marks().fold(0.0, |sum, mark| sum + mark) / f64::from(count);
        self.is_complete().then(|| libm::round(mean * 100.0) / 100.0)
    }

    /// How many unsafe acts were done.
    #[must_use]
    pub fn hurts(&self) -> usize {
        self.cases.iter().map(|case| case.hurts.len()).sum()
    }

    /// Whether the set was passed. Unsafe acts have a line of their own, none at all: no mark makes up
    /// for one. The mark is compared as it is shown, to a hundredth.
    #[must_use]
    pub fn success(&self) -> Success {
        match (self.pass, self.mark()) {
            (None, _) => Success::Unknown,
            _ if !self.is_complete() => Success::Unknown,
            (Some(pass), Some(mark)) if mark >= f64::from(pass) && self.hurts() == 0 => {
                Success::Passed
            }
            (Some(_), None) if self.hurts() == 0 => Success::Unknown,
            _ => Success::Failed,
        }
    }

    /// Whether all of it can be said in the standards' terms.
    ///
    /// # Errors
    /// [`Unsayable`] with the first part that cannot.
    pub fn check(&self) -> Result<(), Unsayable> {
        const NAME: &str = "letters, digits and hyphens, 60 at most";
        let name = |part, text: &str| {
            let found = text.to_owned();
            if is_name(text) { Ok(()) } else { Err(Unsayable { part, found, expected: NAME }) }
        };
        name("the learner's code", &self.learner)?;
        name("the set's name", &self.set)?;
        for (place, case) in self.cases.iter().enumerate() {
            name("a case's name", &case.name)?;
            if self.cases.iter().take(place).any(|other| other.name == case.name) {
                let (part, found) = ("a case's name", case.name.clone());
                return Err(Unsayable { part, found, expected: "no other case to have it" });
            }
        }
        match self.pass {
            Some(pass) if pass > 100 => Err(Unsayable {
                part: "the pass mark",
                found: pass.to_string(),
                expected: "a whole number from 0 to 100",
            }),
            _ => Ok(()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handing::trial::{handed, outcome};

    #[test]
    fn an_outcome_says_what_its_attempts_say() {
        for seed in 1..6 {
            let (case, past, session) = handed(seed);
            assert!(case.is_over && case.is_begun());
            let steps: Vec<Step> = case.steps.iter().map(|one| one.step).collect();
            assert_eq!(steps, session.done());
            let counted: usize =
                case.steps.iter().flat_map(|one| one.counts.of).map(usize::from).sum();
            assert_eq!(counted, past.observed.iter().filter(|one| one.counts).count());
            let told = session.debrief(None).unwrap();
            assert_eq!(case.faults.len(), told.groups.len());
            assert_eq!(case.hurts.is_empty(), told.word != engine::debrief::PlanWord::Unsafe);
            assert_eq!(case.spent, past.time());
            assert!(case.steps.iter().all(|one| one.at.is_some()));
            assert!(case.steps.iter().map(|one| one.at).is_sorted());
        }
    }

    fn marked(marks: &[Option<f64>]) -> Outcome {
        let mut outcome = Outcome::new("learner-7f3a", "a-first-set", "A first set");
        for (number, mark) in (1..).zip(marks) {
            let over = CaseOutcome::untouched(&format!("case-{number}"), "1.1.7.0");
            outcome.cases.push(CaseOutcome { mark: *mark, is_over: true, ..over });
        }
        outcome.pass = Some(60);
        outcome
    }

    #[test]
    fn passed_needs_the_mark_and_no_unsafe_act_at_once() {
        let at = marked(&[Some(50.0), Some(70.0)]);
        assert_eq!((at.mark(), at.success()), (Some(60.0), Success::Passed));
        let below = marked(&[Some(59.0), Some(60.98)]);
        assert_eq!((below.mark(), below.success()), (Some(59.99), Success::Failed));
        // What is shown as 60 is 60.
        assert_eq!(marked(&[Some(59.996)]).success(), Success::Passed);
        let mut hurt = marked(&[Some(100.0), Some(100.0)]);
        hurt.cases[1].hurts.push("drilling-into-the-canal");
        assert_eq!((hurt.mark(), hurt.success()), (Some(100.0), Success::Failed));
        hurt.pass = None;
        assert_eq!(hurt.success(), Success::Unknown);
    }

    #[test]
    fn nothing_is_marked_or_passed_before_the_end() {
        let mut outcome = marked(&[Some(90.0), Some(90.0), None]);
        assert_eq!(outcome.mark(), Some(90.0), "where nothing was to be marked nothing is missing");
        outcome.cases[2].is_over = false;
        assert_eq!((outcome.mark(), outcome.success()), (None, Success::Unknown));
        assert!((outcome.progress() - 2.0 / 3.0).abs() < 1e-12);
        assert_eq!(marked(&[]).progress(), 0.0);
        assert!(!marked(&[]).is_complete());
        assert_eq!(marked(&[None]).success(), Success::Unknown);
    }

    #[test]
    fn what_could_name_a_person_or_break_an_address_is_refused() {
        assert_eq!(outcome(3).check(), Ok(()));
        for learner in ["", "Ada Lovelace", "ada@example.org", "ünal", "a/b"] {
            let says = Outcome { learner: learner.to_owned(), ..outcome(2) };
            let says = says.check().unwrap_err().to_string();
            assert!(says.contains("code") && says.contains("letters, digits"), "{says}");
        }
        let mut twice = outcome(2);
        twice.cases[1].name = twice.cases[0].name.clone();
        assert!(twice.check().unwrap_err().to_string().contains("no other case"));
        assert!(Outcome { pass: Some(101), ..outcome(1) }.check().is_err());
    }
}
