//! A sitting as statements of the Experience API, version 1.0.3.
//!
//! Verbs are those of the ADL vocabulary. Activities and extensions stand under a base that the caller
//! passes, and are named for good:
//!
//! - `BASE/set/SET`: the set (a module); `completed` once every case is at its end, then `passed` or
//!   `failed` where there is a mark to reach.
//! - `BASE/set/SET/case/CASE`: a case (a simulation); `attempted` once it is begun, `completed` with its
//!   mark once it is at its end.
//! - `BASE/set/SET/case/CASE/step/STEP`: a step of a case that is at its end (an interaction, *choice*);
//!   `answered` with the worst word that counts, *success* unless that word is a fault.
//! - `BASE/extension/...`: `faults` and `unsafe-acts` (ids of rules), `rule-set`, `set-hash`,
//!   `case-address`.
//!
//! A statement's id is made from what it says: handing the same in twice says it once. The actor is an
//! account by the learner's code, never a name or a mail address.

use super::outcome::{CaseOutcome, Outcome, StepOutcome, Success, Unsayable, ZONES};
use super::time::{duration, stamp};
use engine::hash::Fnv;
use serde_json::{Map, Value, json};

const VERBS: &str = "http://adlnet.gov/expapi/verbs";
const KINDS: &str = "http://adlnet.gov/expapi/activities";

/// What a statement says that no outcome knows.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Speaker<'a> {
    /// Under which address activities and extensions are named, without a slash at its end.
    pub base: &'a str,
    /// Whose codes the learner's is: the home page of its account.
    pub home: &'a str,
    /// The registration that the statements belong to, a UUID.
    pub registration: &'a str,
    /// The language of titles, such as *en-GB*.
    pub language: &'a str,
    /// Milliseconds since 1970 in universal time, for what has no time of its own.
    pub now: u64,
}

/// All statements in the order in which things happened.
///
/// # Errors
/// [`Unsayable`] with the first part that no statement can hold.
pub fn statements(outcome: &Outcome, speaker: &Speaker<'_>) -> Result<Vec<Value>, Unsayable> {
    outcome.check()?;
    speaker.check()?;
    let mut all = Vec::new();
    for case in outcome.cases.iter().filter(|case| case.is_begun()) {
        let of = About { outcome, speaker, case: Some(case) };
        of.case_told(case, &mut all);
    }
    About { outcome, speaker, case: None }.set_told(&mut all);
    // A stable sort: what happened at one time stays as it was told.
    all.sort_by_key(|(at, _)| *at);
    Ok(all.into_iter().map(|(_, statement)| statement).collect())
}

/// Statements as a file of them.
///
/// # Errors
/// As [`statements`].
pub fn file(outcome: &Outcome, speaker: &Speaker<'_>) -> Result<String, Unsayable> {
    file_of(core::slice::from_ref(outcome), speaker)
}

/// The same of several sets, one after the other.
///
/// # Errors
/// As [`statements`].
pub fn file_of(outcomes: &[Outcome], speaker: &Speaker<'_>) -> Result<String, Unsayable> {
    let mut lines = Vec::new();
    for outcome in outcomes {
        lines.extend(statements(outcome, speaker)?.iter().map(Value::to_string));
    }
    Ok(format!("[\n{}\n]\n", lines.join(",\n")))
}

impl Speaker<'_> {
    fn check(&self) -> Result<(), Unsayable> {
        let wrong = |part, found: &str, expected| {
            Err(Unsayable { part, found: found.to_owned(), expected })
        };
        for (part, address) in [("the base", self.base), ("the home page", self.home)] {
            if !is_address(address) || address.ends_with('/') {
                return wrong(
                    part,
                    address,
                    "an address such as https://example.org/room, no slash at its end",
                );
            }
        }
        if !is_uuid(self.registration) {
            return wrong("the registration", self.registration, "a UUID in small letters");
        }
        let part = |part: &str| {
            (1..=8).contains(&part.len()) && part.bytes().all(|byte| byte.is_ascii_alphanumeric())
        };
        let first = self.language.split('-').next().unwrap_or_default();
        let begins =
            (2..=3).contains(&first.len()) && first.bytes().all(|byte| byte.is_ascii_alphabetic());
        if !begins || !self.language.split('-').all(part) {
            return wrong("the language", self.language, "a language such as en or en-GB");
        }
        Ok(())
    }
}

