//! `wallwise case --worked`.

use super::tool::{done, wallwise};

#[test]
fn a_worked_case_tells_each_step_what_was_found_and_why() {
    let said = done(&["case", "1.1.2024.339", "--worked"]);
    let places = ["Chart\n", "Examination\n", "Found: Bone sounding", "Implant\n", "Recall\n"];
    let found: Vec<usize> = places.iter().filter_map(|part| said.find(part)).collect();
    assert_eq!(found.len(), places.len(), "{said}");
    assert!(found.is_sorted(), "in the order of care");
    assert!(said.contains("Not clinical advice"), "{said}");
    let diameter = said.lines().position(|line| line.trim_start().starts_with("Diameter: "));
    let why = said.lines().nth(diameter.expect("told") + 1).unwrap_or_default();
    assert!(why.starts_with("    ") && why.contains("mm"), "{why}");
}

#[test]
fn it_is_a_text_for_people_and_says_so_to_programs() {
    let ran = wallwise(&["case", "7", "--worked", "--json"]);
    assert_eq!(ran.code, Some(2));
    assert!(ran.talk.contains("cannot be used with"), "{}", ran.talk);
}
