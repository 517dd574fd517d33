//! The teaching model of healing against the bounds and published means in `tests/data`, drawn patient
//! by patient through the functions that the page's bands are made of.

use engine::anatomy::{Jaw, Kind};
use engine::cases::population::cells;
use engine::events::{Chance, Matter};
use engine::healing::{Lost, Patient, Reads, Treatment};
use engine::rules::trial::Trial;
use engine::units::Mm;
use std::collections::BTreeMap;

const TABLE: &str = include_str!("../data/healing_bounds.csv");
/// Patients of each group: the error of a mean is below 0.03 mm.
const PATIENTS: i32 = 15_000;
/// Width that goes orally beside an implant: no part of what was measured facially.
const ORALLY: f64 = 0.62;

/// Facial plate at the crest, mean and spread, millimetres (Heimes 2021, confirmed).
const FRONT: Plates = (Jaw::Maxilla, Kind::CentralIncisor, 0.76, 0.49);
const PREMOLAR: Plates = (Jaw::Maxilla, Kind::FirstPremolar, 1.40, 0.75);
const MOLAR: Plates = (Jaw::Maxilla, Kind::Molar, 1.42, 0.74);
const LOWER_BACK: Plates = (Jaw::Mandible, Kind::Molar, 1.20, 0.96);
/// No lower tooth loses its plate at once.
const WHOLE: Plates = (Jaw::Mandible, Kind::CentralIncisor, 0.76, 0.49);

type Plates = (Jaw, Kind, f64, f64);

/// Sites of a group, in equal parts; and the thinnest plate that belongs to it.
fn sites(group: &str) -> (&'static [Plates], f64) {
    match group {
        "mix" => (&[FRONT, FRONT, PREMOLAR, MOLAR], 0.0),
        "posterior" => (&[PREMOLAR, MOLAR, LOWER_BACK], 0.0),
        "front" => (&[FRONT], 0.0),
        "front-thick" => (&[FRONT], 1.0),
        "front-whole" => (&[WHOLE], 0.0),
        "front-and-premolar" => (&[FRONT, PREMOLAR], 0.0),
        _ => panic!("found the group {group}"),
    }
}

fn treatment(key: &str) -> Treatment {
    use Treatment::{GraftedImplant, Implant, Nothing, Preserved};
    let all = [Nothing, Preserved, Implant, GraftedImplant];
    all.into_iter().find(|one| one.key() == key).unwrap_or_else(|| panic!("found {key}"))
}

fn quantity(key: &str, lost: Lost, months: f64) -> f64 {
    let after = lost.after(months);
    match key {
        "width" => after.width,
        "facial-width" => Lost { width: lost.width - ORALLY, ..lost }.after(months).width,
        "facial-height" => after.facial,
        _ => panic!("found the quantity {key}"),
    }
}

/// Sites of a group with lognormal plates, so many patients of each row alike.
fn drawn(group: &str, chance: &mut Chance) -> Vec<(Reads, Patient)> {
    let (plates, least) = sites(group);
    let mut of = plates.iter().cycle();
    let mut patients = Vec::new();
    while patients.len() < PATIENTS as usize {
        let (jaw, kind, mean, spread) = *of.next().expect("a group has sites");
        let spread = (1.0 + (spread / mean) * (spread / mean)).ln().sqrt();
        let plate = mean * (spread * chance.standard() - spread * spread / 2.0).exp();
        if plate >= least {
            let reads = Reads { kind, jaw, plate: Mm::new(plate) };
            patients.push((reads, Patient::drawn(reads, chance)));
        }
    }
    patients
}

#[test]
fn the_model_keeps_every_bound_that_its_sources_set() {
    let mut chance = Chance::of(&Trial::plain().case, Matter::Fan);
    let mut groups = BTreeMap::new();
    let mut faults = Vec::new();
    let rows: Vec<Vec<String>> =
        TABLE.lines().filter(|line| !line.starts_with('#')).skip(1).map(cells).collect();
    assert_eq!(rows.len(), 12);
    for row in &rows {
        let [id, group, what, with, than, months, statistic, low, high, said, source, mark] =
            row.as_slice()
        else {
            panic!("found {row:?}, expected twelve cells")
        };
        let number = |text: &str| text.parse::<f64>().expect("a number");
        let months = number(months);
        let patients = groups.entry(group).or_insert_with(|| drawn(group, &mut chance));
        let mut found: Vec<f64> = patients
            .iter()
            .map(|(reads, patient)| {
                let of = |key: &str| quantity(what, patient.lost(*reads, treatment(key)), months);
                // What a treatment saves against another.
                if than.is_empty() { of(with) } else { of(than) - of(with) }
            })
            .collect();
        let value = if statistic == "median" {
            found.sort_by(f64::total_cmp);
            found[found.len() / 2]
        } else {
            found.iter().sum::<f64>() / f64::from(PATIENTS)
        };
        println!("{id:22} {value:.2}, {low} to {high} ({said}: {source}, {mark})");
        if !(number(low)..=number(high)).contains(&value) {
            faults.push(format!("{id}: {value:.3}, expected {low} to {high}"));
        }
        let marks = ["confirmed", "confirmed (secondary)", "from memory"];
        assert!(marks.contains(&mark.as_str()) && !source.is_empty(), "{id}: {mark}");
    }
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}
