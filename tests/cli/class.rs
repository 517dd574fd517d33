//! `wallwise class`: a class with planted misconceptions, and everything that can be wrong with files.

use super::planted::{CASES, Learner, attempts, saved};
use super::tool::{done, folder, json, json_of, path, wallwise};
use serde_json::Value;
use std::fs::{self, File};
use std::io::Write;
use std::path::{Path, PathBuf};
use zip::write::SimpleFileOptions;

/// Eight of twelve send the patient home without an emergency number, four never sound bone; one skips
/// the review of allergies.
fn class() -> Vec<Learner> {
    (0..12)
        .map(|place| Learner {
            code: format!("k-{place:02}"),
            no_number: place < 8,
            no_sounding: (6..10).contains(&place),
        })
        .collect()
}

/// The class's files in a folder of this name.
fn handed_in(name: &str) -> PathBuf {
    let folder = folder(name);
    for learner in class() {
        fs::write(folder.join(format!("{}.json", learner.code)), saved(&learner)).expect("written");
    }
    folder
}

fn rule<'a>(report: &'a Value, id: &str) -> &'a Value {
    let rules = report["rules"].as_array().expect("rules");
    rules.iter().find(|one| one["rule"] == id).unwrap_or_else(|| panic!("no {id} in {rules:?}"))
}

/// The rule that the plan without an emergency number breaks.
const NUMBER: &str = "no-emergency-number";

#[test]
fn the_report_names_the_planted_misconceptions_with_how_many_hold_them() {
    let report = json(&["class", path(&handed_in("planted-class")), "--json"]);
    assert_eq!(report["counted"], 12 * CASES.len());
    assert_eq!(report["learners"].as_array().map(Vec::len), Some(12));
    let missed = rule(&report, NUMBER);
    assert_eq!(
        (missed["learners"]["right"].as_u64(), missed["learners"]["of"].as_u64()),
        (Some(4), Some(12))
    );
    assert_eq!(report["rules"][0]["rule"], NUMBER, "the most missed first");
    // Every miss was planted in a sound plan, so that nothing else is missed by more learners.
    let most = |one: &Value| {
        one["learners"]["of"].as_u64().unwrap_or(0) - one["learners"]["right"].as_u64().unwrap_or(0)
    };
    assert!(report["rules"].as_array().expect("rules").iter().all(|one| most(one) <= 8));
    // And what it is that they do: the box that they leave unticked.
    let notion = &missed["notion"];
    assert_eq!(
        (notion["decision"].as_str(), notion["left-out"].as_bool()),
        (Some("instructions"), Some(true))
    );
    assert_eq!(
        (&notion["missed"], &notion["kept"]),
        (&serde_json::json!([32, 32]), &serde_json::json!([0, 16]))
    );
    let said = done(&["class", path(&folder_of("planted-class"))]);
    assert!(said.contains("Not clinical advice") && said.contains("8 of 12 learners"), "{said}");
    assert!(said.contains("too few for coefficients"), "{said}");
    assert!(report["together"]["alpha"].is_null() && report["cases"][0]["corrected"].is_null());
}

/// How many learners missed the planted rule.
fn missing_the_number(report: &Value) -> u64 {
    let learners = &rule(report, NUMBER)["learners"];
    learners["of"].as_u64().unwrap_or(0) - learners["right"].as_u64().unwrap_or(0)
}

fn folder_of(name: &str) -> PathBuf {
    Path::new(env!("CARGO_TARGET_TMPDIR")).join("cli").join(name)
}

#[test]
fn learners_are_numbers_unless_codes_are_asked_for() {
    let folder = handed_in("class-codes");
    let hidden = done(&["class", path(&folder), "--json"]);
    assert!(hidden.contains("Learner 1") && !hidden.contains("k-0"), "{hidden}");
    assert!(done(&["class", path(&folder), "--json", "--codes"]).contains("k-03"));
}

