//! Files in, valid forms or every fault out.

use super::*;
use crate::anatomy::Wall;
use crate::cases::{self, Archetype, Group, Spread};
use crate::debrief::PlanWord;
use crate::plan::{Decision, Value};
use crate::rules::Local;
use crate::rules::trial::Trial;

/// A case, with what each archetype brings, in turn.
fn some_cases() -> Vec<Case> {
    Archetype::ALL.iter().map(|archetype| of(*archetype)).collect()
}

fn of(archetype: Archetype) -> Case {
    let asked = cases::Constraints { archetype: Some(archetype), ..Default::default() };
    let spread = match archetype.group() {
        Group::SeveralRoots => Spread::WholeMouth,
        _ => Spread::Teaching,
    };
    cases::generate_as(spread, 3, &asked).unwrap()
}

#[test]
fn every_kind_of_case_reads_back_as_it_was_written() {
    for case in some_cases() {
        let text = write_case(&case);
        assert!(text.starts_with(HEADER) && text.contains("not for treatment"));
        let back = parse_case(&text).unwrap_or_else(|faults| panic!("{faults}\n{text}"));
        assert_eq!(back, Case { address: None, ..case });
    }
}

#[test]
fn a_plan_reads_back_as_it_was_written() {
    let mut trial = Trial::plain();
    trial.outline(Decision::MembraneOutline, &[[-50, -115], [50, -115], [50, 95], [-50, 95]]);
    let text = write_plan(&trial.draft);
    assert!(text.starts_with(HEADER));
    assert_eq!(parse_plan(&text).unwrap(), trial.draft, "{text}");
}

#[test]
fn packed_sets_and_drafts_read_back_from_json() {
    let text = set_text("");
    let set = parse_set(&text).unwrap();
    let packed = serde_json::to_string(&set).unwrap();
    assert_eq!(serde_json::from_str::<Set>(&packed).unwrap(), set, "{packed}");
    let draft = Trial::plain().draft;
    let packed = serde_json::to_string(&draft).unwrap();
    assert_eq!(serde_json::from_str::<Draft>(&packed).unwrap(), draft);
}

fn set_text(more: &str) -> String {
    format!(
        r#"format = 1
kind = "set"
title = "Walls"
aim = "Tell a wall that is there from one that is not."
level = "student"
mode = "study"

[[case]]
address = "1.1.2024.0"
ask = "What would the film have told you?"

[[case.expect]]
plan = "proof"
word = "sound"

[[case.expect]]
plan = "proof"
change = {{ component = "provisional", "diameter-mm" = 6.0, "tip-degrees" = "undecided" }}
word = "compromised"

[[case]]
seed = 7
archetype = "defect-v"
tooth = 11
{more}"#
    )
}

#[test]
fn a_set_holds_addresses_seeds_and_cases_written_out() {
    let case = cases::generate(12).unwrap();
    // Written out inside a set: tables of the case become tables of the set's case.
    let inside: String = write_case(&case)
        .lines()
        .skip(3)
        .map(|line| {
            let line = match line.strip_prefix("[[") {
                Some(rest) => format!("[[case.{rest}"),
                None if line.starts_with('[') => line.replacen('[', "[case.", 1),
                None => line.to_owned(),
            };
            line + "\n"
        })
        .collect();
    let text = set_text(&format!("\n[[case]]\n{inside}"));
    let set = parse_set(&text).unwrap_or_else(|faults| panic!("{faults}\n{text}"));
    assert_eq!(set.cases.len(), 3);
    assert!(matches!(set.cases[0].source, CaseSource::Address(address) if address.seed == 2024));
    let CaseSource::Seed { seed: 7, spread: Spread::Teaching, constraints } = &set.cases[1].source
    else {
        panic!("{:?}", set.cases[1].source)
    };
    assert_eq!(constraints.archetype, Some(Archetype::DefectV));
    assert_eq!(set.cases[2].case(Local::NONE).unwrap(), Case { address: None, ..case });
    let change = &set.cases[0].expect[1].change.0;
    assert_eq!(change.len(), 3);
    assert!(change.contains(&(Decision::Diameter, Some(Value::Number(60)))));
    assert!(change.contains(&(Decision::Tip, None)));
    assert_eq!(set.cases[0].expect[0].word, Some(PlanWord::Sound));
}

/// The faults of a text, as lines.
fn faults(text: &str) -> String {
    parse_set(text).unwrap_err().to_string()
}

#[test]
fn every_fault_of_a_set_is_told_at_once_with_its_place_and_the_nearest_name() {
    let text = r#"format = 1
kind = "set"
titel = "Walls"
aim = ""
level = "studnet"
mode = "study"
[[case]]
seed = -1
archetype = "defect-w"
[[case]]
address = "1.1.x.0"
"#;
    let said = faults(text);
    for expected in [
        "3:1: titel: no such key; did you mean \"title\"?",
        "4:7: aim: found 0 characters",
        "5:9: level: found \"studnet\"; did you mean \"student\"?",
        "8:8: case 1: seed: found -1, expected 0",
        "9:13: case 1: archetype: found \"defect-w\"; did you mean \"defect-",
        "11:11: case 2: address: found the case address \"1.1.x.0\": a part is not a whole number",
        "title: missing",
    ] {
        assert!(said.contains(expected), "{expected}\n---\n{said}");
    }
    let lines: Vec<u32> = parse_set(text).unwrap_err().0.iter().map(|f| f.place.line).collect();
    assert!(lines.is_sorted());
}

