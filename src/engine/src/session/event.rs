//! What a learner does, and how it is written down.

use super::disputes::is_id;
use super::written::{Plain, Written, WrittenSpot};
use super::{Exposure, SURENESS, Spot};
use crate::chart::{Answers, Finding, Noted};
use crate::geometry::Outline;
use crate::plan::{Decision, Kind, Refusal, Step, Value};
use crate::units::Found;
use core::fmt;

/// One thing that a learner does. An attempt is the list of them.
#[derive(Debug, Clone, PartialEq)]
pub enum Event {
    /// Answers a decision, or takes the answer back.
    Choose(Decision, Option<Value>),
    /// Carries out a step.
    CarryOut(Step),
    /// Takes the last film once more, aimed so.
    Expose(Exposure),
    /// Sounds the bone at a place.
    Sound(Spot),
    /// Writes a finding down, or takes it back.
    Note(Finding, Option<Noted>),
    /// Holds a reason against the verdict of a rule, by its id; an empty one takes it back.
    Dispute(String, String),
    /// Says how sure it is of the step that is due, percent, or takes that back.
    Sure(Step, Option<u8>),
}

/// A written event that names nothing known.
#[derive(Debug, Clone, PartialEq)]
pub enum Unreadable {
    /// No decision has that key.
    NoSuchDecision(String),
    /// No step has that key.
    NoSuchStep(String),
    /// No finding has that key.
    NoSuchFinding(String),
    /// What was read is not in the finding's list or range.
    NoSuchReading(Finding),
    /// No rule can have that id.
    NoSuchRule(String),
    /// None of the five answers to how sure one is.
    NotSoSure(u8),
    /// A place of the probe that is no multiple of its step.
    NoSuchPlace(f64),
    /// The answer does not fit the decision.
    BadAnswer(Refusal),
    /// A number that is finite but no multiple of the decision's step, or not finite.
    NoSuchNumber {
        /// Which decision.
        decision: Decision,
        /// As it came.
        found: f64,
    },
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoSuchDecision(key) => {
                write!(f, "found the decision \"{key}\", which does not exist")
            }
            Self::NoSuchStep(key) => write!(f, "found the step \"{key}\", which does not exist"),
            Self::NoSuchFinding(key) => {
                let keys = Finding::ALL.map(Finding::key).join(", ");
                write!(f, "found the finding \"{key}\", expected one of {keys}")
            }
            Self::NoSuchReading(finding) => match finding.answers() {
                Answers::OneOf(list) => {
                    let keys: Vec<_> = list.iter().map(|(key, _)| *key).collect();
                    write!(f, "{}: expected one of {}", finding.key(), keys.join(", "))
                }
                Answers::UpTo(most) => write!(
                    f,
                    "{}: expected 0 to {:.1} mm in steps of 0.1",
                    finding.key(),
                    f64::from(most) / 10.0
                ),
            },
            Self::NoSuchRule(id) => write!(
                f,
                "dispute: found \"{id}\", expected the id of a rule: small letters, digits and hyphens"
            ),
            Self::NotSoSure(found) => {
                let all = SURENESS.map(|percent| percent.to_string()).join(", ");
                write!(f, "sure: found {found} percent, expected one of {all}")
            }
            Self::NoSuchPlace(found) => {
                write!(f, "sound: found {}, expected millimetres in steps of 0.1", Found(*found))
            }
            Self::BadAnswer(refusal) => refusal.fmt(f),
            Self::NoSuchNumber { decision, found } => {
                write!(f, "{}: found {}, expected ", decision.key(), Found(*found))?;
                if let Kind::Number(kind) = decision.entry().kind {
                    let (least, most) = (kind.words(kind.least), kind.words(kind.most));
                    write!(
                        f,
                        "{least} to {most} {} in steps of {}",
                        kind.unit,
                        kind.words(kind.by)
                    )?;
                }
                Ok(())
            }
        }
    }
}

impl core::error::Error for Unreadable {}