#[test]
fn what_was_handed_in_twice_counts_once_and_a_later_state_of_it_takes_its_place() {
    let folder = folder("class-twice");
    let learner = &class()[11];
    let whole = attempts(learner);
    let mut early = whole.clone();
    // As it stood before the last case was finished.
    let last = early.last_mut().expect("cases");
    last.head.ended = None;
    last.head.verdicts.clear();
    last.events.truncate(last.events.len() / 2);
    for (name, records) in [("a.json", &early), ("b.json", &whole), ("c.json", &whole)] {
        let texts: Vec<String> = records.iter().map(learning::file::record).collect();
        fs::write(folder.join(name), learning::file::write(Some(&learner.code), &texts))
            .expect("written");
    }
    let report = json(&["class", path(&folder), "--json"]);
    assert_eq!(
        (report["attempts"].as_u64(), report["unfinished"].as_u64()),
        (Some(CASES.len() as u64), Some(0))
    );
    assert_eq!(report["again"], 2 * CASES.len());
    assert_eq!(report["learners"].as_array().map(Vec::len), Some(1));
}

#[test]
fn what_a_later_rule_set_judges_otherwise_is_told_as_it_was_and_as_it_is() {
    let folder = folder("class-changed");
    let mut learner = class().swap_remove(0);
    learner.no_number = true;
    let mut records = attempts(&learner);
    // As an earlier rule set may have had it: something else outside, and the number no matter.
    let head = &mut records[0].head;
    (head.rule_set, head.verdicts) = ("0.9".to_owned(), format!("{:016x}", 1));
    head.faults = "graft-dry:outside-suboptimal <b>:unsafe".to_owned();
    let head = &mut records[1].head;
    (head.rule_set, head.verdicts) = ("0.9".to_owned(), format!("{:016x}", 2));
    let texts: Vec<String> = records.iter().map(learning::file::record).collect();
    fs::write(folder.join("a.json"), learning::file::write(Some(&learner.code), &texts))
        .expect("written");
    let report = json(&["class", path(&folder), "--json"]);
    assert_eq!(report["judged-otherwise"]["0.9"], 2);
    let changed = report["changed"].as_array().expect("a list");
    assert_eq!(changed.len(), 2);
    assert_eq!(changed[0]["then"], serde_json::json!(["graft-dry:outside-suboptimal"]));
    let today = changed[0]["today"].as_array().expect("a list");
    assert!(today.iter().any(|one| one.as_str().is_some_and(|one| one.starts_with(NUMBER))));
    assert!(changed[1]["then"].is_null());
    let told = done(&["class", path(&folder)]);
    assert!(told.contains("under rule set 0.9 graft-dry outside-suboptimal; today "), "{told}");
    assert!(told.contains("under rule set 0.9 not said in the file; today "), "{told}");
}

#[test]
fn what_is_tampered_cut_off_foreign_or_another_s_is_set_aside_by_a_line_each_and_the_rest_is_read()
{
    let folder = handed_in("class-broken");
    let honest = saved(&class()[0]);
    let write = |name: &str, text: &str| fs::write(folder.join(name), text).expect("written");
    // A mark cannot be typed in: there is none, and a hash that is not that of the choices is told.
    let mine = |text: &str, name: &str| {
        text.replace("k-00", name).replace("\"id\":\"", &format!("\"id\":\"{name}-"))
    };
    write("x1.json", &mine(&honest, "x1").replacen("\"verdicts\":\"", "\"verdicts\":\"f", 1));
    let cut: Vec<String> = attempts(&class()[1])
        .into_iter()
        .map(|mut record| {
            record.head.id = format!("x2-{}", record.head.id);
            record.head.verdicts.clear();
            record.events.truncate(4);
            learning::file::record(&record)
        })
        .collect();
    write("x2.json", &learning::file::write(Some("x2"), &cut));
    write("x3.json", "{\"kind\":\"grades\",\"format\":2,\"records\":[]}");
    write("x4.json", &honest[..honest.len() / 2]);
    write("x5.json", &honest.replace("\"learner\":\"k-00\"", "\"learner\":\"x5\""));
    write("notes.txt", "Dear teacher");
    let newer = mine(&honest, "x6").replace("\"address\":\"1.1.", "\"address\":\"1.99.");
    write("x6.json", &newer);
    let ran = wallwise(&["class", path(&folder), "--json"]);
    assert_eq!(ran.code, Some(1));
    let report = json_of(&ran);
    let aside: Vec<&str> =
        report["set-aside"].as_array().expect("lines").iter().filter_map(Value::as_str).collect();
    let of = |name: &str| aside.iter().filter(|line| line.contains(name)).count();
    let said = |name: &str, words: &str| {
        aside.iter().any(|line| line.contains(name) && line.contains(words))
    };
    assert_eq!(
        [of("x1.json"), of("x3.json"), of("x4.json"), of("notes.txt")],
        [1, 1, 1, 1],
        "{aside:#?}"
    );
    assert!(said("x1.json", "changed after it was sat"), "{aside:#?}");
    assert_eq!(
        (of("x2.json"), said("x2.json", "events are missing")),
        (CASES.len(), true),
        "{aside:#?}"
    );
    assert!(said("x5.json", "handed in by k-00 too"), "{aside:#?}");
    assert!(said("x6.json", "generator 99"), "{aside:#?}");
    assert_eq!(missing_the_number(&report), 9, "the eight, and x1 without its first case");
}

