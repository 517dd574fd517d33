//! What has been chosen so far.

use super::catalogue::{Decision, Kind, NumberKind, Step};
use super::choices::{Alternative, Choice, Several};
use super::flow;
use crate::anatomy::Tooth;
use crate::chart::Case;
use crate::geometry::{Outline, OutlineFault};
use core::fmt;
use std::collections::BTreeMap;

/// An answer to a decision.
#[derive(Debug, Clone, PartialEq)]
pub enum Value {
    /// The place of the alternative in its list.
    One(u8),
    /// One bit for each alternative.
    Many(u32),
    /// A count of the decision's steps.
    Number(i32),
    /// An outline on the map.
    Outline(Outline),
}

/// Why an event was refused. Nothing has changed.
#[derive(Debug, Clone, PartialEq)]
pub enum Refusal {
    /// The answer is of another kind than the decision asks for.
    WrongKind {
        /// Which decision.
        decision: Decision,
    },
    /// No alternative has that key.
    NoSuchAlternative {
        /// Which decision.
        decision: Decision,
        /// The key as it came.
        found: String,
    },
    /// The number lies outside its range or between its steps.
    NoSuchNumber {
        /// Which decision.
        decision: Decision,
        /// The count as it came.
        found: i32,
    },
    /// The vertices are no outline.
    NoOutline {
        /// Which decision.
        decision: Decision,
        /// Why not.
        fault: OutlineFault,
    },
    /// The step of this decision has been carried out.
    Past {
        /// Which decision.
        decision: Decision,
    },
    /// The decision is not asked in this plan.
    NotAsked {
        /// Which decision.
        decision: Decision,
    },
    /// The step cannot be carried out while these are undecided.
    Undecided {
        /// Which step.
        step: Step,
        /// What is undecided.
        missing: Vec<Decision>,
    },
    /// Another step comes first, or the step is not part of this course.
    OutOfOrder {
        /// The step that was asked for.
        asked: Step,
        /// The step that is due; `None` when nothing is left to do.
        due: Option<Step>,
    },
    /// There is no film to repeat, or the course is over.
    NoFilm,
    /// Findings are written down at the examination, once it has shown something.
    NotToBeNoted,
    /// No tube and receptor can stand so.
    NoSuchAim,
    /// The last film has been repeated often enough.
    TooManyFilms,
    /// Bone is sounded where that examination was chosen, and beside a tooth.
    NotToBeSounded,
    /// The probe goes along the tooth's neck only.
    NoSuchPlace,
    /// The bone here has been sounded often enough.
    TooManySoundings,
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::WrongKind { decision } => {
                let asked = match decision.entry().kind {
                    Kind::One(_) => "one of its alternatives",
                    Kind::Many(_) => "a list of its alternatives",
                    Kind::Number(_) => "a number",
                    Kind::Outline => "a list of [s, t] pairs in mm",
                };
                write!(f, "{}: expected {asked}", decision.key())
            }
            Self::NoSuchAlternative { decision, found } => {
                write!(f, "{}: found \"{found}\", expected ", decision.key())?;
                if let Kind::One(options) | Kind::Many(options) = decision.entry().kind {
                    let keys: Vec<_> = options.iter().map(|option| option.key).collect();
                    write!(f, "one of {}", keys.join(", "))?;
                }
                Ok(())
            }
            Self::NoSuchNumber { decision, found } => {
                if let Kind::Number(kind) = decision.entry().kind {
                    write!(
                        f,
                        "{}: found {} {unit}, expected {} to {} {unit} in steps of {}",
                        decision.key(),
                        kind.words(*found),
                        kind.words(kind.least),
                        kind.words(kind.most),
                        kind.words(kind.by),
                        unit = kind.unit,
                    )?;
                }
                Ok(())
            }
            Self::NoOutline { decision, fault } => write!(f, "{}: {fault}", decision.key()),
            Self::Past { decision } => write!(
                f,
                "{}: the step {} has been carried out and stays on record",
                decision.key(),
                decision.step().label()
            ),
            Self::NotAsked { decision } => write!(
                f,
                "{}: not asked in this plan; leave it out or change the choice it depends on",
                decision.key()
            ),
            Self::Undecided { step, missing } => undecided(f, *step, missing),
            Self::OutOfOrder { asked, due } => match due {
                Some(due) => write!(f, "{}: {} comes first", asked.label(), due.label()),
                None => write!(f, "{}: nothing is left to carry out in this course", asked.label()),
            },
            other => f.write_str(other.plain()),
        }
    }
}

