//! What is said to a learner: that its numbers agree with its verdicts, that it is plain and speaks to
//! the learner, and that nobody could take it for advice to a patient.

use engine::anatomy::Tooth;
use engine::cases::{self, Constraints, Spread};
use engine::debrief::{Verdict, explain, number_that_agrees};
use engine::plan::{Decision, Kind, Plan, Step};
use engine::rules::{self, Reading, Rule, Scale, Zone};
use engine::session::{Mode, Session, wander};
use std::collections::BTreeSet;

/// How long a sentence of a debrief may be, words.
const LONGEST: usize = 45;

/// Everything that a rule says to the learner, piece by piece.
fn said_by(rule: &Rule) -> Vec<String> {
    let mut said = vec![rule.statement, rule.why, rule.mend];
    said.extend(rule.positions.iter().flat_map(|both| [both.one, both.other]));
    if let Scale::Situations(all) = &rule.scale {
        said.extend(all.iter().map(|one| one.words));
    }
    said.into_iter().filter(|text| !text.is_empty()).map(str::to_owned).collect()
}

/// Whatever the engine says, by where it says it.
fn all_said() -> Vec<(String, String)> {
    let mut said: Vec<(String, String)> = rules::all()
        .flat_map(|rule| said_by(rule).into_iter().map(|text| (rule.id.to_owned(), text)))
        .collect();
    for entry in Decision::ALL {
        let place = format!("decision {}", entry.key);
        said.push((place.clone(), entry.ask.to_owned()));
        if let Kind::One(options) | Kind::Many(options) = entry.kind {
            said.extend(options.iter().map(|option| (place.clone(), option.label.to_owned())));
        }
    }
    said.extend(Step::ALL.iter().map(|step| (step.label().to_owned(), step.aim().to_owned())));
    for (place, session) in played() {
        for verdict in session.debrief(None).expect("over").verdicts {
            let words = explain(&verdict, session.case().site.tooth);
            said.push((format!("{place} {}", verdict.rule.id), words.measured));
            said.push((format!("{place} {}", verdict.rule.id), words.distance));
        }
        for report in session.reports() {
            said.extend(report.lines.into_iter().map(|line| (format!("{place} report"), line)));
        }
    }
    said
}

/// Plans by chance on all kinds of cases.
fn played() -> Vec<(String, Session)> {
    let mut played = Vec::new();
    for spread in Spread::ALL {
        for seed in 1..=25 {
            let case = cases::generate_as(spread, seed, &Constraints::default()).expect("a case");
            let session = wander(case, seed);
            assert!(session.is_over());
            played.push((format!("{} {seed}", spread.key()), session));
        }
    }
    played
}

fn words_of(text: &str) -> Vec<String> {
    let letters = |one: char| one.is_alphabetic() || one == '\'' || one == '-';
    text.to_lowercase()
        .split(|one| !letters(one))
        .filter(|word| !word.is_empty())
        .map(str::to_owned)
        .collect()
}

/// Those texts in which one of these phrases stands, as whole words.
fn saying(said: &[(String, String)], phrases: &[&str]) -> Vec<String> {
    let has = |text: &str, phrase: &str| {
        let text = format!(" {} ", words_of(text).join(" "));
        text.contains(&format!(" {phrase} "))
    };
    let found: BTreeSet<String> = said
        .iter()
        .flat_map(|(place, text)| {
            let here = phrases.iter().filter(|phrase| has(text, phrase));
            here.map(move |phrase| format!("{place}: \"{phrase}\" in \"{text}\""))
        })
        .collect();
    found.into_iter().collect()
}

#[test]
fn a_printed_number_is_in_the_zone_of_its_verdict_under_every_rule() {
    for rule in rules::all() {
        let Scale::Bands(bands) = &rule.scale else { continue };
        for cut in bands.cuts {
            for off in -120..=120 {
                let value = cut.at + f64::from(off) / 2000.0;
                let shown: f64 = number_that_agrees(bands, value).parse().expect("a number");
                let zones = [bands.zone_of(value), bands.zone_of(shown)];
                assert_eq!(zones[0], zones[1], "{}: {value} is shown as {shown}", rule.id);
            }
        }
    }
}

