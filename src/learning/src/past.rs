//! What a kept attempt says once it is replayed: verdicts as observations, answers about how sure the
//! learner was, time per step.

use crate::record::{Done, Head, in_words};
use core::fmt;
use engine::anatomy::Tooth;
use engine::cases::{Archetype, GENERATOR, WHOLE_MOUTH, archetype_at};
use engine::chart::Case;
use engine::debrief::{PlanWord, Verdict, debrief, hash_of, judge};
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
    /// Whether the debrief charges it: a fault that counts, and the heaviest of those with its cause.
    pub charged: bool,
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
    /// At which tooth.
    pub tooth: Tooth,
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
    /// What the learner held against verdicts: id of the rule, reason.
    pub objections: Vec<(String, String)>,
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
        let told = debrief(session.opened(), session.plan(), None);
        let verdicts = told.verdicts;
        let charged: Vec<usize> =
            told.groups.iter().filter_map(|group| group.faults.first().copied()).collect();
        let observed = verdicts.iter().enumerate().map(|(place, verdict)| Observed {
            rule: verdict.rule,
            zone: verdict.zone,
            counts: verdict.counts(),
            charged: charged.contains(&place),
        });
        Self {
            tooth: session.opened().site.tooth,
            archetype: archetype_of(&head),
            word: told.word,
            observed: observed.collect(),
            sure: session
                .sure()
                .iter()
                .filter_map(|sure| answered(*sure, session, &verdicts))
                .collect(),
            spent: spent(&head, events),
            objections: session.disputes().to_vec(),
            verdicts: hash_of(&verdicts),
            head,
        }
    }

    /// Whether it came to its end.
    #[must_use]
    pub const fn is_over(&self) -> bool {
        self.head.ended.is_some()
    }

    /// When it was begun, or where nobody knows when it ended; nothing where nobody knows either.
    #[must_use]
    pub fn when(&self) -> Option<u64> {
        self.head.begun.or(self.head.ended)
    }

    /// Whether today's rules judge it otherwise than those that it was sat under; nothing where no
    /// verdict was kept to compare.
    #[must_use]
    pub fn is_judged_otherwise(&self) -> Option<bool> {
        self.head.is_judged_otherwise(self.verdicts)
    }

    /// Milliseconds spent on it, pauses cut.
    #[must_use]
    pub fn time(&self) -> u64 {
        self.spent.iter().map(|(_, spent)| spent).sum()
    }

    /// Whether the learner did it alone: what was shown is nobody's answer.
    #[must_use]
    pub fn is_own(&self) -> bool {
        self.head.is_own()
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

/// The verdicts of an attempt as it stands, as its record names them.
#[must_use]
pub fn verdicts_of(session: &Session) -> String {
    in_words(hash_of(&judge(session.opened(), session.plan())))
}

/// What of an attempt is outside or unsafe as it stands, as its record has it.
#[must_use]
pub fn faults_of(verdicts: &[Verdict]) -> String {
    let faults = verdicts.iter().filter(|verdict| verdict.is_fault());
    let faults: Vec<String> =
        faults.map(|verdict| format!("{}:{}", verdict.rule.id, verdict.zone.key())).collect();
    faults.join(" ")
}

/// Notes in the head of an attempt that is over what its verdicts were.
pub fn note_verdicts(head: &mut Head, session: &Session) {
    let verdicts = judge(session.opened(), session.plan());
    head.verdicts = in_words(hash_of(&verdicts));
    head.faults = faults_of(&verdicts);
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

#[cfg(test)]
mod tests {
    use super::*;
    use engine::cases::teaching_at;
    use engine::session::wander;

    #[test]
    fn each_cause_is_charged_once_as_the_debrief_charges_it() {
        for seed in 1..6 {
            let address =
                engine::chart::Address { format: 1, generator: 1, seed, attempt: 0, changed: None };
            let session = wander(teaching_at(address).unwrap(), seed);
            let head = Head::begin("a".to_owned(), String::new(), &session, 1, 0);
            let past = Past::of(head, &[], &session);
            let told = session.debrief(None).unwrap();
            let charged: Vec<&str> =
                past.observed.iter().filter(|one| one.charged).map(|one| one.rule.id).collect();
            let mut heads: Vec<usize> = told.groups.iter().map(|group| group.faults[0]).collect();
            heads.sort_unstable();
            assert!(!heads.is_empty());
            assert_eq!(
                charged,
                heads.iter().map(|at| told.verdicts[*at].rule.id).collect::<Vec<_>>()
            );
            assert!(past.observed.iter().all(|one| !one.charged || one.is_fault()));
            assert_eq!((past.word, past.tooth), (told.word, session.opened().site.tooth));
        }
    }
}