impl Refusal {
    /// What is refused for the same reason whatever was found.
    const fn plain(&self) -> &'static str {
        match self {
            Self::NoFilm => "no film has been taken that could be repeated",
            Self::NoSuchAim => {
                "found an aim out of reach, expected angles of -40 to 40 degrees, a lean of 0 to 40 and a receptor of size 0 to 2"
            }
            Self::TooManyFilms => {
                "this site has been exposed often enough: read the films that are there"
            }
            Self::NotToBeSounded => {
                "bone is sounded once that examination was chosen, and while the tooth stands"
            }
            Self::NoSuchPlace => {
                "found a place beside the tooth, expected one along its neck, facial or oral"
            }
            Self::TooManySoundings => {
                "this gum has been pierced often enough: go by the readings that are there"
            }
            Self::NotToBeNoted => {
                "findings are written down at the examination, once it has shown something, from their own list or range"
            }
            _ => "",
        }
    }
}

fn undecided(f: &mut fmt::Formatter<'_>, step: Step, missing: &[Decision]) -> fmt::Result {
    let keys: Vec<_> = missing.iter().map(|decision| decision.key()).collect();
    write!(f, "{}: still undecided: {}", step.label(), keys.join(", "))?;
    // Nobody who wrote a plan could know that these would be asked.
    let mut by_chance = missing.iter().filter(|decision| decision.answers_chance());
    by_chance.try_for_each(|decision| write!(f, "; this came by chance: {}", decision.entry().ask))
}

impl core::error::Error for Refusal {}

impl Kind {
    /// What may be answered of a closed list when this stands there: every alternative, or the list with
    /// each one of its boxes turned over. Nothing of a number and of an outline.
    #[must_use]
    pub fn of_list(&self, now: Option<&Value>) -> Vec<Value> {
        let places =
            |options: &[_]| (0..options.len()).filter_map(|place| u8::try_from(place).ok());
        match (self, now) {
            (Self::One(options), _) => places(options).map(Value::One).collect(),
            (Self::Many(options), Some(Value::Many(bits))) => {
                places(options).map(|place| Value::Many(bits ^ (1 << place))).collect()
            }
            _ => Vec::new(),
        }
    }
}

impl NumberKind {
    /// The count in units, with as many places as its steps need.
    #[must_use]
    pub fn words(&self, count: i32) -> String {
        let places = match self.per_unit {
            1 => 0,
            10 => 1,
            _ => 2,
        };
        format!("{:.places$}", f64::from(count) / f64::from(self.per_unit))
    }

    /// What a negative and a positive value mean at this tooth: *to the palate*, *to the facial
    /// side*; empty where the value has no direction.
    #[must_use]
    pub fn ways_at(&self, tooth: Tooth) -> [String; 2] {
        self.ways.map(|way| way.replace("to the oral side", tooth.towards_oral()))
    }

    /// Whether the count is in range and on a step.
    #[must_use]
    pub const fn allows(&self, count: i32) -> bool {
        self.least <= count && count <= self.most && (count - self.least) % self.by == 0
    }
}

/// What has been chosen so far; a decision without an entry is undecided.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Draft {
    chosen: BTreeMap<Decision, Value>,
}

impl Draft {
    /// Nothing chosen.
    #[must_use]
    pub const fn empty() -> Self {
        Self { chosen: BTreeMap::new() }
    }

    /// Chooses. That the answer fits the decision is checked; whether the decision is asked in this
    /// plan is not, because another choice may bring it in.
    ///
    /// # Errors
    /// A [`Refusal`]; nothing has changed then.
    pub fn choose(&mut self, decision: Decision, value: Value) -> Result<(), Refusal> {
        match (decision.entry().kind, &value) {
            (Kind::One(options), Value::One(place)) if usize::from(*place) < options.len() => {}
            (Kind::Many(options), Value::Many(bits))
                if options.len() == 32 || *bits < 1_u32 << options.len() => {}
            (Kind::Number(kind), Value::Number(count)) => {
                if !kind.allows(*count) {
                    return Err(Refusal::NoSuchNumber { decision, found: *count });
                }
            }
            (Kind::Outline, Value::Outline(_)) => {}
            _ => return Err(Refusal::WrongKind { decision }),
        }
        self.chosen.insert(decision, value);
        Ok(())
    }