impl Plain {
    /// The answer as files hold it.
    #[must_use]
    pub fn of(decision: Decision, value: &Value) -> Self {
        let keys = |bits: u32| match decision.entry().kind {
            Kind::One(options) | Kind::Many(options) => options
                .iter()
                .enumerate()
                .filter(|(place, _)| bits & (1 << place) != 0)
                .map(|(_, option)| option.key.to_owned())
                .collect(),
            _ => Vec::new(),
        };
        match value {
            Value::One(place) => {
                Self::Key(keys(1 << u32::from(*place)).into_iter().next().unwrap_or_default())
            }
            Value::Many(bits) => Self::Keys(keys(*bits)),
            Value::Number(count) => match decision.entry().kind {
                Kind::Number(kind) => Self::Number(f64::from(*count) / f64::from(kind.per_unit)),
                _ => Self::Number(f64::from(*count)),
            },
            Value::Outline(outline) => {
                Self::Outline(outline.points().iter().map(|at| [at.x, at.y]).collect())
            }
        }
    }

    /// The answer for a decision.
    ///
    /// # Errors
    /// [`Unreadable`] where it does not fit.
    pub fn value(&self, decision: Decision) -> Result<Value, Unreadable> {
        match (self, decision.entry().kind) {
            (Self::Number(found), Kind::Number(kind)) => {
                let wrong = Unreadable::NoSuchNumber { decision, found: *found };
                let counts = *found * f64::from(kind.per_unit);
                let count = whole(counts).ok_or(wrong.clone())?;
                if kind.allows(count) { Ok(Value::Number(count)) } else { Err(wrong) }
            }
            (Self::Key(key), _) => Value::from_key(decision, key).map_err(Unreadable::BadAnswer),
            (Self::Keys(keys), _) => {
                let keys: Vec<&str> = keys.iter().map(String::as_str).collect();
                Value::from_keys(decision, &keys).map_err(Unreadable::BadAnswer)
            }
            // An empty list reads as an outline without vertices as well as a list without keys.
            (Self::Outline(points), Kind::Many(_)) if points.is_empty() => Ok(Value::Many(0)),
            (Self::Outline(points), Kind::Outline) => {
                let refuse = |fault| Unreadable::BadAnswer(Refusal::NoOutline { decision, fault });
                let mut tenths = Vec::with_capacity(points.len());
                for point in points.iter().take(Outline::MOST_VERTICES + 1) {
                    let [Some(s), Some(t)] = point.map(|part| whole(part * 10.0)) else {
                        let found =
                            point.iter().copied().find(|part| whole(*part * 10.0).is_none());
                        return Err(Unreadable::NoSuchNumber {
                            decision,
                            found: found.unwrap_or(f64::NAN),
                        });
                    };
                    tenths.push([s, t]);
                }
                Outline::new(tenths).map(Value::Outline).map_err(refuse)
            }
            _ => Err(Unreadable::BadAnswer(Refusal::WrongKind { decision })),
        }
    }
}

/// What was read, as files hold it.
fn read_of(finding: Finding, noted: Noted) -> Plain {
    match finding.answers() {
        Answers::OneOf(list) => {
            let key = list.get(usize::from(noted)).map_or("", |(key, _)| *key);
            Plain::Key(key.to_owned())
        }
        Answers::UpTo(_) => Plain::Number(f64::from(noted) / 10.0),
    }
}

fn noted_of(finding: Finding, read: &Plain) -> Option<Noted> {
    let noted = match (finding.answers(), read) {
        (Answers::OneOf(list), Plain::Key(key)) => list.iter().position(|(one, _)| one == key)?,
        (Answers::UpTo(_), Plain::Number(mm)) => usize::try_from(whole(*mm * 10.0)?).ok()?,
        _ => return None,
    };
    Noted::try_from(noted).ok().filter(|noted| finding.allows(*noted))
}

/// The whole number that this is, if it is one (to a millionth) and fits.
fn whole(value: f64) -> Option<i32> {
    let near = libm::round(value);
    let fits = near.abs() <= 1e6 && (value - near).abs() < 1e-6;
    // In range by the check above, so the cast is exact.
    #[expect(clippy::cast_possible_truncation, reason = "checked to be small and whole")]
    fits.then_some(near as i32)
}

