//! The protocol of a set: read strictly, every fault at once.

use super::*;
use crate::rules::{Debated, Level, Protocol, Side, Worth};

fn with(protocol: &str) -> String {
    format!(
        r#"format = 1
kind = "set"
title = "Own limits"
aim = "Read a protocol."
level = "resident"
mode = "study"
{protocol}

[[case]]
address = "1.1.2024.0"
"#
    )
}

#[test]
fn a_protocol_is_read_with_its_note_its_limits_and_its_sides_and_packs() {
    let set = parse_set(&with(
        r#"
[protocol]
note = "We had failures at two."

[[protocol.band]]
rule = "membrane-short-of-intact-bone"
from = 2
to = 2.5

[[protocol.position]]
rule = "platform-too-far-oral"
holds = "one"
debated = "outside-suboptimal"

[[protocol.position]]
rule = "wide-facial-loss-in-one-stage"
holds = "other"
debated = { v-shaped = "acceptable" }
"#,
    ))
    .unwrap_or_else(|faults| panic!("{faults}"));
    let Protocol { note, bands, positions } = &set.protocol;
    assert_eq!(note.as_deref(), Some("We had failures at two."));
    assert_eq!((bands.len(), bands[0].from, bands[0].to), (1, 2.0, 2.5));
    assert_eq!((positions[0].holds, positions[1].holds), (Side::One, Side::Other));
    assert_eq!(positions[0].debated, Debated::All(Worth::Suboptimal));
    let each = Debated::Each(vec![("v-shaped".to_owned(), Worth::Acceptable)]);
    assert_eq!(positions[1].debated, each);
    assert_eq!(set.local().level, Some(Level::Resident));
    assert_eq!(set.local().check(), Ok(()));
    let packed = serde_json::to_string(&set).unwrap();
    assert_eq!(serde_json::from_str::<Set>(&packed).unwrap(), set, "{packed}");
    let case = set.cases[0].case(set.local()).unwrap();
    assert_eq!(*case.local, set.local());
    // A set that decides nothing otherwise is packed as before.
    let plain = serde_json::to_string(&parse_set(&with("")).unwrap()).unwrap();
    assert!(!plain.contains("\"protocol\":"), "{plain}");
}

#[test]
fn every_fault_of_a_protocol_is_told_at_once_with_its_place_the_spread_and_the_nearest_name() {
    let text = with(
        r#"
[protocol]
nte = "x"

[[protocol.band]]
rule = "membrane-short-of-intact-bon"
from = 2.0
to = 2.5

[[protocol.band]]
rule = "membrane-short-of-intact-bone"
from = 2.0
to = 4.5

[[protocol.band]]
rule = "systolic-pressure-too-high"
from = 160
to = 180

[[protocol.band]]
rule = "gap-too-narrow"
from = 1.5
to = nan

[[protocol.position]]
rule = "facial-plate-levered"
holds = "one"
debated = "acceptable"

[[protocol.position]]
rule = "wide-facial-loss-in-one-stage"
holds = "both"
debated = { v-shapd = "unsafe" }

[[protocol.position]]
rule = "wide-facial-loss-in-one-stage"
holds = "one"
debated = { v-shapd = "acceptable" }
"#,
    );
    let said = parse_set(&text).unwrap_err().to_string();
    for line in [
        "9:1: protocol.nte: no such key; did you mean \"note\"?",
        "12:8: protocol.band 1: rule: found \"membrane-short-of-intact-bon\"; did you mean \"membrane-short-of-intact-bone\"?",
        "19:6: protocol.band 2: to: found 4.5 mm; published figures run from 2 to 3 mm: choose one of these",
        "24:6: protocol.band 3: to: found 180 mmHg, which is laxer: this rule keeps patients safe, and 160 mmHg is the strictest figure published: it stays",
        "29:6: protocol.band 4: to: found nan, which is no number, expected -10000 to 10000",
        "32:8: protocol.position 1: rule: sources agree about this rule: nothing of it is debated, so there is no side to take",
        "38:9: protocol.position 2: holds: found \"both\", expected one of: one, other",
        "39:23: protocol.position 2: debated.v-shapd: found \"unsafe\", expected one of: acceptable, outside-suboptimal",
        "44:11: protocol.position 3: debated: found \"v-shapd\", expected a debated situation of this rule: v-shaped, u-shaped",
    ] {
        assert!(said.contains(line), "expected {line}\nin\n{said}");
    }
    assert_eq!(said.lines().count(), 9, "{said}");
}

#[test]
fn what_is_decided_twice_and_limits_that_pass_each_other_are_told() {
    let twice = with(
        r#"
[[protocol.band]]
rule = "membrane-short-of-intact-bone"
from = 2.0
to = 2.5
[[protocol.band]]
rule = "membrane-short-of-intact-bone"
from = 2.0
to = 3.0
[[protocol.band]]
rule = "restored-too-early"
from = 12
to = 15
[[protocol.position]]
rule = "platform-too-far-oral"
holds = "one"
debated = "acceptable"
[[protocol.position]]
rule = "platform-too-far-oral"
holds = "other"
debated = "acceptable"
"#,
    );
    let said = parse_set(&twice).unwrap_err().to_string();
    let places: Vec<&str> = said.lines().filter_map(|line| line.split(": ").next()).collect();
    assert_eq!(places, ["14:8", "19:6", "25:8"], "{said}");
    assert!(said.contains("decided twice") && said.contains("passes another limit"), "{said}");
}