/// An absolute address of plain letters.
fn is_address(text: &str) -> bool {
    let rest = text.strip_prefix("https://").or_else(|| text.strip_prefix("http://"));
    let fits = |byte: u8| byte.is_ascii_alphanumeric() || b"-._~:/%@".contains(&byte);
    rest.is_some_and(|rest| {
        rest.bytes().next().is_some_and(|byte| byte.is_ascii_alphanumeric())
            && rest.bytes().all(fits)
            && rest.len() <= 1000
    })
}

fn is_uuid(text: &str) -> bool {
    let fits = |(place, byte): (usize, u8)| match place {
        8 | 13 | 18 | 23 => byte == b'-',
        14 => (b'1'..=b'5').contains(&byte),
        19 => b"89ab".contains(&byte),
        _ => byte.is_ascii_digit() || (b'a'..=b'f').contains(&byte),
    };
    text.len() == 36 && text.bytes().enumerate().all(fits)
}

type Told = Vec<(u64, Value)>;

/// Who says what about which case, or about the whole set.
#[derive(Clone, Copy)]
struct About<'a> {
    outcome: &'a Outcome,
    speaker: &'a Speaker<'a>,
    case: Option<&'a CaseOutcome>,
}

impl About<'_> {
    fn case_told(&self, case: &CaseOutcome, all: &mut Told) {
        let id = self.case_id(case);
        let object =
            self.activity(&id, "simulation", &format!("{}: {}", self.outcome.title, case.name));
        let begun = case.begun.or_else(|| case.steps.first()?.at);
        all.push(self.statement("attempted", object.clone(), None, begun));
        if !case.is_over {
            return;
        }
        for step in &case.steps {
            let result = self.step_result(case, step);
            all.push(self.statement("answered", self.step(&id, step), Some(result), step.at));
        }
        let mut result = json!({ "completion": true, "duration": duration(case.spent) });
        self.extend(&mut result, "faults", json!(rules(case)));
        self.extend(&mut result, "unsafe-acts", json!(case.hurts));
        scored(&mut result, case.mark);
        all.push(self.statement("completed", object, Some(result), case.ended));
    }

    fn set_told(&self, all: &mut Told) {
        let Outcome { cases, total, .. } = self.outcome;
        if !self.outcome.is_complete() {
            return;
        }
        let object = self.activity(&self.set_id(), "module", &self.outcome.title);
        let ended = cases.iter().filter_map(|case| case.ended).max();
        let mut result = json!({ "completion": true, "duration": duration(*total) });
        scored(&mut result, self.outcome.mark());
        all.push(self.statement("completed", object.clone(), Some(result.clone()), ended));
        let verb = match self.outcome.success() {
            Success::Unknown => return,
            Success::Passed => "passed",
            Success::Failed => "failed",
        };
        let hurts: Vec<&str> = cases.iter().flat_map(|case| case.hurts.iter().copied()).collect();
        self.extend(&mut result, "unsafe-acts", json!(hurts));
        put(&mut result, "success", json!(verb == "passed"));
        all.push(self.statement(verb, object, Some(result), ended));
    }

    fn set_id(&self) -> String {
        format!("{}/set/{}", self.speaker.base, self.outcome.set)
    }

    fn case_id(&self, case: &CaseOutcome) -> String {
        format!("{}/case/{}", self.set_id(), case.name)
    }

    /// A text in the language of the statements.
    fn said(&self, text: &str) -> Value {
        let mut map = Map::new();
        map.insert(self.speaker.language.to_owned(), json!(text));
        Value::Object(map)
    }

    fn activity(&self, id: &str, kind: &str, name: &str) -> Value {
        json!({
            "objectType": "Activity",
            "id": id,
            "definition": { "type": format!("{KINDS}/{kind}"), "name": self.said(name) },
        })
    }

    fn step(&self, case: &str, step: &StepOutcome) -> Value {
        let id = format!("{case}/step/{}", step.step.key());
        let mut object = self.activity(&id, "cmi.interaction", step.step.label());
        let choices: Vec<Value> = ZONES
            .iter()
            .map(|zone| json!({ "id": zone.key(), "description": self.said(zone.word()) }))
            .collect();
        let right: Vec<&str> =
            ZONES.iter().filter(|zone| !zone.is_fault()).map(|zone| zone.key()).collect();
        if let Some(definition) = object.get_mut("definition") {
            put(definition, "interactionType", json!("choice"));
            put(definition, "choices", json!(choices));
            put(definition, "correctResponsesPattern", json!(right));
        }
        object
    }

    fn step_result(&self, case: &CaseOutcome, step: &StepOutcome) -> Value {
        let mut result = json!({});
        if let Some(worst) = step.counts.worst() {
            put(&mut result, "response", json!(worst.key()));
            put(&mut result, "success", json!(!worst.is_fault()));
        }
        if step.spent > 0 {
            put(&mut result, "duration", json!(duration(step.spent)));
        }
        let faults = case.faults.iter().filter(|fault| fault.step == step.step);
        let faults: Vec<&str> = faults.map(|fault| fault.rule).collect();
        self.extend(&mut result, "faults", json!(faults));
        result
    }

    fn extend(&self, value: &mut Value, name: &str, by: Value) {
        let key = format!("{}/extension/{name}", self.speaker.base);
        match value.get_mut("extensions").and_then(Value::as_object_mut) {
            Some(extensions) => drop(extensions.insert(key, by)),
            None => {
                let mut extensions = Map::new();
                extensions.insert(key, by);
                put(value, "extensions", Value::Object(extensions));
            }
        }
    }

    fn context(&self) -> Value {
        let outcome = self.outcome;
        let mut activities = json!({ "grouping": [{ "id": self.set_id() }] });
        let mut context = json!({
            "registration": self.speaker.registration,
            "language": self.speaker.language,
        });
        self.extend(&mut context, "rule-set", json!(outcome.rule_set));
        self.extend(&mut context, "set-hash", json!(outcome.hash));
        if let Some(case) = self.case {
            put(&mut activities, "parent", json!([{ "id": self.case_id(case) }]));
            self.extend(&mut context, "case-address", json!(case.address));
        }
        put(&mut context, "contextActivities", activities);
        context
    }

    fn statement(
        &self,
        verb: &str,
        object: Value,
        result: Option<Value>,
        at: Option<u64>,
    ) -> (u64, Value) {
        let at = at.unwrap_or(self.speaker.now);
        let account = json!({ "homePage": self.speaker.home, "name": self.outcome.learner });
        let mut statement = json!({
            "version": "1.0.3",
            "actor": { "objectType": "Agent", "account": account },
            "verb": { "id": format!("{VERBS}/{verb}"), "display": { "en": verb } },
            "object": object,
            "context": self.context(),
            "timestamp": stamp(at),
        });
        if let Some(result) = result {
            put(&mut statement, "result", result);
        }
        let id = uuid_of(&statement.to_string());
        put(&mut statement, "id", json!(id));
        (at, statement)
    }
}

