//! Nothing that is read beside a case leaves it open which side is meant.

use super::{Group, GroupKey, Verdict, explain};
use crate::anatomy::Tooth;
use crate::cases::{self, Archetype};
use crate::casing::is_latin;
use crate::chart::Fact;
use crate::plan::{Decision, Kind};
use crate::rules::{self, Reading, Rule, Scale};
use crate::session::{all_reports, history_lines};

/// *Oral* where it names no side, as the rules' own texts and charts have it.
const NO_SIDE: &[&str] = &[
    "direct oral anticoagulant",
    "textbook of oral surgery",
    "for oral surgery, with",
    "Is Oral Surgery Safe",
    "J Oral Maxillofac",
    "J Oral Sci",
    "J Oral Implantol",
    "Int J Oral",
    "Clin Oral Implants",
    "Clin Oral Investig",
    "BMC Oral Health",
    "Oral Surg Oral Med Oral Pathol Oral Radiol",
    "Med Oral Patol Oral Cir Bucal",
];

fn teeth() -> [Tooth; 2] {
    [11, 44].map(|iso| Tooth::new(iso).unwrap())
}

/// What is left when all that names no side is taken out.
fn sides_only(text: &str) -> String {
    NO_SIDE.iter().fold(text.to_owned(), |text, phrase| text.replace(phrase, ""))
}

fn says_oral(text: &str) -> bool {
    let text = text.to_ascii_lowercase();
    let mut words = text.split(|letter: char| !is_latin(letter) && letter != '-');
    words.any(|word| matches!(word, "oral" | "orally"))
}

fn readings(rule: &Rule) -> Vec<Reading> {
    match &rule.scale {
        Scale::Situations(all) => all.iter().map(|one| Reading::Situation(one.key)).collect(),
        Scale::Bands(bands) => {
            let ends = bands.zones().filter_map(|(from, to, _)| from.or(to));
            ends.flat_map(|end| [end - 0.1, end, end + 0.1]).map(Reading::Number).collect()
        }
    }
}

/// Every text that a verdict on this rule can bring, as it is printed beside this tooth.
fn said(rule: &'static Rule, tooth: Tooth) -> Vec<String> {
    let mut said = Vec::new();
    for reading in readings(rule) {
        let zone = rule.zone_of(reading).unwrap();
        let verdict = Verdict { rule, reading, zone, knowledge: None, missed: None, here: None };
        let words = explain(&verdict, tooth);
        said.extend([words.measured, words.asked, words.distance, words.known, words.differ]);
        said.extend([words.why.into_owned(), words.mend.into_owned()]);
        said.extend(words.sources);
    }
    let causes = rule.causes.iter().map(|cause| GroupKey::Cause(*cause));
    for key in causes.chain(rule.rests_on.iter().map(|fact| GroupKey::Missed(*fact))) {
        said.extend(Group { key, faults: Vec::new(), cost: 0 }.cause(tooth));
    }
    said
}

#[test]
fn no_verdict_leaves_the_oral_side_unnamed() {
    for tooth in teeth() {
        for rule in rules::all() {
            for text in said(rule, tooth) {
                assert!(!says_oral(&sides_only(&text)), "{}: {text}", rule.id);
            }
        }
    }
}

/// Every text of a rule as it was written.
fn written(rule: &'static Rule) -> Vec<&'static str> {
    let mut texts = vec![rule.statement, rule.why, rule.mend];
    texts.extend(rule.evidence.iter().flat_map(|one| [one.cite, one.says]));
    texts.extend(rule.positions.iter().flat_map(|both| [both.one, both.other]));
    match &rule.scale {
        Scale::Bands(bands) => texts.push(bands.quantity),
        Scale::Situations(all) => texts.extend(all.iter().map(|one| one.words)),
    }
    texts
}

#[test]
fn drugs_and_journals_keep_their_names() {
    let mut kept = 0;
    for text in rules::all().flat_map(written) {
        for phrase in NO_SIDE {
            let count = |text: &str| text.matches(phrase).count();
            for tooth in teeth() {
                assert_eq!(count(&tooth.named(text)), count(text), "{text}");
            }
            kept += count(text);
        }
    }
    assert!(kept > 10, "{kept}");
}

#[test]
fn no_decision_leaves_the_oral_side_unnamed() {
    for tooth in teeth() {
        for entry in Decision::ALL {
            let mut said = vec![tooth.named(entry.label), tooth.named(entry.ask)];
            match entry.kind {
                Kind::One(options) | Kind::Many(options) => {
                    said.extend(options.iter().map(|option| tooth.named(option.label)));
                }
                Kind::Number(kind) => said.extend(kind.ways_at(tooth).map(Into::into)),
                Kind::Outline => {}
            }
            for text in said {
                assert!(!says_oral(&text), "{}: {text}", entry.key);
            }
        }
        for fact in Fact::ALL {
            assert!(!says_oral(&tooth.named(fact.words())), "{fact:?}");
        }
    }
}

#[test]
fn charts_and_reports_name_sides_and_keep_drugs() {
    let mut drugs = 0;
    for archetype in Archetype::ALL.iter().filter(|one| !one.teeth().is_empty()) {
        let asked = cases::Constraints { archetype: Some(*archetype), ..Default::default() };
        let case = cases::generate_with(3, &asked).unwrap();
        let reports = all_reports(&case).into_iter().flat_map(|report| report.lines);
        for line in history_lines(&case).into_iter().chain(reports) {
            assert!(!says_oral(&sides_only(&line)), "{line}");
            assert_eq!(case.site.tooth.named(&line), line);
            drugs += usize::from(line.contains("direct oral anticoagulant"));
        }
    }
    assert!(drugs > 0);
}
