//! Statistics of a class against published tables and what others make of them: `answers.csv` and
//! `item_statistics.csv` of `tests/data`, the tolerance half a unit of the last figure printed.

use learning::class::{Answer, Answers, Components, Items, Reliability, spearman_brown};
use std::collections::BTreeMap;

const ANSWERS: &str = include_str!("../data/answers.csv");
const STATISTICS: &str = include_str!("../data/item_statistics.csv");

/// Rows without comments and heading, cell by cell.
fn rows(table: &str) -> impl Iterator<Item = Vec<&str>> {
    let lines = table.lines().filter(|line| !line.starts_with('#')).skip(1);
    lines.map(|line| line.split(',').collect())
}

fn tables() -> BTreeMap<&'static str, Answers> {
    let mut patterns: BTreeMap<&str, Vec<&[u8]>> = BTreeMap::new();
    for row in rows(ANSWERS) {
        let [table, pattern, count] = row[..] else { panic!("found {row:?}") };
        let count: usize = count.parse().expect("a count");
        patterns.entry(table).or_default().extend(vec![pattern.as_bytes(); count]);
    }
    let of = |patterns: Vec<&[u8]>| {
        Answers::of(patterns.len(), patterns[0].len(), &|person, item| {
            if patterns[person][item] == b'1' { Answer::Right } else { Answer::Wrong }
        })
    };
    patterns.into_iter().map(|(table, patterns)| (table, of(patterns))).collect()
}

/// A statistic of a table by its name in the file.
fn statistic(answers: &Answers, name: &str, item: Option<usize>) -> Option<f64> {
    if let Some(item) = item {
        let item = Items::of(answers).each[item - 1];
        return match name {
            "difficulty" => item.difficulty.value(),
            "corrected" => item.corrected,
            "alpha-without" => item.alpha_without,
            "upper-lower" => item.upper_lower,
            _ => panic!("found {name} of an item"),
        };
    }
    let cases = u32::try_from(answers.items()).expect("few");
    let persons = answers.persons() as f64;
    let sample = (persons / (persons - 1.0)).sqrt();
    let whole = Reliability::of(&answers.complete())?;
    let parts = Components::of(answers)?;
    match name {
        "alpha" => Some(whole.alpha),
        "spread" => Some(whole.spread),
        "spread-sample" => Some(whole.spread * sample),
        "error" => Some(whole.error),
        "error-sample" => Some(whole.error * sample),
        "doubled" => spearman_brown(whole.alpha, 2.0),
        "persons" => Some(parts.persons.value()),
        "cases" => Some(parts.cases.value()),
        "rest" => Some(parts.rest.value()),
        "phi" => parts.phi(cases),
        "relative" => parts.relative(cases),
        _ => panic!("found {name}"),
    }
}

#[test]
fn every_published_statistic_is_met_to_its_last_figure() {
    let tables = tables();
    let marks = ["confirmed (run)", "computed", "confirmed (secondary)"];
    let (mut compared, mut faults) = (0, Vec::new());
    for row in rows(STATISTICS) {
        let [table, name, item, value, mark] = row[..] else { panic!("found {row:?}") };
        assert!(marks.contains(&mark), "{row:?}");
        let found = statistic(&tables[table], name, item.parse().ok()).expect("a number");
        let decimals = value.split_once('.').map_or(0, |(_, after)| after.len());
        let half_a_unit = 0.5 / 10_f64.powi(i32::try_from(decimals).expect("few"));
        let expected: f64 = value.parse().expect("a number");
        if (found - expected).abs() > half_a_unit * (1.0 + 1e-6) {
            faults.push(format!("{table} {name} {item}: {found}, expected {value}"));
        }
        compared += 1;
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
    assert_eq!(compared, 71);
}

#[test]
fn mixed_divisors_are_told_from_the_right_ones() {
    // The trap: p q against a variance of n - 1 gives 0.295952 for lsat-6.
    let answers = &tables()["lsat-6"];
    let whole = Reliability::of(&answers.complete()).expect("a reliability");
    let total = whole.spread * whole.spread;
    let items = total * (1.0 - whole.alpha * 4.0 / 5.0);
    let mixed = 5.0 / 4.0 * (1.0 - items / (total * 1000.0 / 999.0));
    assert!((mixed - 0.295_952).abs() < 5e-7, "{mixed}");
    assert!((whole.alpha - mixed).abs() > 9e-4);
}
