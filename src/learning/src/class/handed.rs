//! One attempt that was handed in, done again: what of it counts for a class.

use super::changed::Changed;
use super::discussion::Brought;
use super::marks::Marks;
use crate::past::{Broken, replay};
use crate::record::Record;
use core::fmt;
use engine::cases::{self, NoCase};
use engine::chart::{Address, Case};
use engine::debrief::{PlanWord, RULE_SET, hash_of, judge};
use engine::hash::Fnv;
use engine::plan::{Decision, Kind, Value};
use engine::session::Session;
use serde_json::value::RawValue;

/// What an attempt at a case comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct Handed {
    /// Its own name.
    pub id: String,
    /// Its case: an address, or *written out* and a hash.
    pub case: String,
    /// At which tooth, two digits.
    pub tooth: u8,
    /// The set that gave the case.
    pub set: Option<String>,
    /// Whether it came to its end.
    pub over: bool,
    /// Whether the learner did it alone.
    pub own: bool,
    /// The word for the plan so far.
    pub word: PlanWord,
    /// What the rules said.
    pub marks: Marks,
    /// The alternatives chosen, in the order of care: the decision, and the place of the alternative.
    pub chosen: Vec<(Decision, u8)>,
    /// What the learner held against verdicts: the rule, the reason.
    pub objections: Vec<(String, String)>,
    /// What it was under the rule set that it was sat under, where today's judges it otherwise.
    pub otherwise: Option<Box<Changed>>,
    /// Whether its case had been opened in that browser before it was begun.
    pub opened_before: bool,
    /// Whether it went on after the time that its set gave.
    pub late: bool,
    /// How many things were done.
    pub events: usize,
    /// What a discussion of it needs, and its mark.
    pub brought: Brought,
}

/// Why an attempt is set aside.
#[derive(Debug, Clone, PartialEq)]
pub enum Aside {
    /// Its case cannot be drawn, and it carries none.
    NoCase(NoCase),
    /// The case that it carries cannot be read.
    Unreadable(String),
    /// The case that it carries does not hold together.
    Unsound(&'static str),
    /// It carries a case of its own, which whoever reads here does not read.
    Elsewhere,
    /// Its events cannot be done.
    Broken(Broken),
    /// It says what its verdicts were, under this very rule set, and they are others.
    Changed {
        /// The hash that it carries.
        found: String,
    },
    /// It says that it came to its end, and its events stop before.
    CutOff,
}

impl fmt::Display for Aside {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoCase(why) => {
                write!(f, "{why}, and it carries no case: ask for the file anew, saved with its cases")
            }
            Self::Unreadable(why) => write!(f, "the case that it carries cannot be read: {why}"),
            Self::Unsound(why) => write!(f, "the case that it carries does not hold together: {why}"),
            Self::Elsewhere => f.write_str(
                "found a case written out, which this page does not read: give the file to `wallwise class`",
            ),
            Self::Broken(why) => write!(f, "{why}"),
            Self::Changed { found } => write!(
                f,
                "found the verdicts {found}, expected those that its choices have under rule set {RULE_SET}: it was changed after it was sat; ask the learner for the file anew"
            ),
            Self::CutOff => f.write_str(
                "found no last step, expected one, as it says when it ended: events are missing; ask the learner for the file anew",
            ),
        }
    }
}

impl core::error::Error for Aside {}

/// Reads the case that a record carries: the case, and what stands for its address.
pub type Held<'a, C> = &'a dyn Fn(&C) -> Result<(Case, String), Aside>;

impl Handed {
    /// What a record comes to, its case drawn anew with `draw`, or, where nobody here can draw it, the
    /// one that it carries, read by `held` ([`written_out`]; the page, for which reading one weighs too
    /// much, has [`Aside::Elsewhere`]).
    ///
    /// # Errors
    /// Why it is set aside.
    pub fn of<C>(
        record: Record<C>,
        draw: &mut dyn FnMut(Address) -> Result<Case, NoCase>,
        held: Held<'_, C>,
    ) -> Result<Self, Aside> {
        let Record { head, events, case: carried, .. } = record;
        let (case, name) = case_of(head.address, carried, draw, held)?;
        let session = replay(&head, &events, case).map_err(Aside::Broken)?;
        if head.ended.is_some() && !session.is_over() {
            return Err(Aside::CutOff);
        }
        // What is charged to which cause a class is not told: judging alone is all that it takes.
        let verdicts = judge(session.opened(), session.plan());
        let otherwise = head.is_judged_otherwise(hash_of(&verdicts)) == Some(true);
        if otherwise && head.rule_set == RULE_SET {
            return Err(Aside::Changed { found: head.verdicts });
        }
        Ok(Self {
            case: name,
            tooth: session.opened().site.tooth.iso(),
            over: session.is_over(),
            own: head.is_own(),
            word: PlanWord::of(&verdicts),
            marks: Marks::of(&verdicts),
            chosen: chosen(&session),
            events: events.len(),
            opened_before: head.opened_before,
            late: head.late(&events).is_some(),
            otherwise: otherwise
                .then(|| Box::new(Changed::of(head.rule_set, &head.faults, &verdicts))),
            id: head.id,
            set: head.set,
            objections: session.disputes().to_vec(),
            brought: Brought::of(session.into_plan(), head.local, &verdicts),
        })
    }
}

fn case_of<C>(
    address: Option<Address>,
    carried: Option<C>,
    draw: &mut dyn FnMut(Address) -> Result<Case, NoCase>,
    held: Held<'_, C>,
) -> Result<(Case, String), Aside> {
    let drawn = address.map(|address| (draw(address), address.to_string()));
    match (drawn, carried) {
        (Some((Ok(case), name)), _) => Ok((case, name)),
        (Some((Err(NoCase::Format { .. } | NoCase::Generator { .. }), name)), Some(case)) => {
            Ok((held(&case)?.0, name))
        }
        (Some((Err(why), _)), _) => Err(Aside::NoCase(why)),
        (None, Some(case)) => held(&case),
        // Reading a file refuses such a record.
        (None, None) => Err(Aside::Unsound("there is none")),
    }
}

/// A case that a file carries, and what stands for its address: nothing that does not hold together is
/// judged.
///
/// # Errors
/// Where it cannot be read, or does not hold together.
#[expect(clippy::borrowed_box, reason = "as a record holds it")]
pub fn written_out(text: &Box<RawValue>) -> Result<(Case, String), Aside> {
    let case: Case =
        serde_json::from_str(text.get()).map_err(|why| Aside::Unreadable(why.to_string()))?;
    cases::holds(&case).map_err(Aside::Unsound)?;
    let mut name = Fnv::new();
    name.text(text.get());
    Ok((case, format!("written out {:08x}", name.value() >> 32)))
}

/// What was chosen from lists, of several boxes each that is ticked.
fn chosen(session: &Session) -> Vec<(Decision, u8)> {
    let draft = session.tried(&[]);
    let mut chosen = Vec::new();
    for entry in Decision::ALL.iter().filter(|entry| session.done().contains(&entry.step)) {
        match (entry.kind, draft.value(entry.decision)) {
            (Kind::One(_), Some(Value::One(place))) => chosen.push((entry.decision, *place)),
            (Kind::Many(choices), Some(Value::Many(ticked))) => {
                let places = (0..32_u8).take(choices.len());
                chosen.extend(
                    places
                        .filter(|place| ticked >> place & 1 == 1)
                        .map(|place| (entry.decision, place)),
                );
            }
            _ => {}
        }
    }
    chosen
}
