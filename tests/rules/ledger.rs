//! The ledger of evidence: every entry became a rule, an explanation, or is left out for a reason.

use engine::cases::population::cells;
use engine::rules::ledger::{ENTRIES, Standing};
use engine::rules::{Agreement, all};
use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

/// Id and agreement of each entry, as the ledger lists them.
fn listed() -> Vec<(String, String)> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("data/ledger_entries.csv");
    let text = fs::read_to_string(&path).unwrap_or_else(|fault| panic!("{fault}"));
    let mut lines = text.lines().filter(|line| !line.starts_with('#') && !line.is_empty());
    assert_eq!(lines.next(), Some("id,agreement"));
    lines
        .map(|line| match cells(line).as_slice() {
            [id, agreement] => (id.clone(), agreement.clone()),
            other => panic!("{other:?}"),
        })
        .collect()
}

#[test]
fn every_entry_of_the_ledger_has_its_standing_in_its_order_and_none_is_made_up() {
    let listed: Vec<String> = listed().into_iter().map(|(id, _)| id).collect();
    let standing: Vec<String> = ENTRIES.iter().map(|entry| entry.id.to_owned()).collect();
    assert_eq!(listed, standing);
    assert_eq!(listed.iter().collect::<BTreeSet<_>>().len(), listed.len(), "an entry twice");
}

#[test]
fn what_the_ledger_calls_contested_is_nowhere_called_settled() {
    let listed = listed();
    let mut faults = Vec::new();
    for entry in ENTRIES.iter().filter(|entry| entry.standing == Standing::Rule) {
        let contested = listed.iter().any(|(id, how)| id == entry.id && how == "C");
        let rules: Vec<_> = all().filter(|rule| rule.ledger == entry.id).collect();
        let open = rules
            .iter()
            .any(|rule| rule.agreement == Agreement::Contested || rule.positions.is_some());
        if contested && !open {
            faults.push(entry.id);
        }
    }
    assert!(faults.is_empty(), "{faults:?}");
}
