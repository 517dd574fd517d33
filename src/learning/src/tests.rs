//! Files of attempts, and what attempts say once they are replayed.

use crate::file::{self, LONGEST_NOTE};
use crate::past::{Past, replay, verdicts_of};
use crate::record::{Done, Head, Help, RECORD_FORMAT, Record};
use engine::cases::{at, generate};
use engine::chart::{Address, Case};
use engine::debrief::{hash_of, judge};
use engine::plan::{Decision, Step};
use engine::rules::trial::Trial;
use engine::rules::{Debated, Held, Level, Local, Moved, Protocol, Side, Skill, Worth, Zone};
use engine::session::{Event, Mode, Session, wander};
use serde::de::IgnoredAny;

/// A bare attempt as the debrief saved it before the room kept anything.
const FORMAT_1: &str = include_str!("../../../tests/data/attempt-format-1.json");
/// A record of this form, as the room saves it.
const FORMAT_2: &str = include_str!("../../../tests/data/attempts-format-2.json");

/// What chance did with a case, one event a second.
fn played(seed: u64) -> (Head, Vec<Done>, Session) {
    let session = wander(generate(seed).unwrap(), seed);
    let address = session.opened().address.unwrap();
    let mut head =
        Head::begin(format!("played-{seed}"), format!("#/case/{address}"), &session, 1, 1_000_000);
    head.ended = Some(2_000_000);
    let done = |(place, event): (usize, &Event)| Done {
        at: Some(1_001_000 + 1000 * u64::try_from(place).unwrap()),
        what: event.written(),
    };
    let events = session.events().iter().enumerate().map(done).collect();
    (head, events, session)
}

fn record(seed: u64) -> Record<Case> {
    let (head, events, session) = played(seed);
    Record { head, events, case: Some(session.opened().clone()), note: "mine".to_owned() }
}

fn saved(records: &[Record<Case>]) -> String {
    let texts: Vec<String> = records.iter().map(file::record).collect();
    file::write(None, &texts)
}

#[test]
fn what_is_saved_reads_back_and_replays_to_the_same_verdicts() {
    let all: Vec<_> = (1..=5).map(record).collect();
    let read = file::read::<Case>(&saved(&all));
    assert_eq!(read.faults, []);
    assert_eq!(read.records, all);
    for record in read.records {
        let by_address = at(record.head.address.unwrap()).unwrap();
        let again = replay(&record.head, &record.events, by_address.clone()).unwrap();
        let written = replay(&record.head, &record.events, record.case.unwrap()).unwrap();
        assert_eq!(hash_of(&written.verdicts()), hash_of(&again.verdicts()));
        assert_eq!(hash_of(&judge(&by_address, again.plan())), hash_of(&again.verdicts()));
    }
}

#[test]
fn an_attempt_of_the_first_format_becomes_a_record_the_same_one_every_time() {
    let read = file::read::<IgnoredAny>(FORMAT_1);
    assert_eq!(read.faults, []);
    let [record] = &read.records[..] else { panic!("one record") };
    assert_eq!(record.head.format, RECORD_FORMAT);
    assert_eq!(record.head.begun, None, "nobody knows when");
    assert_eq!(file::read::<IgnoredAny>(FORMAT_1).records[0].head.id, record.head.id);
    let case = at(record.head.address.unwrap()).unwrap();
    let session = replay(&record.head, &record.events, case).unwrap();
    let now = format!("{:016x}", hash_of(&judge(session.opened(), session.plan())));
    assert_eq!(now, record.head.verdicts, "judged as it was then");
}

#[test]
fn a_stored_file_of_this_format_reads_for_ever() {
    let read = file::read::<Case>(FORMAT_2);
    assert_eq!(read.faults, []);
    assert_eq!(read.records.len(), 2);
    for record in read.records {
        let session = replay(&record.head, &record.events, record.case.unwrap()).unwrap();
        let now = format!("{:016x}", hash_of(&judge(session.opened(), session.plan())));
        assert_eq!(now, record.head.verdicts);
    }
}