fn step_of(key: &str) -> Result<Step, Unreadable> {
    Step::from_key(key).ok_or_else(|| Unreadable::NoSuchStep(key.chars().take(60).collect()))
}

impl Event {
    /// As files hold it.
    #[must_use]
    pub fn written(&self) -> Written {
        match self {
            Self::Choose(decision, value) => Written::Choose {
                choose: decision.key().to_owned(),
                value: value.as_ref().map(|value| Plain::of(*decision, value)),
            },
            Self::CarryOut(step) => Written::CarryOut { carry_out: step.key().to_owned() },
            Self::Expose(expose) => Written::Expose { expose: *expose },
            Self::Sound(spot) => Written::Sound {
                sound: WrittenSpot { wall: spot.wall, along: f64::from(spot.tenths) / 10.0 },
            },
            Self::Note(finding, noted) => Written::Note {
                note: finding.key().to_owned(),
                read: noted.map(|noted| read_of(*finding, noted)),
            },
            Self::Dispute(dispute, reason) => {
                Written::Dispute { dispute: dispute.clone(), reason: reason.clone() }
            }
            Self::Sure(step, percent) => {
                Written::Sure { sure: step.key().to_owned(), percent: *percent }
            }
        }
    }
}

impl TryFrom<&Written> for Event {
    type Error = Unreadable;

