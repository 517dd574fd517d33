//! How hard a case is, and asking for it.

use super::tool::{folder, json, path, wallwise};
use std::fs;

#[test]
fn a_bare_seed_gives_a_case_as_hard_as_is_asked_and_says_how_hard_it_is() {
    let case = json(&["case", "7", "--difficulty", "0.6-0.7", "--json"]);
    let hard = case["difficulty"]["value"].as_f64().expect("a number");
    assert!((0.6..=0.7).contains(&hard), "{hard}");
    let parts = ["rules", "hidden"].map(|key| case["difficulty"][key].as_array().map(Vec::len));
    assert!(parts.iter().all(|count| count.is_some_and(|count| count > 0)), "{parts:?}");
    let address = case["address"].as_str().expect("an address");
    let said = wallwise(&["case", address]);
    let words = case["difficulty"]["words"].as_str().expect("words");
    assert!(said.out.contains(&format!("Difficulty {words}")), "{}", said.out);
}

#[test]
fn a_range_that_is_none_and_a_case_that_is_drawn_already_are_refused_with_a_way_out() {
    let ran = wallwise(&["case", "7", "--difficulty", "0.7-0.6"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.talk.contains("expected two numbers from 0 to 1"), "{}", ran.talk);
    let ran = wallwise(&["case", "1.1.7.0", "--difficulty", "0.3-0.6"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(ran.talk.contains("with --difficulty 0.3-0.6"), "{}", ran.talk);
}

#[test]
fn a_set_asks_for_a_range_and_is_told_what_is_wrong_with_one() {
    let set = |range: &str| {
        let text = format!(
            "format = 1\nkind = \"set\"\ntitle = \"T\"\naim = \"A\"\nlevel = \"student\"\nmode = \"study\"\n[[case]]\nseed = 7\ndifficulty = {range}\n"
        );
        let file = folder("difficulty").join("one.set.toml");
        fs::write(&file, text).expect("written");
        wallwise(&["set", "check", path(&file)])
    };
    let ran = set("[0.7, 1]");
    assert_eq!(ran.code, Some(0), "{}", ran.talk);
    assert!(ran.out.contains("difficulty 0."), "{}", ran.out);
    let ran = set("[0.7, 0.2]");
    assert_eq!(ran.code, Some(2));
    assert!(ran.talk.contains("9:14") || ran.talk.contains("line 9"), "{}", ran.talk);
    assert!(ran.talk.contains("expected two numbers from 0 to 1"), "{}", ran.talk);
    let ran = set("[0.7, 2]");
    assert!(ran.talk.contains("expected 0 to 1"), "{}", ran.talk);
}
