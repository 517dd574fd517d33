//! Attempts that were done again.

use engine::debrief::{CAUTION, RULE_SET};
use engine::session::{Mode, Session};
use learning::past::Past;
use schemars::JsonSchema;
use serde::Serialize;

/// Attempts of a file, done again on their cases.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Replayed {
    /// What stands beside every verdict.
    pub caution: &'static str,
    /// The rule set that they are judged by now.
    pub rule_set: &'static str,
    /// The attempts, in the order of the file.
    pub attempts: Vec<ReplayedAttempt>,
    /// What could not be read or done again, each with the reason.
    pub set_aside: Vec<String>,
}

/// One attempt.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct ReplayedAttempt {
    /// Its own name.
    pub id: String,
    /// Address of its case; `written out` where it has none.
    pub case: String,
    /// Tooth, two digits.
    pub tooth: u8,
    /// The set that gave the case; null where none did.
    pub set: Option<String>,
    /// `study` or `assessment`.
    #[schemars(extend("enum" = ["study", "assessment"]))]
    pub mode: &'static str,
    /// Which attempt at this case it was in the learner's browser.
    pub number: u32,
    /// What helped beside study mode.
    pub help: Vec<&'static str>,
    /// Whether it came to its end.
    pub finished: bool,
    /// The word for the plan so far.
    pub word: &'static str,
    /// What is outside or unsafe in it.
    pub faults: Vec<Fault>,
    /// The rule set that it was sat under.
    pub rule_set: String,
    /// Whether its verdicts are what they were then; null where they were never judged.
    pub as_it_was: Option<bool>,
    /// What the learner wrote about it.
    pub note: String,
}

/// A fault.
#[derive(Debug, Serialize, JsonSchema)]
#[serde(rename_all = "kebab-case")]
#[schemars(deny_unknown_fields)]
pub struct Fault {
    /// Id of the rule.
    pub rule: &'static str,
    /// The rule's word.
    pub word: &'static str,
    /// What the rule asks.
    pub statement: String,
}

impl Replayed {
    /// Of nothing yet but what could not be read.
    #[must_use]
    pub fn new(set_aside: Vec<String>) -> Self {
        Self { caution: CAUTION, rule_set: RULE_SET, attempts: Vec::new(), set_aside }
    }
}

impl ReplayedAttempt {
    /// From what it says, and its session.
    #[must_use]
    pub fn of(past: &Past, session: &Session, note: String) -> Self {
        let head = &past.head;
        let tooth = session.opened().site.tooth;
        let faults = past.observed.iter().filter(|one| one.is_fault()).map(|one| Fault {
            rule: one.rule.id,
            word: one.zone.word(),
            statement: tooth.named(one.rule.statement).into_owned(),
        });
        let case = head.address.map_or_else(|| "written out".to_owned(), |case| case.to_string());
        Self {
            id: head.id.clone(),
            case,
            tooth: tooth.iso(),
            set: head.set.clone(),
            mode: match head.mode {
                Mode::Study => "study",
                Mode::Assessment => "assessment",
            },
            number: head.number,
            help: head.help.iter().map(|help| help.words()).collect(),
            finished: session.is_over(),
            word: past.word.word(),
            faults: faults.collect(),
            rule_set: head.rule_set.clone(),
            as_it_was: past.is_judged_otherwise().map(|otherwise| !otherwise),
            note,
        }
    }
}
