//! Valid files with a few bytes spoilt: reading never panics, every refusal says where, and whatever
//! is still accepted can be judged.

use std::panic::{AssertUnwindSafe, catch_unwind};

use engine::chart::Case;
use engine::debrief::{PlanWord, debrief};
use engine::plan::{Draft, Plan};
use engine::scenario::{Faults, parse_case, parse_plan, parse_set, write_case, write_plan};
use engine::{anatomy, cases};
use rand_chacha::ChaCha8Rng;
use rand_chacha::rand_core::{Rng, SeedableRng};

/// How many spoilt files of each kind are read.
const FILES: u32 = 400;

/// What is dropped into a file: the ends of every kind of number, text and bracket.
const DROPPED: [&str; 22] = [
    "nan",
    "-inf",
    "1e999",
    "-1",
    "0",
    "-0.0",
    "1e-320",
    "9223372036854775808",
    "0x7fffffff",
    "\"",
    "'''",
    "[",
    "]]",
    "{",
    "}",
    "=",
    "\n",
    "#",
    "\u{0}",
    "\u{1F9B7}",
    "2024-01-01",
    "true",
];

struct Spoiler(ChaCha8Rng);

impl Spoiler {
    fn below(&mut self, limit: usize) -> usize {
        usize::try_from(self.0.next_u64() % limit.max(1) as u64).unwrap_or_default()
    }

    /// A copy of the file with one to four spoilt places.
    fn spoil(&mut self, text: &str) -> String {
        let mut bytes = text.as_bytes().to_vec();
        for _ in 0..=self.below(4) {
            let at = self.below(bytes.len());
            let end = (at + 1 + self.below(12)).min(bytes.len());
            match self.below(7) {
                0 => bytes[at] = self.below(256) as u8,
                1 => drop(bytes.drain(at..end)),
                2 => {
                    let dropped = DROPPED[self.below(DROPPED.len())];
                    drop(bytes.splice(at..at, dropped.bytes()));
                }
                3 => {
                    let copied = bytes[at..end].to_vec();
                    let to = self.below(bytes.len());
                    drop(bytes.splice(to..to, copied));
                }
                // The commonest slip: another digit. Most such files are still read.
                _ => self.digit(&mut bytes, at),
            }
            if bytes.is_empty() {
                break;
            }
        }
        String::from_utf8_lossy(&bytes).into_owned()
    }

    /// Changes the next digit after a place.
    fn digit(&mut self, bytes: &mut [u8], from: usize) {
        if let Some(digit) = bytes.iter_mut().skip(from).find(|byte| byte.is_ascii_digit()) {
            *digit = b'0' + self.below(10) as u8;
        }
    }
}

/// Reads spoilt copies of a text; `judged` tries what was accepted. Returns how many were.
fn read_spoilt<T>(
    seed: u64,
    text: &str,
    read: impl Fn(&str) -> Result<T, Faults>,
    judged: impl Fn(&T),
) -> u32 {
    let mut spoiler = Spoiler(ChaCha8Rng::seed_from_u64(seed));
    let mut accepted = 0;
    for _ in 0..FILES {
        let spoilt = spoiler.spoil(text);
        let tried = catch_unwind(AssertUnwindSafe(|| match read(&spoilt) {
            Ok(read) => {
                judged(&read);
                None
            }
            Err(faults) => Some(faults),
        }));
        match tried.unwrap_or_else(|_| panic!("it panics on\n{spoilt}")) {
            None => accepted += 1,
            Some(faults) => {
                assert!(!faults.0.is_empty(), "refused without a reason:\n{spoilt}");
                let lines = u32::try_from(spoilt.lines().count()).expect("few lines") + 1;
                for fault in faults.0 {
                    let placed = (1..=lines).contains(&fault.place.line) && fault.place.column >= 1;
                    assert!(placed && !fault.says.is_empty(), "{fault}\n{spoilt}");
                }
            }
        }
    }
    accepted
}

/// A case with a defect, neighbours and a floor above it, and its sound plan.
fn case_and_plan() -> (Case, Draft) {
    (0..200)
        .find_map(|seed| {
            let case = cases::generate(seed).ok()?;
            let rich = !case.site.defects.is_empty()
                && case.site.vital != anatomy::Vital::default()
                && cases::proof(&case).is_some();
            let proof = rich.then(|| cases::proof(&case)).flatten()?;
            Some((case, proof.draft))
        })
        .expect("such a case is drawn")
}

fn judged(case: &Case, draft: &Draft) -> Option<PlanWord> {
    let plan = Plan::from_draft(draft, case).ok()?;
    let debrief = debrief(case, &plan, None);
    let percent = debrief.mark.percent().unwrap_or(0.0);
    assert!((0.0..=100.0).contains(&percent), "{percent}");
    Some(debrief.word)
}

#[test]
fn a_spoilt_case_is_refused_with_a_place_or_judged() {
    let (case, draft) = case_and_plan();
    assert_eq!(judged(&case, &draft), Some(PlanWord::Sound));
    let accepted = read_spoilt(1, &write_case(&case), parse_case, |spoilt| {
        judged(spoilt, &draft);
    });
    assert!((20..FILES).contains(&accepted), "{accepted} accepted: some must be, not all");
}

#[test]
fn a_spoilt_plan_is_refused_with_a_place_or_judged() {
    let (case, draft) = case_and_plan();
    let accepted = read_spoilt(2, &write_plan(&draft), parse_plan, |spoilt| {
        judged(&case, spoilt);
    });
    assert!((20..FILES).contains(&accepted), "{accepted} accepted: some must be, not all");
}

#[test]
fn a_spoilt_set_is_refused_with_a_place_or_its_form_is_whole() {
    let text = r#"# synthetic, not for treatment
format = 1
kind = "set"
title = "Walls"
aim = "Tell a wall that is there from one that is not."
level = "student"
mode = "study"
[[case]]
address = "1.1.2024.0"
ask = "What would the film have told you?"
[[case.expect]]
plan = "proof"
change = { component = "provisional", "diameter-mm" = 6.0, "tip-degrees" = "undecided" }
word = "compromised"
verdicts = { facial-plate-levered = "ideal" }
[[case]]
seed = 7
archetype = "defect-v"
tooth = 11
[[case.expect]]
[case.expect.choices.implant]
diameter-mm = 4.0
"#;
    assert!(parse_set(text).is_err(), "an expectation without a word is a fault");
    let text = text.replace(
        "[[case.expect]]\n[case.expect.choices",
        "[[case.expect]]\nword = \"unsafe\"\n[case.expect.choices",
    );
    parse_set(&text).unwrap_or_else(|faults| panic!("{faults}"));
    let accepted = read_spoilt(3, &text, parse_set, |set| {
        assert!(!set.cases.is_empty() && !set.title.is_empty());
    });
    assert!((20..FILES).contains(&accepted), "{accepted} accepted: some must be, not all");
}