#[test]
fn what_is_shown_has_no_time_and_no_verdicts_that_wait() {
    let under = |mode: &str, conditions: &str| {
        let mode = format!("mode = \"{mode}\"\n\n[conditions]\n{conditions}");
        set_text("").replace("mode = \"study\"\n", &mode)
    };
    let shown = parse_set(&under("worked", "opening = \"Read all of it.\"\n")).unwrap();
    assert_eq!((shown.mode, shown.mode.key()), (Mode::Worked, "worked"));
    for mode in ["worked", "study"] {
        for conditions in ["minutes = 40\n", "verdicts = \"after-set\"\n"] {
            let said = faults(&under(mode, conditions));
            assert!(said.contains(&format!("the mode is \"{mode}\"")), "{said}");
        }
    }
    assert!(parse_set(&under("assessment", "minutes = 40\n")).is_ok());
}

#[test]
fn a_later_format_is_refused_with_a_sentence_and_nothing_else() {
    let said = faults("format = 2\nkind = \"set\"\nsomething = 5\n");
    assert_eq!(
        said,
        "1:10: format: the file is of format 2, this version reads format 1: use a newer version"
    );
    let kind = parse_plan(&write_case(&of(Archetype::Restorable))).unwrap_err().to_string();
    assert!(kind.contains("the file is a case, expected a plan"), "{kind}");
}

/// A written case with one line changed.
fn broken(from: &str, to: &str) -> String {
    let asked = cases::Constraints { archetype: Some(Archetype::DefectV), ..Default::default() };
    let case = cases::generate_with(5, &asked).unwrap();
    let text = write_case(&case);
    let line = text.lines().find(|line| line.starts_with(from)).unwrap().to_owned();
    parse_case(&text.replacen(&line, to, 1)).unwrap_err().to_string()
}

#[test]
fn nan_infinities_negative_sizes_and_missing_units_are_refused_by_name() {
    assert!(broken("length-mm", "length-mm = nan").contains("nan, which is no number"));
    assert!(broken("length-mm", "length-mm = -inf").contains("an infinite number"));
    assert!(broken("length-mm", "length-mm = -4.0").contains("found -4, expected 4 to 28"));
    assert!(broken("length-mm", "length = 11.0").contains("did you mean \"length-mm\"?"));
    assert!(broken("length-mm", "length-mm = \"long\"").contains("found text, expected a number"));
    assert!(broken("name", "name = \"a\\nb\"").contains("line break"));
    assert!(broken("tooth", "tooth = 16").contains("one root"));
}

/// A molar written out.
fn molar() -> String {
    include_str!("../../../../scenarios/template.molar.case.toml").to_owned()
}

#[test]
fn teeth_with_several_roots_read_back_as_they_were_written() {
    let case = parse_case(&molar()).unwrap_or_else(|faults| panic!("{faults}"));
    let back = parse_case(&write_case(&case)).unwrap_or_else(|faults| panic!("{faults}"));
    assert_eq!(back, case);
    let packed = serde_json::to_string(&case).unwrap();
    assert_eq!(serde_json::from_str::<Case>(&packed).unwrap(), case);
}

#[test]
fn every_slip_in_a_trunk_and_its_roots_is_told_at_once_with_its_line() {
    let slips = [
        ("furcation-mm = 1.5", "furcation-mm = -1.5"),
        ("name = \"mesial\"", "name = \"mesiall\""),
        ("length-mm = 9.8", "length = 9.8"),
        ("narrowing = 1.0", "narrowing = 1.5"),
    ];
    let mut text = molar();
    for (from, to) in slips {
        assert!(text.contains(from), "{from}");
        text = text.replacen(from, to, 1);
    }
    let said = parse_case(&text).unwrap_err().to_string();
    for expected in [
        "site.trunk.furcation-mm: found -1.5, expected 0.1 to 14",
        "site.trunk.root 1: name: found \"mesiall\"; did you mean \"mesial\"?",
        "site.trunk.root 2: length: no such key; did you mean \"length-mm\"?",
        "site.trunk.narrowing: found 1.5, expected 0.3 to 1",
    ] {
        assert!(said.contains(expected), "{expected}\n{said}");
    }
}

