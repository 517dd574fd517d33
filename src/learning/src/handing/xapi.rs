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
use engine::rules::Zone;

const VERBS: &str = "http://adlnet.gov/expapi/verbs";
const KINDS: &str = "http://adlnet.gov/expapi/activities";
/// The language that the room speaks.
const LANGUAGE: &str = "en-GB";
/// Under what activities are named where the room has no address of its own.
pub const NOWHERE: &str = "https://wallwise.invalid/room";

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

/// All statements in the order in which things happened, each as JSON.
///
/// # Errors
/// [`Unsayable`] with the first part that no statement can hold.
pub fn statements(outcome: &Outcome, speaker: &Speaker<'_>) -> Result<Vec<String>, Unsayable> {
    outcome.check()?;
    speaker.check()?;
    let mut all = Vec::new();
    for case in outcome.cases.iter().filter(|case| case.is_begun()) {
        let of = About { outcome, speaker, case: Some(case) };
        of.case_told(case, &mut all);
    }
    About { outcome, speaker, case: None }.set_told(&mut all);
    Ok(all.into_iter().map(|(_, statement)| statement).collect())
}

/// Statements about several sets as a file of them, one set after the other, in the names that the room
/// gives: accounts and activities stand under `base`, and each learner has a registration of their own.
/// `now` as in [`Speaker`].
///
/// # Errors
/// As [`statements`].
pub fn file(outcomes: &[Outcome], base: &str, now: u64) -> Result<String, Unsayable> {
    let mut lines = Vec::new();
    for outcome in outcomes {
        let registration = uuid_of(&format!("{base} {}", outcome.learner));
        let speaker =
            Speaker { base, home: base, registration: &registration, language: LANGUAGE, now };
        lines.extend(statements(outcome, &speaker)?);
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

/// Statements with their times, in that order.
type Told = Vec<(u64, String)>;

/// An object of JSON that is being written.
struct Object(String);

impl Object {
    const fn new() -> Self {
        Self(String::new())
    }

    /// Puts what is JSON already under a key.
    fn put(&mut self, key: &str, value: &str) {
        self.0.push(if self.0.is_empty() { '{' } else { ',' });
        self.0.push_str(&quoted(key));
        self.0.push(':');
        self.0.push_str(value);
    }

    fn text(&mut self, key: &str, text: &str) {
        self.put(key, &quoted(text));
    }

    fn done(mut self) -> String {
        self.0.push_str(if self.0.is_empty() { "{}" } else { "}" });
        self.0
    }
}

/// An object of texts.
fn texts(all: &[(&str, &str)]) -> Object {
    let mut object = Object::new();
    for (key, text) in all {
        object.text(key, text);
    }
    object
}

/// A text as JSON has it.
fn quoted(text: &str) -> String {
    serde_json::to_string(text).unwrap_or_default()
}

/// A list of what is JSON already.
fn listed(all: Vec<String>) -> String {
    format!("[{}]", all.join(","))
}

const fn truth(is: bool) -> &'static str {
    if is { "true" } else { "false" }
}

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
        let title = format!("{}: {}", self.outcome.title, case.name);
        let object = self.activity(&id, "simulation", &title, None);
        let begun = case.begun.or_else(|| case.steps.first()?.at);
        self.say(all, "attempted", &object, None, begun);
        if !case.is_over {
            return;
        }
        for step in &case.steps {
            let result = self.step_result(case, step);
            self.say(all, "answered", &self.step(&id, step), Some(&result), step.at);
        }
        let rules: Vec<&str> = case.faults.iter().map(|fault| fault.rule).collect();
        let more = [("faults", names(&rules)), ("unsafe-acts", names(&case.hurts))];
        let mut result = ended(case.spent, case.mark);
        result.put("extensions", &self.extensions(&more));
        self.say(all, "completed", &object, Some(&result.done()), case.ended);
    }

    fn set_told(&self, all: &mut Told) {
        let Outcome { cases, total, .. } = self.outcome;
        if !self.outcome.is_complete() {
            return;
        }
        let object = self.activity(&self.set_id(), "module", &self.outcome.title, None);
        let at = cases.iter().filter_map(|case| case.ended).max();
        let result = || ended(*total, self.outcome.mark());
        self.say(all, "completed", &object, Some(&result().done()), at);
        let verb = match self.outcome.success() {
            Success::Unknown => return,
            Success::Passed => "passed",
            Success::Failed => "failed",
        };
        let hurts: Vec<&str> = cases.iter().flat_map(|case| case.hurts.iter().copied()).collect();
        let mut result = result();
        result.put("extensions", &self.extensions(&[("unsafe-acts", names(&hurts))]));
        result.put("success", truth(verb == "passed"));
        self.say(all, verb, &object, Some(&result.done()), at);
    }

    fn set_id(&self) -> String {
        format!("{}/set/{}", self.speaker.base, self.outcome.set)
    }

    fn case_id(&self, case: &CaseOutcome) -> String {
        format!("{}/case/{}", self.set_id(), case.name)
    }

    /// A text in the language of the statements.
    fn said(&self, text: &str) -> String {
        texts(&[(self.speaker.language, text)]).done()
    }

    /// An activity; `choices`: between what, and which of them are right.
    fn activity(&self, id: &str, kind: &str, name: &str, choices: Option<[String; 2]>) -> String {
        let mut definition = texts(&[("type", &format!("{KINDS}/{kind}"))]);
        definition.put("name", &self.said(name));
        if let Some([choices, right]) = choices {
            definition.text("interactionType", "choice");
            definition.put("choices", &choices);
            definition.put("correctResponsesPattern", &right);
        }
        let mut object = texts(&[("objectType", "Activity"), ("id", id)]);
        object.put("definition", &definition.done());
        object.done()
    }

    fn step(&self, case: &str, step: &StepOutcome) -> String {
        let id = format!("{case}/step/{}", step.step.key());
        let choice = |zone: &Zone| {
            let mut choice = texts(&[("id", zone.key())]);
            choice.put("description", &self.said(zone.word()));
            choice.done()
        };
        let right = ZONES.iter().filter(|zone| !zone.is_fault()).map(|zone| zone.key());
        let right: Vec<&str> = right.collect();
        let choices = [listed(ZONES.iter().map(choice).collect()), names(&right)];
        self.activity(&id, "cmi.interaction", step.step.label(), Some(choices))
    }

    fn step_result(&self, case: &CaseOutcome, step: &StepOutcome) -> String {
        let mut result = Object::new();
        if let Some(worst) = step.counts.worst() {
            result.text("response", worst.key());
            result.put("success", truth(!worst.is_fault()));
        }
        if step.spent > 0 {
            result.text("duration", &duration(step.spent));
        }
        let faults = case.faults.iter().filter(|fault| fault.step == step.step);
        let faults: Vec<&str> = faults.map(|fault| fault.rule).collect();
        result.put("extensions", &self.extensions(&[("faults", names(&faults))]));
        result.done()
    }

    fn extensions(&self, all: &[(&str, String)]) -> String {
        let mut extensions = Object::new();
        for (name, value) in all {
            extensions.put(&format!("{}/extension/{name}", self.speaker.base), value);
        }
        extensions.done()
    }

    fn context(&self) -> String {
        let Outcome { rule_set, hash, .. } = self.outcome;
        let activity = |id: &str| listed(vec![texts(&[("id", id)]).done()]);
        let mut activities = Object::new();
        activities.put("grouping", &activity(&self.set_id()));
        let mut more = vec![("rule-set", quoted(rule_set)), ("set-hash", quoted(hash))];
        if let Some(case) = self.case {
            activities.put("parent", &activity(&self.case_id(case)));
            more.push(("case-address", quoted(&case.address)));
        }
        let Speaker { registration, language, .. } = self.speaker;
        let mut context = texts(&[("registration", registration), ("language", language)]);
        context.put("extensions", &self.extensions(&more));
        context.put("contextActivities", &activities.done());
        context.done()
    }

    /// Puts a statement where it belongs in time; what happened at one time stays as it was told.
    fn say(&self, all: &mut Told, verb: &str, object: &str, result: Option<&str>, at: Option<u64>) {
        let at = at.unwrap_or(self.speaker.now);
        let account = [("homePage", self.speaker.home), ("name", &self.outcome.learner)];
        let mut actor = texts(&[("objectType", "Agent")]);
        actor.put("account", &texts(&account).done());
        let mut says = texts(&[("id", &format!("{VERBS}/{verb}"))]);
        says.put("display", &texts(&[("en", verb)]).done());
        let mut statement = texts(&[("version", "1.0.3"), ("timestamp", &stamp(at))]);
        statement.put("actor", &actor.done());
        statement.put("verb", &says.done());
        statement.put("object", object);
        statement.put("context", &self.context());
        if let Some(result) = result {
            statement.put("result", result);
        }
        let id = uuid_of(&statement.0);
        statement.text("id", &id);
        let place = all.partition_point(|(other, _)| *other <= at);
        all.insert(place, (at, statement.done()));
    }
}

