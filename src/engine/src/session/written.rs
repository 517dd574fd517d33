//! An event as files hold it: keys, numbers in their units, outlines in millimetres.

use super::Exposure;
use crate::anatomy::Wall;
use core::fmt;
use serde::de::{self, Deserializer, SeqAccess, Visitor};
use serde::{Deserialize, Serialize};

/// An event as files hold it: keys, numbers in their units, outlines in millimetres.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(untagged)]
#[serde(try_from = "Fields")]
pub enum Written {
    /// `{"choose": "course", "value": "place-today"}`; no value takes the answer back.
    Choose {
        /// Key of the decision.
        choose: String,
        /// The answer.
        #[serde(skip_serializing_if = "Option::is_none")]
        value: Option<Plain>,
    },
    /// `{"carry-out": "chart"}`.
    CarryOut {
        /// Key of the step.
        #[serde(rename = "carry-out")]
        carry_out: String,
    },
    /// `{"expose": {"vertical": 5, "horizontal": 0, "lean": 0, "size": 2}}`.
    Expose {
        /// How it is aimed.
        expose: Exposure,
    },
    /// `{"sound": {"wall": "facial", "along": -1.2}}`, millimetres from the middle of the tooth, positive
    /// distally.
    Sound {
        /// Where.
        sound: WrittenSpot,
    },
    /// `{"note": "facial-defect-width", "read": 4.2}`; nothing read takes it back.
    Note {
        /// Key of the finding.
        note: String,
        /// Key of what was read, or millimetres.
        #[serde(skip_serializing_if = "Option::is_none")]
        read: Option<Plain>,
    },
    /// `{"dispute": "too-near-a-root", "reason": "..."}`; an empty reason takes it back.
    Dispute {
        /// Id of the rule.
        dispute: String,
        /// What the learner holds against its verdict.
        reason: String,
    },
    /// `{"sure": "flap", "percent": 75}`; no percent takes it back.
    Sure {
        /// Key of the step.
        sure: String,
        /// One of the five answers.
        #[serde(skip_serializing_if = "Option::is_none")]
        percent: Option<u8>,
    },
}

/// A place of the probe as files hold it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WrittenSpot {
    /// On which side.
    pub wall: Wall,
    /// Millimetres from the middle of the tooth, positive distally.
    pub along: f64,
}

/// An answer as files hold it.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Plain {
    /// Key of an alternative.
    Key(String),
    /// A number in the decision's unit.
    Number(f64),
    /// Keys of alternatives.
    Keys(Vec<String>),
    /// Vertices `[s, t]` in millimetres on the map.
    Outline(Vec<[f64; 2]>),
}

/// Everything that an event may say. Which of it is there says what it is; reading all of it in one
/// form tells what is wrong better than trying one form after the other, and weighs less in the page.
#[derive(Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
struct Fields {
    choose: Option<String>,
    value: Option<Plain>,
    carry_out: Option<String>,
    expose: Option<Exposure>,
    sound: Option<WrittenSpot>,
    note: Option<String>,
    read: Option<Plain>,
    dispute: Option<String>,
    reason: Option<String>,
    sure: Option<String>,
    percent: Option<u8>,
}

/// What the keys of an event are, for whoever left them out or mixed them.
const EXPECTED: &str = "expected one of choose (with value), carry-out, expose, sound, note (with read), dispute and reason, sure (with percent)";

impl TryFrom<Fields> for Written {
    type Error = &'static str;

    fn try_from(fields: Fields) -> Result<Self, Self::Error> {
        let Fields {
            choose,
            value,
            carry_out,
            expose,
            sound,
            note,
            read,
            dispute,
            reason,
            sure,
            percent,
        } = fields;
        let beside = [value.is_some(), read.is_some(), reason.is_some(), percent.is_some()];
        let (written, belongs) = match (choose, carry_out, expose, sound, note, dispute, sure) {
            (Some(choose), None, None, None, None, None, None) => {
                (Self::Choose { choose, value }, [true, false, false, false])
            }
            (None, Some(carry_out), None, None, None, None, None) => {
                (Self::CarryOut { carry_out }, [false; 4])
            }
            (None, None, Some(expose), None, None, None, None) => {
                (Self::Expose { expose }, [false; 4])
            }
            (None, None, None, Some(sound), None, None, None) => {
                (Self::Sound { sound }, [false; 4])
            }
            (None, None, None, None, Some(note), None, None) => {
                (Self::Note { note, read }, [false, true, false, false])
            }
            (None, None, None, None, None, Some(dispute), None) => {
                let reason = reason.ok_or(EXPECTED)?;
                (Self::Dispute { dispute, reason }, [false, false, true, false])
            }
            (None, None, None, None, None, None, Some(sure)) => {
                (Self::Sure { sure, percent }, [false, false, false, true])
            }
            _ => return Err(EXPECTED),
        };
        let stray = beside.iter().zip(belongs).any(|(there, may)| *there && !may);
        if stray { Err(EXPECTED) } else { Ok(written) }
    }
}