#[test]
fn roots_that_make_no_tooth_are_refused_in_words() {
    let refused = |from: &str, to: &str| {
        let text = molar();
        assert!(text.contains(from), "{from}");
        parse_case(&text.replacen(from, to, 1)).unwrap_err().to_string()
    };
    assert!(
        refused("name = \"distal\"", "name = \"palatal\"")
            .contains("found mesial, palatal, expected")
    );
    assert!(refused("name = \"distal\"", "name = \"mesial\"").contains("found mesial, mesial"));
    assert!(refused("tooth = 46", "tooth = 16").contains("roots of tooth 16"));
    assert!(refused("tooth = 46", "tooth = 48").contains("1 to 7 from the midline"));
    assert!(refused("x-mm = 2.52", "x-mm = 4.5").contains("beside its trunk"));
    assert!(refused("x-mm = 2.52", "x-mm = -0.9").contains("would meet"));
    let both = "[site.root]\nx-mm = 0.0\n\n[site.ridge]";
    assert!(refused("[site.ridge]", both).contains("a root beside a trunk"));
    assert!(
        refused("oral-mm = [[-8.0, -6.6], [0.0, -6.6]", "oral-mm = [[-8.0, -4.4], [0.0, -4.4]")
            .contains("stand out of the ridge")
    );
}

#[test]
fn outlines_that_cross_themselves_or_leave_the_grid_are_refused_by_name() {
    let bow = "outline-mm = [[0.0, 0.0], [1.0, 1.0], [1.0, 0.0], [0.0, 1.0]]";
    assert!(broken("outline-mm", bow).contains("crosses the edge"));
    let off = "outline-mm = [[0.0, 0.0], [1.05, 0.0], [0.0, 1.0]]";
    assert!(broken("outline-mm", off).contains("steps of 0.1 mm"));
    let few = "outline-mm = [[0.0, 0.0], [1.0, 0.0]]";
    assert!(broken("outline-mm", few).contains("expected 3 to 16"));
}

#[test]
fn parts_that_do_not_fit_together_are_refused_although_each_is_in_range() {
    let thin = "oral-mm = [[-8.0, -1.0], [40.0, -1.0]]";
    assert!(broken("oral-mm", thin).contains("stand out of the ridge"));
    let fallen = "crest-mm = [[0.0, 0.0], [-1.0, 2.0]]";
    assert!(broken("crest-mm", fallen).contains("rising"));
}

#[test]
fn a_plan_tells_what_a_number_or_a_word_may_be() {
    let text = "format = 1\nkind = \"plan\"\n[implant]\ndiameter-mm = 4.2\nentry = \"oral-slop\"\nlength = 13.0\n[chart]\nrequests = [\"inr\", \"hba1\"]\n";
    let said = parse_plan(text).unwrap_err().to_string();
    for expected in [
        "4:15: implant.diameter-mm: diameter: found 4.2, expected 3.0 to 6.0 mm in steps of 0.5",
        "did you mean \"oral-slope\"?",
        "6:1: implant.length: no such key; did you mean \"length-mm\"?",
        "8:20: chart.requests: found \"hba1\"; did you mean \"hba1c\"?",
    ] {
        assert!(said.contains(expected), "{expected}\n---\n{said}");
    }
}

#[test]
fn a_plan_file_of_a_set_lies_beside_it() {
    let text = set_text("\n[[case.expect]]\nplan-file = \"../other.toml\"\nword = \"sound\"\n");
    assert!(faults(&text).contains("without a folder"));
    let both =
        set_text("\n[[case.expect]]\nplan-file = \"a.toml\"\nplan = \"proof\"\nword = \"sound\"\n");
    assert!(faults(&both).contains("exactly one of"));
}

#[test]
fn a_written_case_keeps_its_defects_on_their_wall() {
    let case = of(Archetype::OralDefect);
    assert!(case.site.defects_of(Wall::Oral).next().is_some());
    let back = parse_case(&write_case(&case)).unwrap();
    assert_eq!(back.site.defects, case.site.defects);
}

#[test]
fn no_text_however_broken_brings_the_reader_down() {
    let text = write_case(&of(Archetype::DefectV));
    let letters: Vec<char> = text.chars().collect();
    // Cut off everywhere, a few letters apart; then one letter changed, likewise.
    for at in (0..letters.len()).step_by(151) {
        let cut: String = letters[..at].iter().collect();
        // The last table only has comments behind its last key.
        assert!(parse_case(&cut).is_err() || at * 10 > letters.len() * 9, "cut at {at}");
        for strange in ['=', '[', '"', '\u{0}', '9', '\n', 'é'] {
            let mut changed = letters.clone();
            changed[at] = strange;
            let changed: String = changed.into_iter().collect();
            if let Err(faults) = parse_case(&changed) {
                assert!(faults.0.iter().all(|fault| !fault.says.is_empty()));
            }
        }
    }
}

#[test]
fn numbers_at_the_ends_of_what_toml_can_hold_are_refused_in_words() {
    for strange in ["1e400", "99999999999999999999", "-9223372036854775808", "1979-05-27"] {
        let said = broken("length-mm", &format!("length-mm = {strange}"));
        assert!(said.contains("expected"), "{strange}: {said}");
    }
}

#[test]
fn what_a_file_holds_is_shown_without_moving_the_cursor() {
    let said = faults("format = 1\nkind = \"s\\u001b[2Jt\"\n");
    assert!(said.starts_with("2:8: kind: found \"s\\u{1b}[2Jt\""), "{said}");
    assert!(!said.contains('\u{1b}'));
}
