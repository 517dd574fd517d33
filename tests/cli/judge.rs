//! `wallwise judge`: a sound plan, an edited one, and every field of a verdict.

use std::fs;
use std::path::{Path, PathBuf};

use serde_json::Value;

use super::tool::{done, folder, json_of, path, wallwise};

/// Drawn cases, upper and lower, front and side.
const SEEDS: [&str; 3] = ["7", "12", "2024"];

/// A case file and the file of its sound plan.
fn files(folder: &Path, seed: &str) -> (PathBuf, PathBuf) {
    let (case, plan) = (folder.join("case.toml"), folder.join("plan.toml"));
    fs::write(&case, done(&["case", seed, "--toml"])).expect("written");
    fs::write(&plan, done(&["case", seed, "--plan"])).expect("written");
    (case, plan)
}

/// The text with the line of a key replaced.
fn with(text: &str, key: &str, value: &str) -> String {
    let line = text.lines().find(|line| line.starts_with(&format!("{key} = ")));
    let line = line.unwrap_or_else(|| panic!("expected {key} in\n{text}"));
    text.replacen(line, &format!("{key} = {value}"), 1)
}

/// Answers to whatever chance may bring to an edited plan; those that nothing asks are not read.
fn with_answers(text: &str) -> String {
    let answers = [
        ("extraction", "broken-plate = \"keep\"\nlost-tip = \"image-and-refer\""),
        ("implant", "torn-lining = \"patch\""),
        ("closure", "bleeds-again = \"press\"\nswollen-floor = \"press-and-call\""),
        (
            "returns",
            "numb-lip = \"same-day\"\nbare-membrane = \"rinse-and-keep\"\ninfected-wound = \"drain\"",
        ),
    ];
    answers.iter().fold(text.to_owned(), |text, (step, answer)| {
        text.replacen(&format!("[{step}]\n"), &format!("[{step}]\n{answer}\n"), 1)
    })
}

#[test]
fn what_comes_by_chance_is_told_asks_for_an_answer_and_is_judged() {
    let folder = folder("chance");
    // Levering breaks the plate of this case.
    let (case, plan) = files(&folder, SEEDS[1]);
    let text = fs::read_to_string(&plan).expect("the plan");
    let text = with(&text, "technique", "\"lever-on-facial-plate\"");
    fs::write(&plan, &text).expect("written");
    let ran = wallwise(&["judge", path(&case), path(&plan)]);
    assert_eq!(ran.code, Some(2), "{}", ran.out);
    assert!(ran.talk.contains("undecided: broken-plate; this came by chance"), "{}", ran.talk);
    fs::write(&plan, with_answers(&text)).expect("written");
    let ran = wallwise(&["judge", path(&case), path(&plan)]);
    assert_eq!((ran.code, ran.talk.as_str()), (Some(1), ""), "{}", ran.out);
    assert!(ran.out.contains("\nThe facial plate: A piece of the facial plate broke away"));
    assert!(ran.out.contains("broken-plate-misjudged"), "{}", ran.out);
    assert!(ran.out.contains("  Your answer: press it back and keep it.\n"), "{}", ran.out);
    let json = json_of(&wallwise(&["judge", path(&case), path(&plan), "--json"]));
    let event = &json["events"][0];
    assert_eq!((&event["decision"], &event["answer"]), (&"broken-plate".into(), &"keep".into()));
    assert!(event["lines"][0].as_str().is_some_and(|line| line.contains("by chance")));
    // By its address the same case meets the same event.
    let by_seed = wallwise(&["judge", SEEDS[1], path(&plan)]);
    assert_eq!(by_seed.out, ran.out);
}

#[test]
fn the_plan_that_the_tool_prints_is_sound_on_the_case_that_it_prints() {
    for seed in SEEDS {
        let (case, plan) = files(&folder(&format!("sound-{seed}")), seed);
        let ran = wallwise(&["judge", path(&case), path(&plan)]);
        assert_eq!((ran.code, ran.talk.as_str()), (Some(0), ""), "{}", ran.out);
        assert!(ran.out.contains("\nThis plan is sound. "), "{}", ran.out);
        assert!(ran.out.contains("Not clinical advice"), "{}", ran.out);
        assert!(!ran.out.contains("What to change first"), "{}", ran.out);
    }
}

