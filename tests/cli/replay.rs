//! `wallwise replay`: attempts that a learner saved.

use super::tool::{done, folder, json, json_of, path, wallwise};
use std::fs;
use std::path::{Path, PathBuf};

fn stored(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/data").join(name)
}

#[test]
fn saved_attempts_are_done_again_and_judged_as_they_were() {
    for (name, count) in [("attempt-format-1.json", 1), ("attempts-format-2.json", 2)] {
        let all = json(&["replay", path(&stored(name)), "--json"]);
        let attempts = all["attempts"].as_array().expect("attempts");
        assert_eq!(attempts.len(), count);
        assert!(attempts.iter().all(|one| one["as-it-was"] == true), "{all}");
        let said = done(&["replay", path(&stored(name))]);
        assert!(said.contains("Not clinical advice"), "{said}");
        let faults = attempts.iter().flat_map(|one| one["faults"].as_array().expect("faults"));
        for fault in faults {
            assert!(said.contains(fault["statement"].as_str().expect("words")), "{said}");
        }
    }
}

#[test]
fn a_mark_cannot_be_written_into_a_file() {
    let text = fs::read_to_string(stored("attempts-format-2.json")).expect("a file");
    let faked = text.replacen("\"verdicts\":\"", "\"verdicts\":\"0", 1);
    let file = folder("replay").join("faked.json");
    fs::write(&file, faked).expect("written");
    let all = json(&["replay", path(&file), "--json"]);
    let honest = json(&["replay", path(&stored("attempts-format-2.json")), "--json"]);
    assert_eq!(all["attempts"][0]["as-it-was"], false);
    assert_eq!(all["attempts"][0]["faults"], honest["attempts"][0]["faults"]);
}

#[test]
fn what_is_broken_is_set_aside_with_its_line_and_the_rest_is_done() {
    let text = fs::read_to_string(stored("attempts-format-2.json")).expect("a file");
    let broken = text.replacen("\"carry-out\":\"chart\"", "\"carry-out\":\"lunch\"", 1);
    let file = folder("replay").join("broken.json");
    fs::write(&file, broken).expect("written");
    let ran = wallwise(&["replay", path(&file), "--json"]);
    assert_eq!(ran.code, Some(1));
    let all = json_of(&ran);
    assert_eq!(all["attempts"].as_array().map(Vec::len), Some(1));
    let aside = all["set-aside"][0].as_str().expect("words");
    assert!(aside.starts_with("line 2:") && aside.contains("lunch"), "{aside}");
}

#[test]
fn what_holds_no_attempt_ends_with_a_way_out() {
    let file = folder("replay").join("none.json");
    fs::write(&file, "{\"kind\":\"grades\",\"format\":2,\"records\":[]}").expect("written");
    let ran = wallwise(&["replay", path(&file)]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(
        ran.talk.contains("grades") && ran.talk.contains("that the room saved"),
        "{}",
        ran.talk
    );
}
