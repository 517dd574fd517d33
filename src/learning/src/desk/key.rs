//! The key: what an instructor holds in the hand while a class works on a case. What the case hides, one
//! sound plan, the usual faults, what to ask. Values and words; tool and page set them out.

use crate::class::alternative;
use engine::anatomy::Tooth;
use engine::cases::{self, Slip, usual};
use engine::chart::{Address, Case};
use engine::plan::{Decision, Draft, Step, Value};
use engine::rules::{Rule, Zone};
use engine::search::answer_words;
use engine::session::{all_reports, history_lines};

/// What stands over every key.
pub const NOT_FOR_LEARNERS: &str = "Not for learners: it tells what each case hides.";
/// What stands over the usual faults.
pub const FAULTS: &str = "Usual faults: one answer off the sound plan, the gravest first";
/// What stands over the sound plan.
pub const SOUND: &str = "One sound plan";
/// What stands where there is none.
pub const NO_PLAN: &str = "No sound plan is known for this case.";
/// What to ask where the set says nothing.
const ASK: &str = "What would have to be different for you to choose otherwise?";
/// So many faults of a case are told.
const MOST: usize = 12;

/// What a case hides, and one plan that every rule calls sound.
#[derive(Debug, Clone, PartialEq)]
pub struct Truth {
    /// Its title, which learners see.
    pub title: String,
    /// Where it comes from; nothing where it was written out.
    pub address: Option<Address>,
    /// How hard it is, in one sentence; nothing where no sound plan is known.
    pub hard: Option<String>,
    /// The chart, and everything that asking, examining and probing would report: lines under titles.
    pub told: Vec<(String, Vec<String>)>,
    /// The sound plan; nothing where none is known.
    pub sound: Option<Draft>,
}

impl Truth {
    /// Of a case whose sound plan this is.
    #[must_use]
    pub fn of(case: &Case, sound: Option<Draft>) -> Self {
        let hard = sound.as_ref().and_then(|sound| cases::difficulty(case, sound));
        let mut told = vec![("The chart, unasked".to_owned(), history_lines(case))];
        told.extend(all_reports(case).into_iter().map(|report| (report.title, report.lines)));
        Self {
            title: case.title.clone(),
            address: case.address,
            hard: hard.map(|hard| hard.words()),
            told,
            sound,
        }
    }
}

/// One answer off the sound plan, and what it breaks.
#[derive(Debug, Clone, PartialEq)]
pub struct Fault {
    /// The decision and the answer: *Membrane: none*.
    pub answer: String,
    /// Its word.
    pub zone: Zone,
    /// The rule that speaks.
    pub rule: &'static Rule,
    tooth: Tooth,
}

impl Fault {
    /// The verdict's word, and what the rule asks: its statement, which the page has from elsewhere.
    #[must_use]
    pub fn verdict(&self, statement: &str) -> String {
        format!("{}: {}", self.zone.word(), self.tooth.named(statement))
    }
}

/// The key of one case.
#[derive(Debug, Clone, PartialEq)]
pub struct Key {
    /// What it hides.
    pub truth: Truth,
    /// The sound plan in words, under the steps that decide something: each decision with its answer.
    pub plan: Vec<(Step, Vec<String>)>,
    /// The usual faults, the gravest first.
    pub faults: Vec<Fault>,
}

impl Key {
    /// Of a case.
    #[must_use]
    pub fn of(case: &Case) -> Self {
        let sound = cases::proof(case).map(|proof| proof.draft);
        let (plan, faults) = sound.as_ref().map_or_else(Default::default, |sound| {
            let slips = cases::slips(case, sound);
            let usual = usual(&slips).into_iter().take(MOST);
            (plan(case, sound), usual.map(|slip| fault(slip, sound, case)).collect())
        });
        Self { truth: Truth::of(case, sound), plan, faults }
    }

    /// Of the case of an address.
    ///
    /// # Errors
    /// Why it gives none.
    pub fn at(address: Address) -> Result<Self, cases::NoCase> {
        cases::at(address).map(|case| Self::of(&case))
    }
}

/// What to ask after a case of which the set says this; nothing, or nothing but blanks, asks what is asked
/// of any case.
#[must_use]
pub fn asked(ask: Option<&str>) -> &str {
    ask.filter(|ask| !ask.trim().is_empty()).unwrap_or(ASK)
}

fn plan(case: &Case, sound: &Draft) -> Vec<(Step, Vec<String>)> {
    let tooth = case.site.tooth;
    let of = |step: &Step| {
        let here = Decision::ALL.iter().filter(|entry| entry.step == *step);
        let lines: Vec<String> = here
            .filter_map(|entry| {
                let answer = answer_words(entry.decision, sound.value(entry.decision)?, tooth);
                Some(format!("{}: {}", tooth.named(entry.label), answer.trim_end()))
            })
            .collect();
        (*step, lines)
    };
    Step::ALL.iter().map(of).filter(|(_, lines)| !lines.is_empty()).collect()
}

fn fault(slip: &Slip, sound: &Draft, case: &Case) -> Fault {
    let tooth = case.site.tooth;
    let label = tooth.named(slip.decision.entry().label);
    let answer = match (sound.value(slip.decision), &slip.value) {
        (Some(Value::Many(was)), Value::Many(is)) => turned(slip.decision, *was, *is),
        _ => answer_words(slip.decision, &slip.value, tooth).trim_end().to_owned(),
    };
    Fault {
        answer: format!("{label}: {}", tooth.named(&answer)),
        zone: slip.zone,
        rule: slip.rule,
        tooth,
    }
}

/// Which boxes of a list are ticked otherwise.
fn turned(decision: Decision, was: u32, is: u32) -> String {
    let named = |bits: u32| {
        let places = (0..32_u8).filter(|place| bits >> place & 1 == 1);
        places.map(|place| alternative(decision, place)).collect::<Vec<_>>().join(", ")
    };
    let parts = [("without", was & !is), ("with", is & !was)];
    let parts = parts.into_iter().filter(|(_, bits)| *bits != 0);
    parts.map(|(word, bits)| format!("{word} {}", named(bits))).collect::<Vec<_>>().join(", ")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_key_tells_every_answer_of_the_sound_plan_and_no_more_faults_than_can_be_read() {
        let key = Key::at("1.1.2024.2591".parse().unwrap()).unwrap();
        let sound = key.truth.sound.unwrap();
        let told: usize = key.plan.iter().map(|(_, lines)| lines.len()).sum();
        assert_eq!(told, sound.iter().count());
        assert!(!key.faults.is_empty() && key.faults.len() <= MOST);
        assert!(
            key.truth.hard.is_some() && key.truth.told.iter().all(|(title, _)| !title.is_empty())
        );
    }

    #[test]
    fn a_set_that_asks_nothing_asks_what_is_asked_of_any_case() {
        let asks = [None, Some(" "), Some("Which wall?")].map(asked);
        assert_eq!(asks, [ASK, ASK, "Which wall?"]);
    }

    #[test]
    fn a_list_that_is_ticked_otherwise_is_told_by_what_is_new_and_what_is_gone() {
        let mut decisions = Decision::ALL.iter().map(|entry| entry.decision);
        let many = decisions.find(|one| !alternative(*one, 1).is_empty()).unwrap();
        let [first, second] = [0, 1].map(|place| alternative(many, place));
        assert_eq!(turned(many, 0b01, 0b10), format!("without {first}, with {second}"));
        assert_eq!(turned(many, 0b11, 0b01), format!("without {second}"));
    }
}