#[test]
fn the_room_for_an_implant_is_told_in_sizes_and_millimetres() {
    let (case, plan) = files(&folder("room"), SEEDS[1]);
    let ran = wallwise(&["judge", path(&case), path(&plan)]);
    let room = &json_of(&wallwise(&["judge", path(&case), path(&plan), "--json"]))["room"];
    let words = room["words"].as_str().expect("words");
    assert!(ran.out.contains(&format!("\nRoom\n  {words}\n")), "{}", ran.out);
    assert_eq!(room["sizes-tried"], 63);
    assert!(room["placements-tried"].as_u64() >= Some(50_000), "{room}");
    assert!(room["sizes"].as_u64() > Some(0), "{room}");
    // The plan is sound where it stands, so it has some way to go, and how far is told.
    let play = &room["yours"];
    assert!(play["oral-mm"].is_number() && play["apical-mm"].is_number(), "{room}");
    assert!(words.contains(&format!("{} of 63 stock sizes", room["sizes"])), "{words}");
    // Moved past what is left, it has a fault of its place.
    let text = fs::read_to_string(&plan).expect("the plan");
    let line =
        text.lines().find(|line| line.starts_with("offset-facial-mm = ")).expect("an offset");
    let at: f64 = line.split_whitespace().nth(2).and_then(|it| it.parse().ok()).expect("a number");
    let left = play["facial-mm"].as_f64().expect("a length");
    let moved = with(&text, "offset-facial-mm", &format!("{:.1}", at + left + 0.1));
    fs::write(&plan, moved).expect("written");
    let room = &json_of(&wallwise(&["judge", path(&case), path(&plan), "--json"]))["room"];
    assert!(room["yours"].is_null(), "{room}");
}

#[test]
fn a_case_by_address_and_the_same_case_by_file_get_the_same_verdicts() {
    let (case, plan) = files(&folder("same"), SEEDS[0]);
    let by_file = json_of(&wallwise(&["judge", path(&case), path(&plan), "--json"]));
    let by_seed = json_of(&wallwise(&["judge", SEEDS[0], path(&plan), "--json"]));
    assert_eq!(by_file["verdicts"], by_seed["verdicts"]);
    assert_eq!(by_file["mark"], by_seed["mark"]);
    assert_eq!(by_file["case"], Value::Null);
    assert!(by_seed["case"].as_str().is_some_and(|address| address.starts_with("1.")));
}

#[test]
fn an_edited_plan_is_a_finding_that_names_the_fault_and_what_mends_it() {
    let folder = folder("edited");
    let (case, plan) = files(&folder, SEEDS[0]);
    let edited = with(
        &fs::read_to_string(&plan).expect("the plan"),
        "technique",
        "\"lever-on-facial-plate\"",
    );
    let file = folder.join("edited.toml");
    fs::write(&file, edited).expect("written");
    let ran = wallwise(&["judge", path(&case), path(&file)]);
    assert_eq!((ran.code, ran.talk.as_str()), (Some(1), ""), "{}", ran.out);
    assert!(ran.out.contains("\nThis plan is compromised. "), "{}", ran.out);
    let fault = "[outside: likely to compromise] facial-plate-levered";
    assert!(ran.out.contains(fault), "{}", ran.out);

    let json = json_of(&wallwise(&["judge", path(&case), path(&file), "--json"]));
    let sound = json_of(&wallwise(&["judge", path(&case), path(&plan), "--json"]));
    assert_eq!(json["plan"], "compromised");
    let percent = |json: &Value| json["mark"]["percent"].as_f64().expect("a mark");
    assert!(percent(&json) < percent(&sound), "a fault costs");
    let group = &json["groups"][0];
    assert_eq!(group["rules"][0], "facial-plate-levered");
    assert_eq!(group["cost"], 3);
}

#[test]
fn every_verdict_carries_every_field() {
    let (case, plan) = files(&folder("fields"), SEEDS[1]);
    let text = fs::read_to_string(&plan).expect("the plan");
    let text = with_answers(&with(&text, "technique", "\"lever-on-facial-plate\""));
    fs::write(&plan, with(&text, "debridement", "\"nothing\"")).expect("written");
    let json = json_of(&wallwise(&["judge", path(&case), path(&plan), "--json"]));
    let mark = &json["mark"];
    let full = mark["full-weight"].as_f64().expect("a full weight");
    let lost: f64 = mark["lost"]
        .as_array()
        .expect("a list")
        .iter()
        .filter_map(|part| part["weight"].as_f64())
        .sum();
    let set_aside = mark["set-aside"].as_f64().expect("a weight set aside");
    // The mark is its parts (practice, section 2): 100 x what was earned over what could be.
    let percent = 100.0 * (full - set_aside - lost) / (full - set_aside);
    assert!((mark["percent"].as_f64().expect("a mark") - percent).abs() < 1e-9, "{mark}");

    let verdicts = json["verdicts"].as_array().expect("verdicts");
    assert!(verdicts.len() > 20, "{} verdicts", verdicts.len());
    let mut faults = 0;
    for verdict in verdicts {
        let rule = verdict["rule"].as_str().expect("a rule");
        for text in ["ledger", "step", "verdict"] {
            let found = verdict[text].as_str();
            assert!(found.is_some_and(|text| !text.is_empty()), "{rule}: {text}");
        }
        assert!(verdict["unit"].is_string(), "{rule}");
        assert!(verdict["cost"].is_u64(), "{rule}");
        let bands = verdict["band"].as_array().expect("zones");
        let number = verdict["measured"].as_f64();
        assert_ne!(number.is_some(), verdict["situation"].is_string(), "{rule}: one of the two");
        assert_eq!(number.is_some(), !bands.is_empty(), "{rule}: a number has zones");
        if let Some(number) = number {
            // The zone that holds the number, as any reader of the JSON would look it up.
            let holds = bands.iter().any(|band| {
                band["zone"] == verdict["verdict"]
                    && band["from"].as_f64().is_none_or(|from| from <= number + 5e-4)
                    && band["to"].as_f64().is_none_or(|to| number - 5e-4 <= to)
            });
            assert!(holds, "{rule}: {number} is not {} in {bands:?}", verdict["verdict"]);
        }
        for words in ["measured", "asked", "why"] {
            let said = verdict["words"][words].as_str();
            assert!(said.is_some_and(|said| !said.is_empty()), "{rule}: {words}");
        }
        // What is no fault costs nothing and needs no mending.
        let fault = verdict["verdict"]
            .as_str()
            .is_some_and(|word| word.starts_with("outside") || word == "unsafe");
        assert_eq!(verdict["cost"] != 0, fault, "{rule}");
        let mend = verdict["words"]["mend"].as_str().expect("what mends it");
        assert_eq!(!mend.is_empty(), fault, "{rule}: {mend}");
        faults += usize::from(fault);
        let sources = verdict["words"]["sources"].as_array().expect("sources");
        assert!(!sources.is_empty(), "{rule}: nobody says so");
    }
    assert!(faults >= 2, "two choices were spoilt");
}