/// A list of names.
fn names(all: &[&str]) -> String {
    listed(all.iter().map(|one| quoted(one)).collect())
}

/// The result of what came to its end, with its mark where it has one.
fn ended(spent: u64, mark: Option<f64>) -> Object {
    let mut result = texts(&[("duration", &duration(spent))]);
    result.put("completion", "true");
    if let Some(mark) = mark {
        let to = |value: f64, parts: f64| (libm::round(value * parts) / parts).to_string();
        let mut score = Object::new();
        score.put("scaled", &to(mark / 100.0, 1e4));
        score.put("raw", &to(mark, 100.0));
        score.put("min", "0");
        score.put("max", "100");
        result.put("score", &score.done());
    }
    result
}

/// A UUID of the form of version 4, its bits a hash of a text.
fn uuid_of(text: &str) -> String {
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
    use serde_json::{Value, json};

    const SPEAKER: Speaker<'_> = Speaker {
        base: "https://example.org/room",
        home: "https://example.org",
        registration: "6b8b4567-327b-43c6-a432-66334873f1a2",
        language: "en-GB",
        now: 1_795_529_039_000,
    };

    fn read(told: &Outcome) -> Vec<Value> {
        let list = statements(told, &SPEAKER).unwrap();
        list.iter().map(|one| serde_json::from_str(one).unwrap()).collect()
    }

    fn verbs(list: &[Value]) -> Vec<&str> {
        list.iter()
            .map(|one| one["verb"]["id"].as_str().unwrap().rsplit('/').next().unwrap())
            .collect()
    }

    #[test]
    fn a_finished_set_is_attempted_answered_completed_and_judged() {
        let mut told = outcome(2);
        told.cases.iter_mut().for_each(|case| (case.mark, case.hurts) = (Some(80.5), Vec::new()));
        let list = read(&told);
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
    }

    #[test]
    fn a_file_says_the_same_twice_and_gives_each_learner_a_registration() {
        let (one, base) = (outcome(1), "https://example.org/room");
        let other = Outcome { learner: "learner-8".to_owned(), ..one.clone() };
        let text = file(&[one.clone(), other.clone()], base, SPEAKER.now).unwrap();
        assert_eq!(text, file(&[one.clone(), other], base, SPEAKER.now).unwrap());
        let list: Vec<Value> = serde_json::from_str(&text).unwrap();
        assert_eq!(list.len(), 2 * read(&one).len());
        let registration = |one: &Value| one["context"]["registration"].as_str().map(str::to_owned);
        let (first, last) = (registration(&list[0]), registration(&list[list.len() - 1]));
        assert!(first.as_deref().is_some_and(is_uuid) && last.is_some() && first != last);
        assert!(file(&[one], "example.org", 0).is_err());
        assert!(file(&[], NOWHERE, 0).is_ok_and(|text| text == "[\n\n]\n"));
    }

    #[test]
    fn ids_differ_with_what_is_said_and_have_the_form_of_a_uuid() {
        let list = read(&outcome(3));
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
        let failed = read(&told).pop().unwrap();
        assert_eq!(failed["verb"]["id"], "http://adlnet.gov/expapi/verbs/failed");
        assert_eq!(failed["result"]["success"], false);
        let acts =
            &failed["result"]["extensions"]["https://example.org/room/extension/unsafe-acts"];
        assert_eq!(acts[0], "drilling-into-the-canal");
        told.cases[1].is_over = false;
        told.cases[0] = CaseOutcome::untouched("case-1", "");
        let list = read(&told);
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
