//! `wallwise judge --healing`: bands of a plan, of the nearest sound one, and of none.

use std::fs;

use serde_json::Value;

use super::tool::{done, folder, json_of, path, wallwise};

/// A case whose sound plan places an implant between whole walls.
const SEED: &str = "1";

/// The treatment of this one in what was printed.
fn of<'a>(healing: &'a Value, whose: &str) -> &'a Value {
    let all = healing["treatments"].as_array().expect("treatments");
    let has = |one: &&Value| {
        one["whose"].as_array().is_some_and(|list| list.iter().any(|name| name == whose))
    };
    all.iter().find(has).unwrap_or_else(|| panic!("expected {whose} in {healing}"))
}

#[test]
fn a_spoilt_plan_stands_beside_the_nearest_sound_one_and_beside_none() {
    let folder = folder("healing");
    let file = folder.join("plan.toml");
    let sound = done(&["case", SEED, "--plan"]);
    // The gap is left empty: a treatment of its own, and a fault to be mended.
    let line = sound.lines().find(|line| line.starts_with("graft-material = ")).expect("a graft");
    fs::write(&file, sound.replace(line, "graft-material = \"no-graft\"")).expect("written");
    let ran = wallwise(&["judge", SEED, path(&file), "--healing", "--json"]);
    let json = json_of(&ran);
    let healing = &json["healing"];
    assert_eq!(of(healing, "yours")["treatment"], "implant");
    assert_eq!(of(healing, "untreated")["treatment"], "left-to-heal");
    for one in healing["treatments"].as_array().expect("treatments") {
        let months = one["months"].as_array().expect("months");
        assert_eq!(months.len(), 13, "{one}");
        for quantity in ["width-mm", "facial-height-mm"] {
            let last = &months[12][quantity];
            let at = |place: usize| last[place].as_f64().expect("a length");
            assert!(at(0) < at(1) && at(1) < at(2), "{one}");
            assert_eq!(months[0][quantity], serde_json::json!([0.0, 0.0, 0.0]));
        }
    }
    // The same to the letter each time, and as a table for people.
    let again = wallwise(&["judge", SEED, path(&file), "--healing", "--json"]);
    assert_eq!(ran.out, again.out);
    let text = wallwise(&["judge", SEED, path(&file), "--healing"]).out;
    assert!(text.contains("\nHealing\n  An illustration of a teaching model"), "{text}");
    let six = of(healing, "untreated")["months"][6]["width-mm"][1].as_f64().expect("a length");
    let rows: Vec<&str> = text
        .lines()
        .skip_while(|line| !line.starts_with("  No treatment: "))
        .filter(|line| line.contains("width lost, mm") && line.contains("50 %"))
        .collect();
    let told: Vec<&str> = rows[0].split_whitespace().collect();
    assert_eq!(told[told.len() - 2], format!("{six:.1}"), "{}", rows[0]);
}

#[test]
fn nothing_is_said_of_healing_unless_it_is_asked_for_and_a_sound_plan_is_called_the_nearest_itself()
{
    let folder = folder("healing-sound");
    let file = folder.join("plan.toml");
    fs::write(&file, done(&["case", SEED, "--plan"])).expect("written");
    assert!(json_of(&wallwise(&["judge", SEED, path(&file), "--json"]))["healing"].is_null());
    assert!(!wallwise(&["judge", SEED, path(&file)]).out.contains("\nHealing\n"));
    let json = json_of(&wallwise(&["judge", SEED, path(&file), "--json", "--healing"]));
    let yours = of(&json["healing"], "yours");
    assert_eq!(yours["whose"], serde_json::json!(["yours", "nearest-sound"]));
    assert!(yours["words"].as_str().is_some_and(|words| words.contains("sound as it is")));
}