#[test]
fn a_newer_file_is_refused_and_a_newer_record_left_out_while_the_others_come_in() {
    let text = saved(&[record(1), record(2), record(3)]);
    let newer = text.replacen("\"format\":2,", "\"format\":3,", 1);
    let read = file::read::<Case>(&newer);
    assert!(read.records.is_empty());
    assert!(read.faults[0].says.contains("newer version"), "{:?}", read.faults);
    let one = text.replace("\"format\":2,\"id\":\"played-2\"", "\"format\":9,\"id\":\"played-2\"");
    assert_ne!(one, text);
    let read = file::read::<Case>(&one);
    assert_eq!(read.records.len(), 2);
    assert_eq!(read.faults.len(), 1);
    assert_eq!(read.faults[0].line, 3, "the second record stands on the third line");
}

#[test]
fn every_fault_of_a_file_is_told_at_once_with_its_line() {
    let mut bad = record(1);
    bad.head.id = "<b>no name</b>".to_owned();
    bad.head.at = "https://elsewhere".to_owned();
    let mut worse = record(2);
    worse.events.clear();
    let text = saved(&[bad, worse, record(3)])
        .replace("\"carry-out\":\"chart\"", "\"carry-out\":\"lunch\"");
    let read = file::read::<Case>(&text);
    assert!(read.records.is_empty());
    let lines: Vec<usize> = read.faults.iter().map(|fault| fault.line).collect();
    assert_eq!(lines, [2, 2, 2, 3, 4], "{:?}", read.faults);
    assert!(read.faults[4].says.contains("lunch"));
}

#[test]
fn what_is_no_file_of_ours_is_told_and_nothing_of_it_taken() {
    for text in [
        "",
        "[]",
        "{",
        "null",
        "{\"kind\":\"grades\",\"format\":2,\"records\":[]}",
        "{\"kind\":\"attempts\",\"format\":2}",
        "{\"kind\":\"attempts\",\"format\":2,\"records\":[{}]}",
        "{\"kind\":\"attempts\",\"format\":2,\"records\":[1,\"x\",null]}",
        "{\"format\":1,\"events\":[]}",
    ] {
        let read = file::read::<Case>(text);
        assert!(read.records.is_empty() && !read.faults.is_empty(), "{text}");
    }
    // Cut off anywhere, a file is told to be broken and never read by half.
    let text = saved(&[record(1)]);
    for end in (0..text.len() - 3).step_by(97).filter(|end| text.is_char_boundary(*end)) {
        assert!(file::read::<Case>(&text[..end]).records.is_empty(), "{end}");
    }
}

#[test]
fn a_note_is_cut_where_it_is_too_long() {
    let mut long = record(1);
    long.note = "x".repeat(LONGEST_NOTE + 9);
    assert_eq!(file::read::<Case>(&saved(&[long])).records[0].note.len(), LONGEST_NOTE);
}

#[test]
fn a_skill_is_right_where_none_of_its_verdicts_that_count_is_a_fault() {
    for seed in 1..=20 {
        let (head, events, session) = played(seed);
        let past = Past::of(head, &events, &session);
        let verdicts = judge(session.opened(), session.plan());
        assert_eq!(past.observed.len(), verdicts.len(), "every verdict is an observation");
        for skill in Skill::ALL {
            let of_skill: Vec<_> =
                verdicts.iter().filter(|one| one.rule.skill == skill && one.counts()).collect();
            let right = of_skill.iter().all(|one| !one.is_fault());
            assert_eq!(past.answer(skill), (!of_skill.is_empty()).then_some(right), "{skill:?}");
        }
    }
}

#[test]
fn time_goes_to_the_step_that_it_led_to_and_a_pause_counts_five_minutes() {
    let (head, mut events, session) = played(3);
    let chart = events
        .iter()
        .position(|done| Event::try_from(&done.what) == Ok(Event::CarryOut(Step::Chart)));
    let chart = chart.unwrap();
    // An hour's lunch before the chart was carried out.
    for done in &mut events[chart..] {
        done.at = done.at.map(|at| at + 3_600_000);
    }
    let past = Past::of(head, &events, &session);
    let spent = past.spent.iter().find(|(step, _)| *step == Step::Chart).unwrap().1;
    assert_eq!(spent, 1000 * u64::try_from(chart).unwrap() + 300_000);
}

