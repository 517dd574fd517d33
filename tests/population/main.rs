//! The population table: published figures against what the population draws make of them.
//!
//! The draws are those before the proof that a case can be solved, which keeps nearly all of them
//! (a test beside the draws); a site whose parts do not fit together is left out.

use engine::cases::population::{self, Kind, Outcome, QUANTITIES, Row, Statistic};
use std::collections::BTreeSet;

const TABLE: &str = include_str!("../data/population.csv");

/// Where the seeds begin: any other place would do, but it stays where it is.
const FIRST: u64 = 1_000_000;
/// How many seeds are drawn.
const SEEDS: u32 = 20_000;

fn rows() -> Vec<Row> {
    population::rows(TABLE).expect("the table is read")
}

#[test]
fn twenty_thousand_draws_agree_with_every_confirmed_figure_that_is_generated() {
    let rows = rows();
    let outcomes = population::table(&rows, FIRST, SEEDS, |_| {});
    let of = |row: &Row| outcomes.iter().find(|outcome| outcome.id == row.id);
    let said = |outcome: &Outcome| {
        let [low, high] = outcome.interval.unwrap_or([f64::NAN; 2]);
        format!("{}: {:.3} of {}, {low:.3} to {high:.3}", outcome.id, outcome.ours, outcome.count)
    };
    let held = rows.iter().filter(|row| row.kind == Kind::Held);
    let faults: Vec<String> = held
        .filter_map(|row| match of(row) {
            None => Some(format!("{}: nothing was measured", row.id)),
            Some(outcome) if outcome.agrees() == Some(true) => None,
            Some(outcome) => Some(said(outcome)),
        })
        .collect();
    assert!(faults.is_empty(), "outside their intervals:\n{}", faults.join("\n"));
    // Of a rare kind too few would say nothing.
    for row in rows.iter().filter(|row| row.kind == Kind::Held) {
        assert!(of(row).is_some_and(|outcome| outcome.count >= 50), "{}: too few", row.id);
    }
    let drawn = of(&rows[rows.iter().position(|row| row.id == "cause-caries").expect("a row")]);
    assert!(drawn.is_some_and(|outcome| outcome.count > SEEDS * 19 / 20), "most seeds give a site");
}

#[test]
fn every_row_says_how_it_was_established_and_why_no_test_holds_it_where_none_does() {
    let marks = ["confirmed", "confirmed (secondary)", "from memory", "ours"];
    let mut seen = BTreeSet::new();
    for row in rows() {
        assert!(seen.insert(row.id.clone()), "{}: twice", row.id);
        assert!(marks.contains(&row.mark.as_str()), "{}: {}", row.id, row.mark);
        assert!(!row.source.is_empty(), "{}: no source", row.id);
        match row.kind {
            Kind::Placeholder => {
                assert_ne!(row.mark, "confirmed", "{}: confirmed, so no placeholder", row.id);
            }
            _ => assert_eq!(row.mark, "confirmed", "{}", row.id),
        }
        let whole = match row.statistic {
            Statistic::Share => row.value.is_some() && row.n.is_some(),
            Statistic::Mean => row.value.is_some() && row.spread.is_some() && row.n.is_some(),
            Statistic::Between => row.value < row.spread,
            Statistic::Above => true,
        };
        if matches!(row.kind, Kind::Held | Kind::Beside) {
            assert!(row.groups[0].quantity.is_some() && whole, "{}: not whole", row.id);
            assert!(!row.measured.is_empty(), "{}: measured how?", row.id);
        } else if row.mark == "confirmed" {
            assert!(!row.note.is_empty(), "{}: why is it not held?", row.id);
        }
    }
    assert!(seen.len() > 180, "{}", seen.len());
}

#[test]
fn every_quantity_is_asked_for_and_every_later_row_of_molars_names_teeth_that_are_not_drawn() {
    let rows = rows();
    for quantity in QUANTITIES {
        let asked = |row: &Row| {
            row.groups.iter().any(|group| group.quantity.is_some_and(|one| one.id == quantity.id))
        };
        assert!(rows.iter().any(asked), "{} is never asked for", quantity.id);
    }
    for row in rows.iter().filter(|row| row.note.starts_with("a molar")) {
        assert_eq!(row.kind, Kind::Later, "{}", row.id);
        assert!(row.groups[0].teeth.iter().any(|tooth| tooth % 10 > 5), "{}", row.id);
    }
}

#[test]
fn both_sides_of_each_disagreement_come_from_one_truth() {
    // Sockets by hand and sections of the same plates; skulls and sections of the same walls; a
    // margin measured directly and sounded: each pair is held, and the two halves differ as read.
    let rows = rows();
    let outcomes = population::table(&rows, FIRST, 4_000, |_| {});
    let ours =
        |id: &str| outcomes.iter().find(|one| one.id == id).unwrap_or_else(|| panic!("{id}")).ours;
    assert!(ours("crest-read-front") > ours("crest-mean-front") + 0.1);
    assert!(ours("crest-read-premolars") > ours("crest-mean-premolars") + 0.1);
    assert!(ours("apparent-over-true-fenestration") > 0.04);
    assert!(ours("margin-direct") > ours("margin-sounded") + 0.1);
    for (direct, read) in [
        ("crest-at-most-1-front", "crest-read-front"),
        ("crest-at-most-1-premolars", "crest-read-premolars"),
        ("43-dehiscence", "apparent-dehiscence"),
        ("margin-direct", "margin-sounded"),
    ] {
        for id in [direct, read] {
            let row = rows.iter().find(|row| row.id == id).unwrap_or_else(|| panic!("{id}"));
            assert_eq!(row.kind, Kind::Held, "{id}");
        }
    }
}
