//! What a kept attempt says once it is replayed: verdicts as observations, answers about how sure the
//! learner was, time per step.

use crate::record::{Done, Head};
use core::fmt;
use engine::cases::{Archetype, GENERATOR, WHOLE_MOUTH, archetype_at};
use engine::chart::Case;
use engine::debrief::{PlanWord, Verdict, hash_of, judge};
use engine::plan::{Refusal, Step};
use engine::rules::{Rule, Skill, Unfit, Zone};
use engine::session::{Event, Session, Unreadable};

/// A pause longer than this is not time spent on a step, milliseconds [ours].
const LONGEST_THOUGHT: u64 = 5 * 60 * 1000;

/// One rule's word on one attempt.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Observed {
    /// The rule.
    pub rule: &'static Rule,
    /// Its word.
    pub zone: Zone,
    /// Whether it counts: debated and unknowable ones are told, never counted.
    pub counts: bool,
}

impl Observed {
    /// Whether it is a fault that counts.
    #[must_use]
    pub fn is_fault(&self) -> bool {
        self.counts && self.zone.is_fault()
    }
}

/// How sure the learner was of a step, and how it went.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sure {
    /// The step.
    pub step: Step,
    /// The answer, percent.
    pub percent: u8,
    /// Whether no rule of the step that counts was outside or unsafe.
    pub right: bool,
}

/// An attempt, replayed.
#[derive(Debug, Clone, PartialEq)]
pub struct Past {
    /// Its circumstances.
    pub head: Head,
    /// What decides something in its case, where that is known.
    pub archetype: Option<Archetype>,
    /// The word for the plan so far.
    pub word: PlanWord,
    /// Every verdict, in the order of care.
    pub observed: Vec<Observed>,
    /// Answers about how sure the learner was, of steps in which something counts.
    pub sure: Vec<Sure>,
    /// Milliseconds spent on each step carried out, pauses cut to five minutes.
    pub spent: Vec<(Step, u64)>,
    /// Hash of its verdicts under today's rules.
    pub verdicts: u64,
}

/// Why an attempt cannot be replayed.
#[derive(Debug, Clone, PartialEq)]
pub enum Broken {
    /// An event cannot be read.
    Event {
        /// Which, from 0.
        place: usize,
        /// Why.
        why: Unreadable,
    },
    /// An event cannot have happened there.
    Refused {
        /// Which, from 0.
        place: usize,
        /// Why.
        why: Refusal,
    },
    /// The set would have a rule otherwise than it may.
    Local {
        /// Which.
        rule: String,
        /// Why it may not.
        why: Unfit,
    },
}

impl fmt::Display for Broken {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Event { place, why } => write!(f, "event {}: {why}", place + 1),
            Self::Refused { place, why } => write!(f, "event {}: {why}", place + 1),
            Self::Local { rule, why } => write!(f, "the protocol of its set: {rule}: {why}"),
        }
    }
}

impl core::error::Error for Broken {}

/// The attempt as it stands after its events. `case` is its case as it was drawn or written, without
/// its set.
///
/// # Errors
/// [`Broken`] with the first event that cannot be replayed.
pub fn replay(head: &Head, events: &[Done], case: Case) -> Result<Session, Broken> {
    head.local.check().map_err(|(rule, why)| Broken::Local { rule, why })?;
    let mut session = Session::open(case.under(head.local.clone()), head.mode);
    for (place, done) in events.iter().enumerate() {
        let event = Event::try_from(&done.what).map_err(|why| Broken::Event { place, why })?;
        session.apply(event).map_err(|why| Broken::Refused { place, why })?;
    }
    Ok(session)
}

impl Past {
    /// What an attempt says, from its session.
    #[must_use]
    pub fn of(head: Head, events: &[Done], session: &Session) -> Self {
        let verdicts = judge(session.opened(), session.plan());
        let observed = verdicts.iter().map(|verdict| Observed {
            rule: verdict.rule,
            zone: verdict.zone,
            counts: verdict.counts(),
        });
        Self {
            archetype: archetype_of(&head),
            word: PlanWord::of(&verdicts),
            observed: observed.collect(),
            sure: session
                .sure()
                .iter()
                .filter_map(|sure| answered(*sure, session, &verdicts))
                .collect(),
            spent: spent(&head, events),
            verdicts: hash_of(&verdicts),
            head,
        }
    }

    /// Whether it came to its end.
    #[must_use]
    pub const fn is_over(&self) -> bool {
        self.head.ended.is_some()
    }

    /// Whether the learner did it alone: what was shown is nobody's answer.
    #[must_use]
    pub fn is_own(&self) -> bool {
        use crate::record::Help::{Begun, Worked};
        !self.head.help.iter().any(|help| matches!(help, Worked | Begun))
    }

    /// How it went with a skill: whether none of its verdicts that count is a fault; nothing where
    /// none counts. Every verdict is an observation on its skill; those of one attempt are one answer,
    /// right when all of them are.
    #[must_use]
    pub fn answer(&self, skill: Skill) -> Option<bool> {
        let mut of_skill =
            self.observed.iter().filter(|one| one.counts && one.rule.skill == skill).peekable();
        of_skill.peek()?;
        Some(!of_skill.any(Observed::is_fault))
    }
}

fn archetype_of(head: &Head) -> Option<Archetype> {
    let address = head.address?;
    matches!(address.generator, GENERATOR | WHOLE_MOUTH).then(|| archetype_at(address))
}

fn answered((step, percent): (Step, u8), session: &Session, verdicts: &[Verdict]) -> Option<Sure> {
    if !session.done().contains(&step) {
        return None;
    }
    let mut of_step =
        verdicts.iter().filter(|one| one.rule.step == step && one.counts()).peekable();
    of_step.peek()?;
    Some(Sure { step, percent, right: !of_step.any(Verdict::is_fault) })
}

/// Time between one event and the next belongs to the step that is carried out next.
fn spent(head: &Head, events: &[Done]) -> Vec<(Step, u64)> {
    let mut all: Vec<(Step, u64)> = Vec::new();
    let (mut before, mut sum) = (head.begun, 0);
    for done in events {
        if let (Some(since), Some(at)) = (before, done.at) {
            sum += at.saturating_sub(since).min(LONGEST_THOUGHT);
        }
        before = done.at.or(before);
        if let Ok(Event::CarryOut(step)) = Event::try_from(&done.what) {
            match all.iter_mut().find(|(other, _)| *other == step) {
                Some((_, spent)) => *spent += sum,
                None => all.push((step, sum)),
            }
            sum = 0;
        }
    }
    all
}
