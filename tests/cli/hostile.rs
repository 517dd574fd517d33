//! Broken, hostile, oversized and later files and addresses: refused with everything that is wrong,
//! where, and a way out; never crashed on.

use std::fs;
use std::path::PathBuf;
use std::time::{Duration, Instant};

use super::tool::{Ran, done, folder, path, wallwise};

/// A file in a folder of its own.
fn file(name: &str, bytes: impl AsRef<[u8]>) -> PathBuf {
    let file = folder(&format!("hostile-{name}")).join("file.toml");
    fs::write(&file, bytes).expect("written");
    file
}

/// Runs, and expects a refusal: exit 2, nothing on the result stream, one error with a hint, no
/// panic and no character that moves a terminal's cursor.
fn refused(arguments: &[&str]) -> Ran {
    let started = Instant::now();
    let ran = wallwise(arguments);
    assert_eq!((ran.code, ran.out.as_str()), (Some(2), ""), "{arguments:?}: {}", ran.talk);
    assert!(ran.talk.starts_with("error: "), "{}", ran.talk);
    assert_eq!(ran.talk.matches("error: ").count(), 1, "{}", ran.talk);
    assert!(!ran.talk.contains("panicked"), "{}", ran.talk);
    let control = ran.talk.chars().find(|letter| letter.is_control() && *letter != '\n');
    assert_eq!(control, None, "{arguments:?}");
    assert!(ran.talk.len() < 40_000, "{arguments:?}: {} bytes of talk", ran.talk.len());
    assert!(started.elapsed() < Duration::from_secs(30), "{arguments:?} took too long");
    ran
}

/// The case file of a seed with some lines replaced, by how they begin.
fn case_with(edits: &[(&str, &str)]) -> String {
    edits.iter().fold(done(&["case", "7", "--toml"]), |text, (from, to)| {
        let line = text.lines().find(|line| line.starts_with(from));
        let line = line.unwrap_or_else(|| panic!("expected {from} in\n{text}")).to_owned();
        text.replacen(&line, to, 1)
    })
}

#[test]
fn every_fault_of_a_case_is_told_at_once_with_line_column_and_the_nearest_name() {
    let text = case_with(&[
        ("tooth = ", "tooth = 16"),
        ("length-mm = ", "length-mm = -4.0"),
        ("neck-mm = ", "neck-mm = nan"),
        ("taper = ", "tapre = 0.25"),
        ("concavity-mm = ", "concavity-mm = inf"),
        ("sex = ", "sex = \"femal\""),
    ]);
    let file = file("case", &text);
    let said = refused(&["case", path(&file)]).talk;
    let place = |start: &str| {
        let line = text.lines().position(|line| line.starts_with(start)).expect("the line") + 1;
        format!("file.toml:{line}:")
    };
    for (start, says) in [
        ("tooth", "one root"),
        ("length-mm = -4", "site.root.length-mm: found -4, expected 4 to 28"),
        ("neck-mm = nan", "site.root.neck-mm: found nan, which is no number"),
        ("tapre", "site.root.tapre: no such key; did you mean \"taper\"?"),
        ("concavity-mm", "readings.sections.concavity-mm: found an infinite number"),
        ("sex", "patient.sex: found \"femal\"; did you mean \"female\"?"),
    ] {
        let told = said.lines().any(|line| line.contains(&place(start)) && line.contains(says));
        assert!(told, "expected {} … {says} in\n{said}", place(start));
    }
    assert!(said.starts_with("error: 7 faults in "), "six, and the missing taper: {said}");
    assert!(said.contains("hint: scenarios/template.case.toml"), "{said}");
}

#[test]
fn an_outline_that_crosses_itself_is_refused_by_name() {
    let bow = "outline-mm = [[0.0, 0.0], [2.0, 2.0], [2.0, 0.0], [0.0, 2.0]]";
    let plan = format!(
        "format = 1\nkind = \"plan\"\n[graft]\nmembrane-{bow}\n[flap]\nflap-outline-mm = [[0.0, 0.0], [nan, 1.0], [1.0, 0.05]]\n"
    );
    let said = refused(&["judge", "7", path(&file("outline", plan))]).talk;
    assert!(
        said.contains(":4:23: graft.membrane-outline-mm: the edge from corner 1 crosses"),
        "{said}"
    );
    assert!(said.contains("found nan, which is no number"), "{said}");
    assert!(said.contains("off the grid, expected steps of 0.1 mm"), "{said}");
}

#[test]
fn a_plan_out_of_range_is_told_what_a_number_may_be() {
    let plan = "format = 1\nkind = \"plan\"\n[implant]\nlength-mm = 40.0\ndiameter-mm = -1.0\n\
                depth-mm = inf\ntilt-degrees = 1e308\n[implnt]\nx = 1\n";
    let said = refused(&["judge", "7", path(&file("range", plan))]).talk;
    for expected in [
        "4:13: implant.length-mm: length: found 40, expected 8.0 to 16.0 mm",
        "5:15: implant.diameter-mm: diameter: found -1, expected 3.0 to 6.0 mm",
        "6:12: implant.depth-mm: depth: found an infinite number, expected -6.0 to 6.0 mm",
        "7:16: implant.tilt-degrees: tilt: found 1e308, expected -35 to 35 degrees",
        "8:2: implnt: no such key; did you mean \"implant\"?",
    ] {
        assert!(said.contains(expected), "expected {expected} in\n{said}");
    }
}