impl<'de> Deserialize<'de> for Plain {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(AnyPlain)
    }
}

struct AnyPlain;

impl<'de> Visitor<'de> for AnyPlain {
    type Value = Plain;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a key, a number, a list of keys or a list of vertices [s, t]")
    }

    fn visit_str<E: de::Error>(self, key: &str) -> Result<Plain, E> {
        Ok(Plain::Key(key.to_owned()))
    }

    fn visit_f64<E: de::Error>(self, number: f64) -> Result<Plain, E> {
        Ok(Plain::Number(number))
    }

    fn visit_i64<E: de::Error>(self, number: i64) -> Result<Plain, E> {
        self.whole(i32::try_from(number).ok())
    }

    fn visit_u64<E: de::Error>(self, number: u64) -> Result<Plain, E> {
        self.whole(i32::try_from(number).ok())
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut list: A) -> Result<Plain, A::Error> {
        let (mut keys, mut points) = (Vec::new(), Vec::new());
        while let Some(part) = list.next_element::<Part>()? {
            match part {
                Part::Key(key) => keys.push(key),
                Part::Vertex(at) => points.push(at),
            }
        }
        match (keys.is_empty(), points.is_empty()) {
            (false, false) => Err(de::Error::custom("found keys and vertices in one list")),
            (true, false) => Ok(Plain::Outline(points)),
            (_, true) => Ok(Plain::Keys(keys)),
        }
    }
}

impl AnyPlain {
    /// No decision is asked for a number beyond 2^31.
    fn whole<E: de::Error>(self, number: Option<i32>) -> Result<Plain, E> {
        let number =
            number.ok_or_else(|| E::custom("found a number far beyond any that is asked"))?;
        Ok(Plain::Number(f64::from(number)))
    }
}

/// What stands in a list.
enum Part {
    Key(String),
    Vertex([f64; 2]),
}

impl<'de> Deserialize<'de> for Part {
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(AnyPart)
    }
}

struct AnyPart;

impl<'de> Visitor<'de> for AnyPart {
    type Value = Part;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a key, or a vertex of two numbers")
    }

    fn visit_str<E: de::Error>(self, key: &str) -> Result<Part, E> {
        Ok(Part::Key(key.to_owned()))
    }

    fn visit_seq<A: SeqAccess<'de>>(self, mut pair: A) -> Result<Part, A::Error> {
        let wrong = |length| de::Error::invalid_length(length, &self);
        let s = pair.next_element()?.ok_or_else(|| wrong(0))?;
        let t = pair.next_element()?.ok_or_else(|| wrong(1))?;
        match pair.next_element::<f64>()? {
            Some(_) => Err(wrong(3)),
            None => Ok(Part::Vertex([s, t])),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<Written, String> {
        serde_json::from_str(text).map_err(|why| why.to_string())
    }

    #[test]
    fn an_answer_is_a_key_a_number_keys_or_vertices() {
        for (text, plain) in [
            (r#""wide""#, Plain::Key("wide".to_owned())),
            ("4", Plain::Number(4.0)),
            ("-4.5", Plain::Number(-4.5)),
            (r#"["a","b"]"#, Plain::Keys(vec!["a".to_owned(), "b".to_owned()])),
            ("[[1,2.5],[-3,4]]", Plain::Outline(vec![[1.0, 2.5], [-3.0, 4.0]])),
            ("[]", Plain::Keys(Vec::new())),
        ] {
            assert_eq!(serde_json::from_str::<Plain>(text).unwrap(), plain, "{text}");
        }
        for text in ["[[1]]", "[[1,2,3]]", r#"["a",[1,2]]"#, "{}", "true", "9999999999999"] {
            assert!(serde_json::from_str::<Plain>(text).is_err(), "{text}");
        }
    }

    #[test]
    fn an_event_says_one_thing_and_only_what_belongs_to_it() {
        for text in [
            r#"{"choose":"course"}"#,
            r#"{"note":"density-class"}"#,
            r#"{"sure":"flap","percent":75}"#,
            r#"{"dispute":"a-rule","reason":""}"#,
        ] {
            assert!(read(text).is_ok(), "{text}");
        }
        for text in [
            "{}",
            r#"{"value":3}"#,
            r#"{"choose":"course","carry-out":"flap"}"#,
            r#"{"carry-out":"flap","value":3}"#,
            r#"{"choose":"course","read":3}"#,
            r#"{"dispute":"a-rule"}"#,
        ] {
            assert!(read(text).unwrap_err().contains("expected one of choose"), "{text}");
        }
        assert!(read(r#"{"chose":"course"}"#).unwrap_err().contains("`chose`"));
    }
}
