//! Population draws: one case, a set of them, and the table that they are held to.

use std::fs;

use super::tool::{done, folder, json, json_of, path, wallwise};

#[test]
fn a_bare_seed_is_spread_as_it_is_asked_to_and_its_address_says_so() {
    let drawn = json(&["case", "7", "--spread", "population", "--json"]);
    let address = drawn["address"].as_str().expect("a drawn case has an address");
    assert!(address.starts_with("1.2.7."), "{address}");
    assert_eq!(json(&["case", address, "--json"]), drawn);
    assert!(done(&["case", address]).contains("One sound plan"));
    let teaching = json(&["case", "7", "--spread", "teaching", "--json"]);
    assert_eq!(teaching, json(&["case", "7", "--json"]));
    assert_ne!(teaching["case"], drawn["case"]);
}

#[test]
fn only_a_bare_seed_can_be_spread_and_only_in_two_ways() {
    let ran = wallwise(&["case", "1.1.7.0", "--spread", "population"]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(ran.talk.contains("with --spread population"), "{}", ran.talk);
    assert!(ran.talk.contains("hint: these say how a bare seed is drawn"), "{}", ran.talk);
    let ran = wallwise(&["case", "7", "--spread", "wide"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.talk.contains("teaching") && ran.talk.contains("population"), "{}", ran.talk);
}

#[test]
fn a_set_says_how_its_seeds_are_spread_and_a_case_may_say_otherwise() {
    let head = "format = 1\nkind = \"set\"\ntitle = \"As they come\"\naim = \"Meet what walks in.\"\n\
                level = \"student\"\nmode = \"study\"\nspread = \"population\"\n";
    let file = folder("spread").join("as-they-come.set.toml");
    let check = |cases: &str| {
        fs::write(&file, format!("{head}{cases}")).expect("written");
        wallwise(&["set", "check", path(&file)])
    };
    let population = json(&["case", "7", "--spread", "population", "--json"]);
    let teaching = json(&["case", "7", "--json"]);
    let title = |of: &serde_json::Value| of["case"]["title"].as_str().expect("a title").to_owned();
    let ran = check("[[case]]\nseed = 7\n[[case]]\nseed = 7\nspread = \"teaching\"\n");
    assert_eq!(ran.code, Some(0), "{}{}", ran.out, ran.talk);
    for (place, of) in [(1, &population), (2, &teaching)] {
        let line = format!("  {place}. {}: as expected", title(of));
        assert!(ran.out.contains(&line), "expected {line} in\n{}", ran.out);
    }
    let ran = check("[[case]]\nseed = 7\narchetype = \"defect-v\"\n");
    assert!(ran.talk.contains("population cases have no archetype"), "{}", ran.talk);
    let ran = check("[[case]]\naddress = \"1.2.7.0\"\nspread = \"population\"\n");
    assert!(ran.talk.contains("are for a seed; expected none of them here"), "{}", ran.talk);
    let ran = check("[[case]]\nseed = 7\nspread = \"populaton\"\n");
    assert!(ran.talk.contains("did you mean \"population\"?"), "{}", ran.talk);
}

#[test]
fn the_table_tells_every_figure_with_its_source_and_what_was_drawn() {
    let ran = wallwise(&["population", "--seeds", "1000", "--json"]);
    let table = json_of(&ran);
    let rows = table["rows"].as_array().expect("rows");
    assert!(rows.len() > 180, "{}", rows.len());
    let held = rows.iter().filter(|row| row["kind"] == "held");
    let differ = held.filter(|row| row["agrees"] != true).count();
    assert_eq!(ran.code, Some(i32::from(differ > 0)), "{differ}: a difference is a finding");
    let caries = rows.iter().find(|row| row["id"] == "cause-caries").expect("the row");
    let ours = caries["ours"].as_f64().expect("a share");
    assert!((0.15..0.30).contains(&ours), "{ours}");
    assert!(caries["agrees-from"].as_f64() < Some(0.226), "{caries}");

    let text = wallwise(&["population", "--seeds", "100", "--from", "5"]).out;
    for expected in
        ["Not clinical advice", "100 seeds from 5 on", "Not drawn yet", "none-at-4, at 11-14"]
    {
        assert!(text.contains(expected), "expected {expected} in\n{text}");
    }
}
