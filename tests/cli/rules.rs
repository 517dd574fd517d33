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

#[test]
fn a_set_with_a_protocol_is_checked_by_it_and_says_what_it_decides() {
    let file = shipped("one-school-s-line.set.toml");
    let said = done(&["set", "check", path(&file)]);
    for words in [
        "Protocol of this set, for residents",
        "at 2.5 mm, not at 2 mm; published figures run from 2 to 3 mm",
        "Your set holds: \u{201c}Any facial loss in a site that shows is staged.\u{201d}",
        " cases, 0 findings\n",
    ] {
        assert!(said.contains(words), "expected {words} in\n{said}");
    }
    let set = json(&["set", "check", path(&file), "--json"]);
    assert_eq!(set["protocol"]["level"], "resident");
    assert_eq!(set["protocol"]["rules"].as_array().map(Vec::len), Some(3));
    let findings = set["cases"].as_array().expect("cases").iter().map(|case| &case["findings"]);
    assert!(findings.into_iter().all(|all| all.as_array().is_some_and(Vec::is_empty)), "{set}");
    // Without its protocol the same expectations do not come true.
    let text = fs::read_to_string(&file).expect("the set");
    let (head, rest) = text.split_once("[protocol]").expect("a protocol");
    let (_, cases) = rest.split_once("[[case]]").expect("a case");
    let plain = folder("set-plain").join("plain.set.toml");
    fs::copy(
        shipped("placed-along-the-socket.plan.toml"),
        plain.with_file_name("placed-along-the-socket.plan.toml"),
    )
    .expect("copied");
    fs::write(&plain, format!("{head}[[case]]{cases}")).expect("written");
    let ran = wallwise(&["set", "check", path(&plain)]);
    assert_eq!(ran.code, Some(1), "{}", ran.out);
    for rule in ["platform-too-far-facial", "wide-facial-loss-in-one-stage"] {
        assert!(ran.out.contains(&format!("{rule}: expected")), "{}", ran.out);
    }
}

#[test]
fn a_protocol_outside_what_is_published_is_refused_with_the_spread_and_its_line() {
    let file = folder("set-outside").join("outside.set.toml");
    let protocol =
        "[[protocol.band]]\nrule = \"membrane-short-of-intact-bone\"\nfrom = 2.0\nto = 5.0\n";
    let text = set("plan = \"proof\"\nword = \"sound\"")
        .replace("[[case]]", &format!("{protocol}\n[[case]]"));
    fs::write(&file, text).expect("written");
    let ran = wallwise(&["set", "check", path(&file)]);
    assert_eq!(ran.code, Some(2));
    let expected = ":11:6: protocol.band 1: to: found 5 mm; published figures run from 2 to 3 mm";
    assert!(ran.talk.contains(expected), "{}", ran.talk);
}

#[test]
fn what_a_set_may_move_is_listed_with_the_limits() {
    let text = done(&["explain", "membrane-short-of-intact-bone"]);
    assert!(text.contains("A set may move the limit at 2 mm from 2 to 3 mm."), "{text}");
    let rule = json(&["explain", "membrane-short-of-intact-bone", "--json"]);
    let limits = rule["movable"].as_array().expect("limits");
    assert!(limits.iter().any(|one| one["at"] == 2.0 && one["least"] == 2.0 && one["most"] == 3.0));
    // Its lax side is unsafe: the strictest figure that is published stays.
    let pressure = done(&["explain", "systolic-pressure-too-high"]);
    assert!(pressure.contains("the limit at 200 mmHg from 160 to 200 mmHg"), "{pressure}");
    assert!(!pressure.contains("the limit at 160 mmHg"), "{pressure}");
}

#[test]
fn one_plan_is_judged_by_a_set_and_the_verdict_says_what_it_would_be_without() {
    let folder = folder("judge-set");
    let plan = folder.join("facial.plan.toml");
    let sound = done(&["case", "3002", "--plan"]);
    let line = sound.lines().find(|line| line.starts_with("offset-facial-mm")).expect("an offset");
    fs::write(&plan, sound.replace(line, "offset-facial-mm = -0.8")).expect("written");
    let set = shipped("one-school-s-line.set.toml");
    let free = wallwise(&["judge", "1.1.3002.0", path(&plan)]);
    assert_eq!(free.code, Some(0), "{}", free.out);
    let bound = wallwise(&["judge", "1.1.3002.0", path(&plan), "--set", path(&set)]);
    assert_eq!(bound.code, Some(1), "{}", bound.out);
    let words = "Here your set draws the limit at 2 mm, not at 1.5 mm; between the two, sources differ. Without it this would be debated.";
    assert!(bound.out.contains(words), "{}", bound.out);
    assert!(bound.out.contains("Protocol of this set"), "{}", bound.out);
    let judged =
        json_of(&wallwise(&["judge", "1.1.3002.0", path(&plan), "--set", path(&set), "--json"]));
    let mut verdicts = judged["verdicts"].as_array().expect("verdicts").iter();
    let facial = verdicts.find(|one| one["rule"] == "platform-too-far-facial").expect("it speaks");
    assert_eq!(facial["words"]["protocol"], words);
    assert_eq!(facial["band"].as_array().map(Vec::len), Some(2), "{}", facial["band"]);
    assert_eq!(judged["protocol"]["level"], "resident");
}