fn rules(case: &CaseOutcome) -> Vec<&'static str> {
    case.faults.iter().map(|fault| fault.rule).collect()
}

fn scored(result: &mut Value, mark: Option<f64>) {
    let Some(mark) = mark else { return };
    let to = |value: f64, parts: f64| libm::round(value * parts) / parts;
    let score =
        json!({ "scaled": to(mark / 100.0, 1e4), "raw": to(mark, 100.0), "min": 0, "max": 100 });
    put(result, "score", score);
}

fn put(value: &mut Value, key: &str, by: Value) {
    if let Some(map) = value.as_object_mut() {
        map.insert(key.to_owned(), by);
    }
}

/// A UUID of the form of version 4, its bits a hash of a text.
#[must_use]
pub fn uuid_of(text: &str) -> String {
    let [high, low] = ["high", "low"].map(|half| {
        let mut hash = Fnv::new();
        hash.text(half);
        hash.text(text);
        hash.value()
    });
    let high = (high & 0xFFFF_FFFF_FFFF_0FFF) | 0x4000;
    let low = (low & 0x3FFF_FFFF_FFFF_FFFF) | 0x8000_0000_0000_0000;
    let (high, low) = (format!("{high:016x}"), format!("{low:016x}"));
    format!("{}-{}-{}-{}-{}", &high[..8], &high[8..12], &high[12..], &low[..4], &low[4..])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handing::trial::outcome;

    const SPEAKER: Speaker<'_> = Speaker {
        base: "https://example.org/room",
        home: "https://example.org",
        registration: "6b8b4567-327b-43c6-a432-66334873f1a2",
        language: "en-GB",
        now: 1_795_529_039_000,
    };

    fn verbs(list: &[Value]) -> Vec<&str> {
        list.iter()
            .map(|one| one["verb"]["id"].as_str().unwrap().rsplit('/').next().unwrap())
            .collect()
    }

    #[test]
    fn a_finished_set_is_attempted_answered_completed_and_judged() {
        let mut told = outcome(2);
        told.cases.iter_mut().for_each(|case| (case.mark, case.hurts) = (Some(80.5), Vec::new()));
        let list = statements(&told, &SPEAKER).unwrap();
        let verbs = verbs(&list);
        let count = |verb: &str| verbs.iter().filter(|one| **one == verb).count();
        let steps = told.cases.iter().map(|case| case.steps.len()).sum();
        assert_eq!([count("attempted"), count("answered"), count("completed")], [2, steps, 3]);
        assert_eq!((verbs[0], *verbs.last().unwrap(), count("failed")), ("attempted", "passed", 0));
        let passed = list.last().unwrap();
        assert_eq!(
            passed["result"]["score"],
            json!({ "scaled": 0.805, "raw": 80.5, "min": 0, "max": 100 })
        );
        assert_eq!(passed["object"]["id"], "https://example.org/room/set/a-first-set");
        assert_eq!(passed["result"]["duration"], "PT2H0.01S");
        let times: Vec<&str> = list.iter().map(|one| one["timestamp"].as_str().unwrap()).collect();
        assert!(times.is_sorted());
        let [text, again] = [(); 2].map(|()| file(&told, &SPEAKER).unwrap());
        assert_eq!(text, again);
        assert_eq!(serde_json::from_str::<Vec<Value>>(&text).unwrap(), list);
    }

    #[test]
    fn ids_differ_with_what_is_said_and_have_the_form_of_a_uuid() {
        let list = statements(&outcome(3), &SPEAKER).unwrap();
        let mut ids: Vec<&str> = list.iter().map(|one| one["id"].as_str().unwrap()).collect();
        assert!(ids.iter().all(|id| is_uuid(id)));
        ids.sort_unstable();
        ids.dedup();
        assert_eq!(ids.len(), list.len());
    }

    #[test]
    fn an_unsafe_act_fails_the_set_and_an_open_case_is_only_attempted() {
        let mut told = outcome(2);
        told.cases[0].hurts = vec!["drilling-into-the-canal"];
        told.cases.iter_mut().for_each(|case| case.mark = Some(100.0));
        let failed = statements(&told, &SPEAKER).unwrap().pop().unwrap();
        assert_eq!(failed["verb"]["id"], "http://adlnet.gov/expapi/verbs/failed");
        assert_eq!(failed["result"]["success"], false);
        let acts =
            &failed["result"]["extensions"]["https://example.org/room/extension/unsafe-acts"];
        assert_eq!(acts[0], "drilling-into-the-canal");
        told.cases[1].is_over = false;
        told.cases[0] = CaseOutcome::untouched("case-1", "");
        let list = statements(&told, &SPEAKER).unwrap();
        assert_eq!(verbs(&list), ["attempted"]);
    }

    #[test]
    fn what_no_statement_can_hold_is_refused() {
        let told = outcome(1);
        for speaker in [
            Speaker { base: "example.org", ..SPEAKER },
            Speaker { base: "https://example.org/", ..SPEAKER },
            Speaker { base: "https://exa mple.org", ..SPEAKER },
            Speaker { home: "https://", ..SPEAKER },
            Speaker { registration: "6B8B4567-327B-43C6-A432-66334873F1A2", ..SPEAKER },
            Speaker { registration: "", ..SPEAKER },
            Speaker { language: "english", ..SPEAKER },
            Speaker { language: "en_GB", ..SPEAKER },
        ] {
            let says = statements(&told, &speaker).unwrap_err().to_string();
            assert!(says.contains("expected"), "{says}");
        }
        let named = Outcome { learner: "ada@example.org".to_owned(), ..told };
        assert!(statements(&named, &SPEAKER).is_err());
    }
}
