//! `wallwise rules`, `wallwise explain` and `wallwise set check`.

use std::collections::BTreeSet;
use std::fs;

use super::tool::{done, folder, json, json_of, path, shipped, wallwise};

#[test]
fn every_registered_rule_is_listed_once_with_its_limits_and_sources() {
    let book = json(&["rules", "--json"]);
    let rules = book["rules"].as_array().expect("a list");
    let ids: BTreeSet<&str> = rules.iter().filter_map(|rule| rule["id"].as_str()).collect();
    let registered: BTreeSet<&str> = engine::rules::all().map(|rule| rule.id).collect();
    assert_eq!(ids, registered);
    assert_eq!(rules.len(), registered.len(), "none twice");
    assert_eq!(book["rule-set"], engine::debrief::RULE_SET);
    for rule in rules {
        let id = &rule["id"];
        let bands = rule["band"].as_array().map_or(0, Vec::len);
        let situations = rule["situations"].as_array().map_or(0, Vec::len);
        assert_ne!(bands > 0, situations > 0, "{id}: zones or situations");
        assert!(rule["evidence"].as_array().is_some_and(|list| !list.is_empty()), "{id}");
    }
    let text = done(&["rules"]);
    for id in registered {
        assert!(text.contains(&format!("\n  {id}\n")), "{id} is not listed");
    }
}

#[test]
fn every_fact_of_the_ledger_and_every_reason_for_leaving_one_out_is_told() {
    use engine::rules::ledger::{ENTRIES, Standing};
    let text = done(&["rules"]);
    let book = json(&["rules", "--json"]);
    let listed = |key: &str| book[key].as_array().expect("a list").clone();
    let (mut facts, mut left) = (listed("facts").into_iter(), listed("left-out").into_iter());
    for entry in ENTRIES {
        let (said, next) = match entry.standing {
            Standing::Rule => continue,
            Standing::Explanation(fact) => (fact, facts.next()),
            Standing::Left(why) => (why, left.next()),
        };
        assert!(text.contains(&format!("\n  {}\n    {said}\n", entry.id)), "{}", entry.id);
        let next = next.expect(entry.id);
        assert_eq!((&next["ledger"], &next["says"]), (&entry.id.into(), &said.into()));
    }
    assert_eq!((facts.next(), left.next()), (None, None), "nothing more than the ledger has");
}

#[test]
fn a_rule_is_explained_under_its_fixed_headings() {
    let text = done(&["explain", "membrane-short-of-intact-bone"]);
    for heading in [
        "What it asks",
        "Why",
        "How it is measured",
        "Evidence",
        "Where sources differ",
        "Limits of this rule",
    ] {
        assert!(text.contains(heading), "expected {heading} in\n{text}");
    }
    assert!(text.contains("Not clinical advice"), "{text}");
    let alone = json(&["explain", "membrane-short-of-intact-bone", "--json"]);
    let book = json(&["rules", "--json"]);
    let listed = book["rules"].as_array().expect("a list").iter();
    let listed = listed.filter(|rule| rule["id"] == alone["id"]).collect::<Vec<_>>();
    assert_eq!(listed, [&alone]);
}

#[test]
fn an_unknown_rule_is_answered_with_the_nearest_name_and_nonsense_with_the_list() {
    let near = wallwise(&["explain", "membrane-short-of-intact-bon"]);
    assert_eq!((near.code, near.out.as_str()), (Some(2), ""));
    let expected = "error: found the rule \"membrane-short-of-intact-bon\", which does not exist\n  \
                    hint: did you mean \"membrane-short-of-intact-bone\"?\n";
    assert_eq!(near.talk, expected);
    let far = wallwise(&["explain", "zzz"]);
    assert_eq!(far.code, Some(2));
    assert!(far.talk.contains("hint: `wallwise rules` lists them all"), "{}", far.talk);
    let part = wallwise(&["explain", "oral-crest"]);
    assert_eq!(part.code, Some(2));
    assert!(
        part.talk.contains("in their name: membrane-short-over-the-oral-crest"),
        "{}",
        part.talk
    );
}

/// A set of one case, with an expectation.
fn set(expect: &str) -> String {
    format!(
        "format = 1\nkind = \"set\"\ntitle = \"One\"\naim = \"Check a set.\"\nlevel = \"student\"\n\
         mode = \"study\"\n\n[[case]]\nseed = 7\n\n[[case.expect]]\n{expect}\n"
    )
}

#[test]
fn a_set_whose_expectations_come_true_is_as_expected() {
    let folder = folder("set");
    fs::write(folder.join("sound.plan.toml"), done(&["case", "7", "--plan"])).expect("written");
    let levered = "plan = \"proof\"\nchange = { technique = \"lever-on-facial-plate\" }\n\
                   word = \"compromised\"\n\
                   verdicts = { facial-plate-levered = \"outside-likely-to-compromise\" }";
    for expect in [
        "plan = \"proof\"\nword = \"sound\"",
        "plan-file = \"sound.plan.toml\"\nword = \"sound\"",
        levered,
    ] {
        let file = folder.join("one.set.toml");
        fs::write(&file, set(expect)).expect("written");
        let ran = wallwise(&["set", "check", path(&file)]);
        assert_eq!((ran.code, ran.talk.as_str()), (Some(0), ""), "{}", ran.out);
        assert!(ran.out.contains("as expected"), "{}", ran.out);
        assert!(ran.out.ends_with("1 case, 0 findings\n"), "{}", ran.out);
    }
}

#[test]
fn an_expectation_that_does_not_come_true_is_a_finding_with_what_was_found_instead() {
    let file = folder("set-unmet").join("one.set.toml");
    let expect = "plan = \"proof\"\nword = \"unsafe\"\n\
                  verdicts = { facial-plate-levered = \"unsafe\" }";
    fs::write(&file, set(expect)).expect("written");
    let ran = wallwise(&["set", "check", path(&file)]);
    assert_eq!((ran.code, ran.talk.as_str()), (Some(1), ""), "{}", ran.out);
    assert!(ran.out.contains("expected the word \"unsafe\", found \"sound\""), "{}", ran.out);
    assert!(
        ran.out.contains("facial-plate-levered: expected \"unsafe\", found \"ideal\""),
        "{}",
        ran.out
    );
    assert!(ran.out.ends_with("1 case, 2 findings\n"), "{}", ran.out);

    fs::write(&file, set("plan-file = \"none.plan.toml\"\nword = \"sound\"")).expect("written");
    let ran = wallwise(&["set", "check", path(&file)]);
    assert_eq!(ran.code, Some(1), "{}", ran.talk);
    assert!(ran.out.contains("cannot read"), "{}", ran.out);
}

#[test]
fn a_shipped_set_does_what_it_expects() {
    let said = done(&["set", "check", path(&shipped("1-the-intact-wall.set.toml"))]);
    assert!(said.contains("as expected"), "{said}");
    assert!(said.ends_with(" cases, 0 findings\n"), "{said}");
}

#[test]
fn the_templates_load_and_are_judged() {
    let (case, plan) = (shipped("template.case.toml"), shipped("template.plan.toml"));
    let shown = done(&["case", path(&case)]);
    assert!(shown.starts_with("Every key at once\n"), "{shown}");
    let judged = json_of(&wallwise(&["judge", path(&case), path(&plan), "--json"]));
    // First answers to everything are nobody's good plan.
    assert_ne!(judged["plan"], "sound");
    assert!(judged["verdicts"].as_array().is_some_and(|verdicts| verdicts.len() > 10));
}