#[test]
fn how_sure_one_was_is_set_beside_what_came_of_the_step() {
    let (head, events, session) = played(5);
    let mut again = Session::open(session.opened().clone(), Mode::Study);
    for done in &events {
        let event = Event::try_from(&done.what).unwrap();
        if let Event::CarryOut(step) = event
            && again.due() == Some(step)
        {
            again.apply(Event::Sure(step, Some(75))).unwrap();
        }
        again.apply(event).unwrap();
    }
    let past = Past::of(head, &events, &again);
    assert!(!past.sure.is_empty());
    let verdicts = judge(again.opened(), again.plan());
    for sure in &past.sure {
        let fault = verdicts.iter().any(|one| one.rule.step == sure.step && one.is_fault());
        assert_eq!((sure.percent, sure.right), (75, !fault), "{:?}", sure.step);
    }
}

#[test]
fn what_was_shown_is_nobody_s_own() {
    let (head, events, session) = played(1);
    let with = |help: &[Help]| {
        let head = Head { help: help.to_vec(), ..head.clone() };
        Past::of(head, &events, &session).is_own()
    };
    assert!(with(&[]) && with(&[Help::Guided]));
    assert!(!with(&[Help::Worked]) && !with(&[Help::Begun]));
}

#[test]
fn an_attempt_whose_events_do_not_fit_its_case_says_where() {
    let (head, mut events, session) = played(1);
    events.swap_remove(0);
    let refused = replay(&head, &events, session.opened().clone()).unwrap_err();
    assert!(refused.to_string().starts_with("event "), "{refused}");
    let address: Address = head.address.unwrap();
    assert!(at(address).is_ok());
}

/// A trial in which everything is answered, as its record.
fn record_of(trial: &Trial) -> (Record<Case>, Session) {
    let mut session = Session::open(trial.case.clone(), Mode::Study);
    while let Some(step) = session.due() {
        for entry in Decision::ALL.iter().filter(|entry| entry.step == step) {
            if let Some(value) = trial.draft.value(entry.decision) {
                session.apply(Event::Choose(entry.decision, Some(value.clone()))).unwrap();
            }
        }
        session.apply(Event::CarryOut(step)).unwrap();
    }
    let mut head = Head::begin("trial".to_owned(), "#/case/1".to_owned(), &session, 1, 0);
    head.verdicts = verdicts_of(&session);
    let done = |event: &Event| Done { at: None, what: event.written() };
    let events = session.events().iter().map(done).collect();
    let case = Some(trial.case.clone().under(Local::NONE));
    (Record { head, events, case, note: String::new() }, session)
}

#[test]
fn an_attempt_carries_the_protocol_of_its_set_and_replays_to_the_same_verdicts() {
    let mut trial = Trial::plain();
    let (free, session) = record_of(&trial);
    assert!(!file::record(&free).contains("local"), "as before there were protocols");
    // What is debated of the plain plan is taken for a fault by the set.
    let verdicts = session.verdicts();
    let debated = verdicts.iter().find(|one| one.zone == Zone::Debated).unwrap();
    let positions = vec![Held {
        rule: debated.rule.id.to_owned(),
        holds: Side::Other,
        debated: Debated::All(Worth::Suboptimal),
    }];
    let protocol = Protocol { positions, ..Protocol::default() };
    trial.case = trial.case.under(Local { level: Some(Level::Resident), protocol });
    let (record, _) = record_of(&trial);
    assert_ne!(record.head.verdicts, free.head.verdicts);
    let read = file::read::<Case>(&saved(std::slice::from_ref(&record)));
    assert_eq!((&read.records[..], &read.faults[..]), (&[record.clone()][..], &[][..]));
    // The case itself is as it stands; the record has it judged as its set would.
    let again = replay(&record.head, &record.events, record.case.unwrap()).unwrap();
    assert_eq!(verdicts_of(&again), record.head.verdicts);
}

#[test]
fn an_attempt_that_would_have_a_rule_otherwise_than_it_may_is_refused() {
    let trial = Trial::plain();
    let (mut record, _) = record_of(&trial);
    let moved = |to| Moved { rule: "membrane-short-of-intact-bone".to_owned(), from: 2.0, to };
    for (to, fits) in [(2.5, true), (9.0, false)] {
        record.head.local.protocol.bands = vec![moved(to)];
        let again = replay(&record.head, &record.events, trial.case.clone());
        assert_eq!(again.is_ok(), fits, "{to}");
    }
    let why = replay(&record.head, &record.events, trial.case).unwrap_err().to_string();
    assert!(why.contains("published figures run from 2 to 3 mm"), "{why}");
}