#[test]
fn a_plan_that_the_jaw_cannot_hold_is_judged_and_not_crashed_on() {
    let folder = folder("absurd");
    let mut judged = 0;
    for seed in SEEDS {
        let (case, plan) = files(&folder, seed);
        let plan = fs::read_to_string(&plan).expect("the plan");
        if !plan.contains("length-mm = ") {
            continue;
        }
        let absurd: [&[(&str, &str)]; 3] = [
            &[("length-mm", "16.0"), ("diameter-mm", "6.0"), ("depth-mm", "6.0")],
            &[("offset-facial-mm", "6.0"), ("tilt-degrees", "35.0"), ("length-mm", "16.0")],
            &[("offset-distal-mm", "-4.0"), ("tip-degrees", "-25.0"), ("depth-mm", "-6.0")],
        ];
        for edits in absurd {
            let text = edits.iter().fold(plan.clone(), |text, (key, to)| with(&text, key, to));
            let text = with_answers(&text);
            let file = folder.join("absurd.toml");
            fs::write(&file, text).expect("written");
            let ran = wallwise(&["judge", path(&case), path(&file), "--json"]);
            assert_eq!((ran.code, ran.talk.as_str()), (Some(1), ""), "{edits:?}: {}", ran.out);
            let plan = json_of(&ran)["plan"].as_str().expect("a word").to_owned();
            assert!(plan == "unsafe" || plan == "compromised", "{edits:?}: {plan}");
            assert!(!ran.out.contains("NaN"), "{}", ran.out);
            judged += 1;
        }
    }
    assert!(judged >= 3, "expected a seed whose sound plan places an implant");
}

#[test]
fn a_plan_with_undecided_steps_is_told_what_is_undecided() {
    let folder = folder("undecided");
    let (case, plan) = files(&folder, SEEDS[0]);
    let text = fs::read_to_string(&plan).expect("the plan");
    let text: String = text
        .lines()
        .filter(|line| !line.starts_with("technique = ") && !line.starts_with("debridement = "))
        .map(|line| format!("{line}\n"))
        .collect();
    fs::write(&plan, text).expect("written");
    let ran = wallwise(&["judge", path(&case), path(&plan)]);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""));
    assert!(ran.talk.contains("still undecided: technique, debridement"), "{}", ran.talk);
    assert!(ran.talk.contains("hint: decide what is undecided"), "{}", ran.talk);
}

#[test]
fn the_oral_side_is_named_for_its_jaw_wherever_a_person_reads() {
    for seed in SEEDS {
        let (case, plan) = files(&folder(&format!("sides-{seed}")), seed);
        let chart = done(&["case", seed]);
        let named = if chart.contains(", lower ") { "lingual" } else { "palatal" };
        let judged = wallwise(&["judge", path(&case), path(&plan)]).out;
        // What the mouth takes in is no side of the jaw.
        for text in [chart, judged].map(|text| text.replace("direct oral anticoagulant", "")) {
            let mut words = text.split(|letter: char| !letter.is_alphanumeric() && letter != '-');
            assert!(words.all(|word| !matches!(word, "oral" | "Oral" | "orally")), "{text}");
            assert!(text.to_lowercase().contains(named), "{text}");
        }
    }
}
