//! `wallwise set key`, `set blueprint`, `set forms` and `set link`: what an instructor prepares a class with.

use super::tool::{done, folder, json, path, shipped, wallwise};
use engine::rules::all;
use serde_json::Value;

const SET: &str = "1-the-intact-wall.set.toml";

#[test]
fn the_key_tells_of_each_case_what_it_hides_a_sound_plan_the_usual_faults_and_what_to_ask() {
    let key = done(&["set", "key", path(&shipped(SET))]);
    assert!(key.contains("Not clinical advice") && key.contains("Not for learners"), "{key}");
    let cases = json(&["set", "check", path(&shipped(SET)), "--json"])["cases"]
        .as_array()
        .map(Vec::len)
        .expect("cases");
    for part in ["\nCase ", "\nOne sound plan\n", "\nUsual faults: ", "\nWhat to ask: "] {
        assert_eq!(key.matches(part).count(), cases, "{part:?}");
    }
    assert!(
        key.contains("without allergies\n    outside: likely to compromise: Ask for allergies"),
        "{key}"
    );
}

#[test]
fn the_blueprint_has_every_rule_either_in_play_in_a_case_or_left_out() {
    let found = json(&["set", "blueprint", path(&shipped(SET)), "--json"]);
    let ids = |part: &str, of: fn(&Value) -> Option<&str>| -> Vec<String> {
        found[part].as_array().expect("a list").iter().filter_map(of).map(str::to_owned).collect()
    };
    let in_play = ids("rules", |rule| rule["rule"].as_str());
    let left_out = ids("left-out", Value::as_str);
    let mut told: Vec<&str> = in_play.iter().chain(&left_out).map(String::as_str).collect();
    told.sort_unstable();
    let mut every: Vec<&str> = all().map(|rule| rule.id).collect();
    every.sort_unstable();
    assert_eq!(told, every);
    assert!(!in_play.is_empty() && !left_out.is_empty());
    // A case has as many rules as name it.
    for case in found["cases"].as_array().expect("cases") {
        let named = found["rules"].as_array().expect("rules").iter();
        let named = named.filter(|rule| {
            rule["cases"].as_array().is_some_and(|all| all.contains(&case["place"]))
        });
        assert_eq!(named.count() as u64, case["rules"].as_u64().unwrap_or(0), "{case}");
    }
    let said = done(&["set", "blueprint", path(&shipped(SET))]);
    assert!(in_play.iter().chain(&left_out).all(|id| said.contains(id)), "{said}");
}

#[test]
fn each_code_has_cases_of_its_own_and_the_same_ones_whenever_it_is_asked() {
    let text = std::fs::read_to_string(shipped(SET)).expect("the shipped set");
    let text = text.replacen("mode = \"study\"", "mode = \"assessment\"\nforms = true", 1);
    let file = folder("forms").join("forms.set.toml");
    std::fs::write(&file, &text).expect("a place to write");
    let both = done(&["set", "forms", path(&file), "heron", "linnet"]);
    let alone = done(&["set", "forms", path(&file), "heron"]);
    let of = |said: &str, code: &str| -> Vec<String> {
        let part = said.split(&format!("Code {code}\n")).nth(1).unwrap_or_default();
        let lines = part.lines().take_while(|line| line.starts_with("  "));
        lines.filter_map(|line| line.split([' ', ':']).nth(3).map(str::to_owned)).collect()
    };
    let [heron, linnet] = [of(&both, "heron"), of(&both, "linnet")];
    let cases = text.matches("[[case]]").count();
    assert_eq!((heron.len(), of(&alone, "heron")), (cases, heron.clone()), "{both}");
    assert!(heron.iter().zip(&linnet).all(|(one, other)| one != other), "{both}");
    let refused = wallwise(&["set", "forms", path(&shipped(SET)), "heron"]);
    assert_eq!(refused.code, Some(2));
    assert!(refused.talk.contains("forms = true"), "{}", refused.talk);
}

#[test]
fn a_set_has_one_link_under_any_room_and_one_with_a_case_written_out_has_none() {
    let bare = wallwise(&["set", "link", path(&shipped(SET))]);
    assert!(bare.code == Some(0) && bare.out.starts_with("#/given/1."), "{}", bare.out);
    assert!(bare.talk.contains("left behind: 7 questions to ask"), "{}", bare.talk);
    let room = "https://room.example/w/#";
    let under = wallwise(&["set", "link", path(&shipped(SET)), "--room", room]);
    assert_eq!(under.out, format!("https://room.example/w/{}", bare.out));
    // A case written out, as a table of a set.
    let text = done(&["case", "2024", "--toml"]);
    let lines = text.lines().filter(|one| !["format = 1", "kind = \"case\""].contains(one));
    let lines = lines.map(|one| match (one.strip_prefix("[["), one.strip_prefix('[')) {
        (Some(name), _) => format!("[[case.{name}\n"),
        (None, Some(name)) => format!("[case.{name}\n"),
        (None, None) => format!("{one}\n"),
    });
    let head = "format = 1\nkind = \"set\"\ntitle = \"a\"\naim = \"b\"\nlevel = \"student\"\nmode = \"study\"\n[[case]]\n";
    let set = format!("{head}{}", lines.collect::<String>());
    let file = folder("link").join("written.set.toml");
    std::fs::write(&file, set).expect("a place to write");
    let refused = wallwise(&["set", "link", path(&file)]);
    assert_eq!(refused.code, Some(2), "{}", refused.talk);
    assert!(refused.talk.contains("is written out in full"), "{}", refused.talk);
}
