//! `wallwise statements`: attempts that learners saved, as statements.

use super::tool::{Ran, folder, path, wallwise};
use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};

/// Two finished attempts, at 1.1.8.0 and 1.1.9.0, outside any set.
fn saved() -> String {
    let file =
        Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/data/attempts-format-2.json");
    fs::read_to_string(file).expect("a file")
}

fn written(folder: &Path, name: &str, text: &str) -> PathBuf {
    let file = folder.join(name);
    fs::write(&file, text).expect("written");
    file
}

/// Each verb by its last word, with the address of what it is about.
fn told(ran: &Ran) -> Vec<(String, String)> {
    let list: Vec<Value> = serde_json::from_str(&ran.out).expect("JSON");
    let last = |one: &Value| one.as_str().and_then(|it| it.rsplit('/').next()).map(str::to_owned);
    let about = |one: &Value| one["object"]["id"].as_str().unwrap_or_default().to_owned();
    list.iter().map(|one| (last(&one["verb"]["id"]).expect("a verb"), about(one))).collect()
}

fn count(told: &[(String, String)], verb: &str) -> usize {
    told.iter().filter(|(one, _)| one == verb).count()
}

#[test]
fn cases_outside_sets_are_told_by_their_addresses_and_a_learner_by_a_code() {
    let folder = folder("statements");
    let file = written(&folder, "Ada Lovelace.json", &saved());
    let say = || wallwise(&["statements", path(&file), "--base", "https://example.org/room"]);
    let ran = say();
    assert_eq!((ran.code, ran.talk.as_str()), (Some(0), ""));
    assert_eq!(ran.out, say().out, "what has a time of its own says the same twice");
    let told = told(&ran);
    assert_eq!([count(&told, "attempted"), count(&told, "completed")], [2, 3]);
    let case = "https://example.org/room/set/outside-sets/case/1-1-8-0";
    assert!(told.iter().any(|(verb, about)| verb == "completed" && about == case), "{told:?}");
    assert!(!ran.out.contains("Ada"));
    let list: Vec<Value> = serde_json::from_str(&ran.out).expect("JSON");
    let code = list[0]["actor"]["account"]["name"].as_str().expect("an account");
    assert!(code.starts_with("learner-") && code.len() == 24, "{code}");
    assert_eq!(list[0]["actor"]["account"]["homePage"], "https://example.org/room");
}

#[test]
fn a_set_that_is_named_is_told_as_a_whole_by_its_own_cases() {
    let folder = folder("statements-set");
    let set = "format = 1\nkind = \"set\"\ntitle = \"Two walls\"\naim = \"Hand out.\"\nlevel = \"student\"\nmode = \"study\"\n\n[[case]]\naddress = \"1.1.8.0\"\n\n[[case]]\naddress = \"1.1.9.0\"\n";
    let set = written(&folder, "two-walls.set.toml", set);
    let mut text = saved().replace(
        "\"mode\":\"study\"",
        "\"set\":\"two-walls\",\"local\":{\"level\":\"student\"},\"mode\":\"study\"",
    );
    for (place, address) in [(1, "1.1.8.0"), (2, "1.1.9.0")] {
        text = text.replace(&format!("#/case/{address}"), &format!("#/set/two-walls/{place}"));
    }
    let text = text.replacen("\"records\"", "\"learner\":\"heron\",\"records\"", 1);
    let file = written(&folder, "saved.json", &text);
    let ran = wallwise(&["statements", path(&file), "--set", path(&set)]);
    assert_eq!((ran.code, ran.talk.as_str()), (Some(0), ""), "{}", ran.out);
    let told = told(&ran);
    let whole = "https://wallwise.invalid/room/set/two-walls";
    assert!(told.contains(&("completed".to_owned(), whole.to_owned())), "{told:?}");
    assert!(told.contains(&("completed".to_owned(), format!("{whole}/case/case-2"))), "{told:?}");
    assert!(ran.out.contains("\"name\":\"heron\"") && ran.out.contains("Two walls"));
    // Where nobody names the set its cases go by their addresses.
    let ran = wallwise(&["statements", path(&file)]);
    assert!(ran.out.contains(&format!("{whole}/case/1-1-9-0")), "{}", ran.out);
}

#[test]
fn what_is_broken_is_set_aside_the_rest_is_told_and_nothing_at_all_has_a_way_out() {
    let folder = folder("statements-broken");
    let broken = saved().replacen("\"carry-out\":\"chart\"", "\"carry-out\":\"lunch\"", 1);
    let ran = wallwise(&["statements", path(&written(&folder, "broken.json", &broken))]);
    assert_eq!(ran.code, Some(1), "{}", ran.talk);
    assert!(ran.talk.contains("set aside") && ran.talk.contains("lunch"), "{}", ran.talk);
    assert_eq!(count(&told(&ran), "attempted"), 1);
    let none = "{\"kind\":\"grades\",\"format\":2,\"records\":[]}";
    let ran = wallwise(&["statements", path(&written(&folder, "none.json", none))]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(ran.talk.contains("that the room saved"), "{}", ran.talk);
    let file = written(&folder, "saved.json", &saved());
    let ran = wallwise(&["statements", path(&file), "--base", "example.org/"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(ran.talk.contains("example.org/"), "{}", ran.talk);
}