#[test]
fn files_of_a_later_format_or_another_kind_are_refused_with_a_sentence() {
    let later = file("later", "format = 2\nkind = \"set\"\nwhatever = [1]\n");
    for arguments in [
        &["set", "check", path(&later)] as &[&str],
        &["case", path(&later)],
        &["judge", "7", path(&later)],
    ] {
        let said = refused(arguments).talk;
        assert!(said.contains("the file is of format 2, this version reads format 1"), "{said}");
        assert!(said.contains("use a newer version"), "{said}");
        assert!(said.starts_with("error: one fault in "), "{said}");
    }
    let case = file("kind", case_with(&[]));
    let said = refused(&["judge", "7", path(&case)]).talk;
    assert!(said.contains("the file is a case, expected a plan"), "{said}");
}

#[test]
fn addresses_that_lead_nowhere_say_why() {
    for (address, why) in [
        ("1.1.2024", "it has neither four parts nor six"),
        ("9.1.2024.0", "9"),
        ("1.99.2024.0", "99"),
        ("1.1.99999999999999999999.0", "the seed is too large"),
        ("1.1.x.0", "neither a case file nor an address"),
        ("nowhere.toml", "neither a case file nor an address"),
        ("", "neither a case file nor an address"),
        ("99999999999999999999", "the seed 99999999999999999999, which is too large"),
    ] {
        let said = refused(&["case", address]).talk;
        assert!(said.contains(why), "{address}: {said}");
    }
}

#[test]
fn what_is_no_file_is_refused_with_its_name() {
    let folder = folder("hostile-folder");
    let said = refused(&["case", path(&folder)]).talk;
    assert!(said.contains("cannot read ") && said.contains("cause: "), "{said}");
    let said = refused(&["judge", "7", path(&folder.join("none.toml"))]).talk;
    assert!(said.contains("none.toml"), "{said}");
    let said = refused(&["set", "check", path(&file("bytes", [b'a', 0xff, 0xfe]))]).talk;
    assert!(said.contains("cause: invalid utf-8"), "{said}");
}

#[test]
fn oversized_and_endless_files_are_refused_before_they_are_read() {
    let long = file("long", "# ".repeat(600_000));
    let said = refused(&["set", "check", path(&long)]).talk;
    assert!(said.contains("expected at most 1024 kB: split the set"), "{said}");
    let longer = file("longer", vec![b'#'; 9 << 20]);
    let said = refused(&["case", path(&longer)]).talk;
    assert!(said.contains("longer than 8 MiB"), "{said}");
    #[cfg(target_os = "linux")]
    assert!(refused(&["case", "/dev/zero"]).talk.contains("longer than 8 MiB"));
}

#[test]
fn files_made_to_exhaust_the_reader_are_refused_in_time() {
    let head = "format = 1\nkind = \"set\"\n";
    let deep = 200_000;
    for (name, text) in [
        ("brackets", format!("{head}a = {}", "[".repeat(deep))),
        ("closed", format!("{head}a = {}{}", "[".repeat(deep), "]".repeat(deep))),
        ("braces", format!("{head}a = {}", "{a=".repeat(deep))),
        ("dots", format!("{head}a{} = 1\n", ".a".repeat(deep))),
        ("header", format!("{head}[a{}]\n", ".a".repeat(deep))),
        ("keys", head.to_owned() + &(0..60_000).map(|i| format!("k{i} = 1\n")).collect::<String>()),
        ("slips", "a = = \n".repeat(60_000)),
        ("cases", head.to_owned() + &"[[case]]\n".repeat(50_000)),
        ("key", format!("{head}{} = 1\n", "k".repeat(500_000))),
        ("number", format!("{head}a = 1{}\n", "0".repeat(500_000))),
        ("quotes", format!("{head}a = \"\"\"{}", "\"\\u001b".repeat(100_000))),
    ] {
        let file = file(name, text);
        let said = refused(&["set", "check", path(&file)]).talk;
        assert!(said.contains("file.toml:"), "{name}: {said}");
    }
}

#[test]
fn the_first_faults_of_very_many_are_told_and_the_rest_counted() {
    let text = format!(
        "format = 1\nkind = \"plan\"\n{}",
        (0..500).map(|i| format!("k{i} = 1\n")).collect::<String>()
    );
    let said = refused(&["judge", "7", path(&file("many", text))]).talk;
    assert!(said.starts_with("error: 500 faults in "), "{said}");
    assert!(said.contains("k0: no such key"), "{said}");
    assert!(said.contains("\nand 450 more"), "{said}");
}

#[test]
fn a_file_cannot_send_commands_to_the_terminal() {
    let text = "format = 1\nkind = \"set\\u001b[2J\"\n\"\\u001b]0;owned\\u0007\" = 1\n";
    let said = refused(&["set", "check", path(&file("escape", text))]).talk;
    assert!(said.contains("2:8: kind: found \"set\\u{1b}[2J\""), "{said}");
}