#[test]
fn a_zip_file_is_read_without_ever_being_unfolded_on_the_disk() {
    let folder = folder("class-zip");
    let file = folder.join("class.zip");
    let mut zip = zip::ZipWriter::new(File::create(&file).expect("a file"));
    let options = SimpleFileOptions::default();
    for (name, text) in [
        ("../../outside.json".to_owned(), saved(&class()[0])),
        ("b/<script>alert(1)</script>.json".to_owned(), saved(&class()[1])),
        ("readme.md".to_owned(), "Dear teacher".to_owned()),
        ("bomb.json".to_owned(), " ".repeat(80 << 20)),
    ] {
        zip.start_file(name, options).expect("an entry");
        zip.write_all(text.as_bytes()).expect("written");
    }
    zip.finish().expect("a zip file");
    let ran = wallwise(&["class", path(&file), "--json"]);
    let report = json_of(&ran);
    assert_eq!(report["learners"].as_array().map(Vec::len), Some(2), "{report:#}");
    let aside = report["set-aside"].to_string();
    assert!(
        aside.contains("bomb.json") && aside.contains("64 MB") && aside.contains("readme.md"),
        "{aside}"
    );
    assert!(!folder.join("../../outside.json").exists());
    let names: Vec<_> = fs::read_dir(&folder).expect("a folder").flatten().collect();
    assert_eq!(names.len(), 1);
}

#[test]
fn the_tables_are_written_and_nothing_in_them_is_a_formula() {
    let folder = handed_in("class-tables");
    let tables = folder.join("tables");
    let ran = wallwise(&["class", path(&folder), "--csv", path(&tables), "--codes"]);
    assert_eq!(ran.code, Some(0), "{}", ran.talk);
    let learners = fs::read_to_string(tables.join("learners.csv")).expect("a table");
    assert_eq!(learners.lines().count(), 13);
    let column =
        learners.lines().next().and_then(|line| line.split(',').position(|name| name == NUMBER));
    let column = column.expect("a column for each rule");
    let missed =
        learners.lines().skip(1).filter(|line| line.split(',').nth(column) == Some("0")).count();
    assert_eq!(missed, 8);
    for name in ["rules", "cases", "unsafe"] {
        assert!(
            fs::read_to_string(tables.join(name).with_extension("csv"))
                .expect("a table")
                .lines()
                .count()
                > 0
        );
    }
}

#[test]
fn a_folder_without_an_attempt_ends_with_a_way_out() {
    let empty = folder("class-empty");
    fs::write(empty.join("a.json"), "[]").expect("written");
    let ran = wallwise(&["class", path(&empty)]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(
        ran.talk.contains("a.json") && ran.talk.contains("that the room saved"),
        "{}",
        ran.talk
    );
}