    fn try_from(written: &Written) -> Result<Self, Unreadable> {
        match written {
            Written::Choose { choose, value } => {
                let decision = Decision::from_key(choose)
                    .ok_or_else(|| Unreadable::NoSuchDecision(choose.chars().take(60).collect()))?;
                let value = value.as_ref().map(|value| value.value(decision)).transpose()?;
                Ok(Self::Choose(decision, value))
            }
            Written::CarryOut { carry_out } => step_of(carry_out).map(Self::CarryOut),
            Written::Sure { sure, percent } => match percent {
                Some(percent) if !SURENESS.contains(percent) => {
                    Err(Unreadable::NotSoSure(*percent))
                }
                percent => Ok(Self::Sure(step_of(sure)?, *percent)),
            },
            Written::Expose { expose } => Ok(Self::Expose(*expose)),
            Written::Sound { sound } => {
                let tenths = whole(sound.along * 10.0).and_then(|tenths| i8::try_from(tenths).ok());
                let tenths = tenths.ok_or(Unreadable::NoSuchPlace(sound.along))?;
                Ok(Self::Sound(Spot { wall: sound.wall, tenths }))
            }
            Written::Note { note, read } => {
                let shortened = || note.chars().take(60).collect();
                let finding = Finding::from_key(note)
                    .ok_or_else(|| Unreadable::NoSuchFinding(shortened()))?;
                let noted = read
                    .as_ref()
                    .map(|read| noted_of(finding, read).ok_or(Unreadable::NoSuchReading(finding)));
                Ok(Self::Note(finding, noted.transpose()?))
            }
            Written::Dispute { dispute, reason } if is_id(dispute) => {
                Ok(Self::Dispute(dispute.clone(), reason.clone()))
            }
            Written::Dispute { dispute, .. } => {
                Err(Unreadable::NoSuchRule(dispute.chars().take(60).collect()))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::anatomy::Wall;
    use crate::rules::trial::Trial;

    #[test]
    fn every_answer_reads_back_as_it_was_written() {
        let mut trial = Trial::plain();
        trial.outline(Decision::FlapOutline, &[[-40, -5], [40, -5], [50, 90], [-50, 90]]);
        for (decision, value) in trial.draft.iter() {
            let event = Event::Choose(decision, Some(value.clone()));
            let text = serde_json::to_string(&event.written()).unwrap();
            let back: Written = serde_json::from_str(&text).unwrap();
            assert_eq!(Event::try_from(&back), Ok(event), "{text}");
        }
        for step in Step::ALL {
            let event = Event::CarryOut(*step);
            assert_eq!(Event::try_from(&event.written()), Ok(event));
        }
        let event = Event::Expose(Exposure { vertical: -7, lean: 20, ..Exposure::PARALLEL });
        let text = serde_json::to_string(&event.written()).unwrap();
        assert_eq!(text, r#"{"expose":{"vertical":-7,"horizontal":0,"lean":20,"size":2}}"#);
        let back: Written = serde_json::from_str(&text).unwrap();
        assert_eq!(Event::try_from(&back), Ok(event));
        let event = Event::Sound(Spot { wall: Wall::Oral, tenths: -12 });
        let text = serde_json::to_string(&event.written()).unwrap();
        assert_eq!(text, r#"{"sound":{"wall":"oral","along":-1.2}}"#);
        let back: Written = serde_json::from_str(&text).unwrap();
        assert_eq!(Event::try_from(&back), Ok(event));
        let between: Written = serde_json::from_str(&text.replace("1.2", "1.25")).unwrap();
        assert_eq!(Event::try_from(&between), Err(Unreadable::NoSuchPlace(-1.25)));
    }

    #[test]
    fn nothing_today_is_the_empty_list_and_stands_beside_no_act() {
        let read = |value: &str| {
            let text = format!(r#"{{"choose":"today","value":{value}}}"#);
            Event::try_from(&serde_json::from_str::<Written>(&text).unwrap())
        };
        let none = Event::Choose(Decision::Today, Some(Value::Many(0)));
        assert_eq!(read("[]"), Ok(none.clone()));
        assert_eq!(read(r#"["nothing"]"#), Ok(none));
        assert!(read(r#"["drain","nothing"]"#).unwrap_err().to_string().contains("relieve-pain"));
    }

    #[test]
    fn what_was_read_is_written_in_words_and_millimetres_and_reads_back() {
        let cases = [
            (
                Event::Note(Finding::FacialDefect, Some(3)),
                r#"{"note":"facial-wall","read":"fenestration"}"#,
            ),
            (Event::Note(Finding::LesionWidth, Some(42)), r#"{"note":"lesion-width","read":4.2}"#),
            (Event::Note(Finding::Density, None), r#"{"note":"density-class"}"#),
        ];
        for (event, text) in cases {
            assert_eq!(serde_json::to_string(&event.written()).unwrap(), text);
            assert_eq!(Event::try_from(&serde_json::from_str::<Written>(text).unwrap()), Ok(event));
        }
        for (text, says) in [
            (r#"{"note":"lesion-width","read":15.1}"#, "0 to 15.0 mm"),
            (r#"{"note":"lesion-width","read":4.25}"#, "steps of 0.1"),
            (r#"{"note":"facial-wall","read":"gone"}"#, "lost-wall"),
            (r#"{"note":"colour","read":"red"}"#, "facial-wall"),
            (r#"{"dispute":"No Rule","reason":"so"}"#, "small letters"),
        ] {
            let written: Written = serde_json::from_str(text).unwrap();
            assert!(Event::try_from(&written).unwrap_err().to_string().contains(says), "{text}");
        }
    }

    #[test]
    fn what_cannot_be_read_says_what_was_expected() {
        let read = |text: &str| {
            let written: Written = serde_json::from_str(text).unwrap();
            Event::try_from(&written).unwrap_err().to_string()
        };
        assert!(read(r#"{"choose":"corse","value":"x"}"#).contains("corse"));
        assert!(read(r#"{"choose":"diameter","value":4.03}"#).contains("3.0 to 6.0 mm"));
        assert!(read(r#"{"choose":"diameter","value":"wide"}"#).contains("expected a number"));
        assert!(read(r#"{"choose":"course","value":"wait"}"#).contains("keep-tooth"));
        assert!(
            read(r#"{"choose":"flap-outline","value":[[0,0],[1,1],[1,0],[0,1]]}"#)
                .contains("crosses")
        );
        assert!(read(r#"{"carry-out":"lunch"}"#).contains("lunch"));
    }
}