#[test]
fn what_is_said_of_a_fault_names_a_distance_and_what_mends_it_and_of_the_rest_neither() {
    let tooth = Tooth::new(11).expect("a tooth");
    let mut faults = 0;
    for rule in rules::all() {
        let readings: Vec<Reading> = match &rule.scale {
            Scale::Situations(all) => all.iter().map(|one| Reading::Situation(one.key)).collect(),
            Scale::Bands(bands) => {
                let near = |at: f64| [at - 0.3, at - 0.001, at, at + 0.001, at + 0.3];
                let all = bands.cuts.iter().flat_map(|cut| near(cut.at));
                all.map(Reading::Number).collect()
            }
        };
        for reading in readings {
            let zone = rule.zone_of(reading).expect("a reading of its own kind");
            let verdict =
                Verdict { rule, reading, zone, knowledge: None, missed: None, here: None };
            let words = explain(&verdict, tooth);
            assert_eq!(words.mend.is_empty(), !zone.is_fault(), "{}", rule.id);
            if zone.is_fault() && matches!(reading, Reading::Number(_)) {
                faults += 1;
                let misses = words.distance.strip_prefix("It misses by ");
                assert!(misses.is_some_and(|by| !by.starts_with("0 ")), "{}", words.distance);
            }
        }
    }
    assert!(faults > 240, "{faults}");
}

#[test]
fn the_numbers_of_played_cases_agree_with_their_words() {
    let mut numbers = 0;
    for (place, session) in played() {
        for verdict in session.debrief(None).expect("over").verdicts {
            let (Scale::Bands(bands), Reading::Number(value)) =
                (&verdict.rule.scale, verdict.reading)
            else {
                continue;
            };
            numbers += 1;
            let words = explain(&verdict, session.case().site.tooth);
            let shown = number_that_agrees(bands, value);
            let size = shown.trim_start_matches('-');
            assert!(words.measured.contains(size), "{place}: {} {shown}", words.measured);
            let parsed: f64 = shown.parse().expect("a number");
            assert_eq!(bands.zone_of(parsed), verdict.zone, "{place}: {}", words.measured);
            // A bare sign says nothing to a reader.
            assert!(!words.measured.contains(": -"), "{place}: {}", words.measured);
        }
    }
    assert!(numbers > 1000, "{numbers}");
}

#[test]
fn nothing_that_is_said_could_be_meant_for_a_patient() {
    let of_patients = [
        "your tooth",
        "your teeth",
        "your gum",
        "your gums",
        "your mouth",
        "your jaw",
        "your dentist",
        "your doctor",
        "your physician",
        "your blood",
        "your pain",
        "your medication",
        "your smile",
        "your own dentist",
        "you bleed",
        "you smoke",
        "take your",
        "after your operation",
    ];
    let mut said = all_said();
    let long = |rule: &Rule| Some((rule.id.to_owned(), rules::prose(rule.id)?.to_owned()));
    said.extend(rules::all().filter_map(long));
    let found = saying(&said, &of_patients);
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn nothing_that_is_said_scolds_or_speaks_past_the_learner() {
    let scolds = [
        "you failed",
        "you should have",
        "you forgot",
        "mistake",
        "wrongly",
        "careless",
        "obviously",
        "of course",
        "stupid",
        "simply",
        "as everybody knows",
        "the learner",
        "the clinician should",
        "the student",
        "one should",
        "we recommend",
        "we",
        "our",
    ];
    let found = saying(&all_said(), &scolds);
    assert!(found.is_empty(), "{}", found.join("\n"));
}

#[test]
fn sentences_are_short_enough_to_be_read_once() {
    let long: BTreeSet<String> = all_said()
        .iter()
        .flat_map(|(place, text)| {
            let sentences = text.split(['.', '?', ';', ':']).map(|one| (one, words_of(one).len()));
            let long = sentences.filter(|(_, count)| *count > LONGEST);
            long.map(move |(one, count)| format!("{place}: {count} words: {one}"))
        })
        .collect();
    assert!(long.is_empty(), "{}", long.into_iter().collect::<Vec<_>>().join("\n"));
}

#[test]
fn every_statement_is_an_instruction_that_ends_and_every_reason_speaks_in_the_present() {
    let mut faults = Vec::new();
    for rule in rules::all() {
        let statement = rule.statement;
        let first = words_of(statement).into_iter().next().unwrap_or_default();
        if !statement.ends_with('.') || ["the", "a", "an", "you", "it", "this"].contains(&&*first) {
            faults.push(format!("{}: {statement}", rule.id));
        }
        let ahead = ["will be", "would have been", "has to have been"];
        let why = [(rule.id.to_owned(), rule.why.to_owned())];
        faults.extend(saying(&why, &ahead));
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

#[test]
fn an_explanation_is_a_function_of_its_verdict_alone() {
    let case = cases::generate(3).expect("a case");
    let sound = cases::proof(&case).expect("a plan").draft;
    let plan = Plan::from_draft(&sound, &case).expect("whole");
    let [one, other] = [(); 2].map(|()| engine::debrief::judge(&case, &plan));
    let tooth = case.site.tooth;
    for (one, other) in one.iter().zip(&other) {
        assert_eq!(explain(one, tooth), explain(other, tooth));
    }
    assert!(one.iter().any(|verdict| verdict.zone == Zone::Ideal));
    assert!(Session::open(case, Mode::Assessment).verdicts().is_empty());
}