    /// Takes an answer back.
    pub fn clear(&mut self, decision: Decision) {
        self.chosen.remove(&decision);
    }

    /// The answer, if there is one.
    #[must_use]
    pub fn value(&self, decision: Decision) -> Option<&Value> {
        self.chosen.get(&decision)
    }

    /// All answers in order.
    pub fn iter(&self) -> impl Iterator<Item = (Decision, &Value)> {
        self.chosen.iter().map(|(decision, value)| (*decision, value))
    }

    /// The chosen alternative.
    #[must_use]
    pub fn one<A: Alternative>(&self, decision: Decision) -> Option<A> {
        match self.value(decision)? {
            Value::One(place) => A::ALL.get(usize::from(*place)).copied(),
            _ => None,
        }
    }

    /// The chosen alternatives.
    #[must_use]
    pub fn many<A: Alternative>(&self, decision: Decision) -> Option<Several<A>> {
        match self.value(decision)? {
            Value::Many(bits) => Some(Several::from_bits(*bits)),
            _ => None,
        }
    }

    /// The chosen count.
    #[must_use]
    pub fn number(&self, decision: Decision) -> Option<i32> {
        match self.value(decision)? {
            Value::Number(count) => Some(*count),
            _ => None,
        }
    }

    /// The chosen outline.
    #[must_use]
    pub fn outline(&self, decision: Decision) -> Option<&Outline> {
        match self.value(decision)? {
            Value::Outline(outline) => Some(outline),
            _ => None,
        }
    }

    /// What is asked in this step and has no answer yet.
    #[must_use]
    pub fn undecided(&self, step: Step, case: &Case) -> Vec<Decision> {
        if !flow::has_step(step, self) {
            return Vec::new();
        }
        Decision::ALL
            .iter()
            .filter(|entry| entry.step == step)
            .map(|entry| entry.decision)
            .filter(|decision| {
                self.value(*decision).is_none() && flow::is_asked_there(*decision, self, case)
            })
            .collect()
    }
}

impl Value {
    /// The value for an alternative.
    #[must_use]
    pub fn one<A: Alternative>(alternative: A) -> Self {
        // Lists have at most 32 alternatives, which a test holds.
        Self::One(u8::try_from(alternative.index()).unwrap_or(u8::MAX))
    }

    /// The value for several alternatives.
    #[must_use]
    pub fn many<A: Alternative>(alternatives: &[A]) -> Self {
        Self::Many(Several::of(alternatives).bits())
    }

    /// The value for the alternative with this key, checked against the decision.
    ///
    /// # Errors
    /// [`Refusal::NoSuchAlternative`] or [`Refusal::WrongKind`].
    pub fn from_key(decision: Decision, key: &str) -> Result<Self, Refusal> {
        let Kind::One(options) = decision.entry().kind else {
            return Err(Refusal::WrongKind { decision });
        };
        place(options, key)
            .map(|place| Self::One(u8::try_from(place).unwrap_or(u8::MAX)))
            .ok_or_else(|| Refusal::NoSuchAlternative { decision, found: key.to_owned() })
    }

    /// The value for alternatives with these keys, checked against the decision. That nothing is done
    /// today is no act beside others but the empty list; files may still call it *nothing*.
    ///
    /// # Errors
    /// [`Refusal::NoSuchAlternative`] or [`Refusal::WrongKind`].
    pub fn from_keys(decision: Decision, keys: &[&str]) -> Result<Self, Refusal> {
        let Kind::Many(options) = decision.entry().kind else {
            return Err(Refusal::WrongKind { decision });
        };
        if decision == Decision::Today && keys == ["nothing"] {
            return Ok(Self::Many(0));
        }
        let mut bits = 0;
        for key in keys {
            let place = place(options, key)
                .ok_or_else(|| Refusal::NoSuchAlternative { decision, found: (*key).to_owned() })?;
            bits |= 1 << place;
        }
        Ok(Self::Many(bits))
    }
}

fn place(options: &[Choice], key: &str) -> Option<usize> {
    options.iter().position(|option| option.key == key)
}
