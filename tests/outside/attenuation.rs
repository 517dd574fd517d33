//! The engine's attenuation coefficients against `tests/data/attenuation.csv`.

use engine::imaging::materials::{ROWS, WATER};

const TABLE: &str = include_str!("../data/attenuation.csv");

/// Material, coefficients at 40 and 60 keV, mark.
fn rows() -> Vec<(&'static str, [f64; 2], &'static str)> {
    let rows = TABLE.lines().filter(|line| !line.starts_with('#')).skip(1);
    rows.map(|line| {
        let cells: Vec<&str> = line.splitn(6, ',').collect();
        let [name, _, low, high, mark, _] = cells.as_slice() else {
            panic!("found {line}, expected six cells")
        };
        let number = |text: &str| text.parse().expect("a number");
        (*name, [number(low), number(high)], *mark)
    })
    .collect()
}

#[test]
fn the_engine_s_coefficients_are_those_of_the_table_to_the_last_figure() {
    let ours = ROWS.into_iter().chain([("water", WATER)]);
    assert_eq!(rows().len(), ROWS.len() + 1);
    for (name, values) in ours {
        let row = rows().into_iter().find(|row| row.0 == name);
        assert_eq!(row.map(|row| row.1), Some(values), "{name}");
    }
}

#[test]
fn every_coefficient_says_how_it_was_established() {
    for (name, _, mark) in rows() {
        assert!(["computed", "ours"].contains(&mark), "{name}: {mark}");
    }
}
