//! Molars at the command line: a thin septum is staged, a broad one takes an implant today.

use std::fs;
use std::path::{Path, PathBuf};

use serde_json::Value;

use super::tool::{done, folder, json, json_of, path, wallwise};

/// Lower first molars of the whole mouth, by address.
const THIN: &str = "1.3.22.0";
const WIDE: &str = "1.3.315.0";

/// The file of a case's sound plan.
fn plan_of(folder: &Path, address: &str) -> PathBuf {
    let plan = folder.join("plan.toml");
    fs::write(&plan, done(&["case", address, "--plan"])).expect("written");
    plan
}

fn rules_at_fault(json: &Value) -> Vec<&str> {
    let verdicts = json["verdicts"].as_array().expect("verdicts");
    let faults = verdicts.iter().filter(|verdict| {
        verdict["verdict"].as_str().is_some_and(|zone| zone.starts_with("outside"))
    });
    faults.filter_map(|verdict| verdict["rule"].as_str()).collect()
}

#[test]
fn a_bare_seed_spread_over_the_whole_mouth_has_an_address_of_its_own() {
    let case = json(&["case", "7", "--spread", "whole-mouth", "--json"]);
    let address = case["address"].as_str().expect("an address");
    assert!(address.starts_with("1.3.7."), "{address}");
    assert_eq!(json(&["case", address, "--json"]), case);
}

#[test]
fn a_molar_with_a_thin_septum_is_staged_and_its_roots_are_parted() {
    let folder = folder("thin-septum");
    let plan = plan_of(&folder, THIN);
    let text = fs::read_to_string(&plan).expect("the plan");
    for expected in ["course = \"graft-and-return\"", "sectioning = \"sectioned\""] {
        assert!(text.contains(expected), "expected {expected} in\n{text}");
    }
    let ran = wallwise(&["judge", THIN, path(&plan)]);
    assert_eq!(ran.code, Some(0), "{}", ran.out);
    assert!(ran.out.contains("\nThis plan is sound. "), "{}", ran.out);
}

#[test]
fn a_molar_with_a_broad_septum_takes_an_implant_today() {
    let plan = plan_of(&folder("wide-septum"), WIDE);
    let text = fs::read_to_string(&plan).expect("the plan");
    assert!(text.contains("course = \"place-today\""), "{text}");
    let ran = wallwise(&["judge", WIDE, path(&plan)]);
    assert_eq!(ran.code, Some(0), "{}", ran.out);
    assert!(ran.out.contains("implant-held-by-no-septum"), "{}", ran.out);
}

#[test]
fn placing_in_a_thin_septum_and_drawing_roots_together_are_named() {
    let folder = folder("thin-placed");
    let plan = plan_of(&folder, WIDE);
    let ran = wallwise(&["judge", THIN, path(&plan), "--json"]);
    assert_eq!(ran.code, Some(1), "{}", ran.out);
    let json = json_of(&ran);
    assert!(rules_at_fault(&json).contains(&"septum-too-thin-for-an-implant"), "{json}");

    let whole = fs::read_to_string(&plan)
        .expect("the plan")
        .replace("sectioning = \"sectioned\"", "sectioning = \"whole\"");
    fs::write(&plan, whole).expect("written");
    let json = json_of(&wallwise(&["judge", WIDE, path(&plan), "--json"]));
    assert_eq!(rules_at_fault(&json), ["several-roots-taken-whole"], "{json}");
}
