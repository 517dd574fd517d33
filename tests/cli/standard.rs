//! `wallwise standard`: pass marks by what judges expect, and by how examiners rated.

use super::planted::{CASES, Learner, saved};
use super::tool::{Ran, done, folder, path, wallwise};
use std::fs;
use std::path::{Path, PathBuf};

/// Twelve learners of whom eight send the patient home without a number and four never sound bone.
fn handed_in(name: &str) -> PathBuf {
    let folder = folder(name);
    for place in 0..12 {
        let learner = Learner {
            code: format!("k-{place:02}"),
            no_number: place < 8,
            no_sounding: (6..10).contains(&place),
        };
        fs::write(folder.join(format!("{}.json", learner.code)), saved(&learner)).expect("written");
    }
    folder
}

fn table(name: &str, text: &str) -> PathBuf {
    let file = folder(name).join("table.csv");
    fs::write(&file, text).expect("a place to write");
    file
}

fn judges(file: &Path, handed_in: &[&str]) -> Ran {
    wallwise(&[&["standard", "judges", path(file)], handed_in].concat())
}

#[test]
fn what_judges_expect_stands_beside_how_hard_each_case_is_and_who_passed_it() {
    let text = format!("judge,{}\none,0.6,0.7,0.5,0.8\ntwo,0.5,0.6,0.6,0.7\n", CASES.join(","));
    let (file, class) = (table("judges", &text), handed_in("judges-class"));
    let said = judges(&file, &[path(&class)]).out;
    // Sums 2.6 and 2.4: mean 2.5, scatter 0.1414, over the root of two 0.1.
    assert!(said.contains("Pass mark: 2.5 of 4 cases, standard error 0.10 cases"), "{said}");
    assert!(said.contains("no mark makes up for one") && said.contains("Not clinical advice"));
    let line = said.lines().find(|line| line.contains(CASES[1])).expect("a line for the case");
    assert!(line.contains("0.70, 0.60; mean 0.65; difficulty 0."), "{line}");
    // Eight plans are faulted for the number; bone that was not sounded fails nobody here.
    assert!(line.ends_with("4 of 12 learners passed"), "{line}");
    // Semicolons and commas, as some programs write numbers, are the same table.
    let other = text.replace(',', ";").replace("0.", "0,");
    assert_eq!(judges(&table("judges-other", &other), &[path(&class)]).out, said);
    let alone = judges(&table("judge", &format!("judge,{}\none,0.6\n", CASES[0])), &[]).out;
    assert!(alone.contains("of one judge nobody can say"), "{alone}");
}

#[test]
fn the_pass_mark_of_ratings_is_where_the_line_of_least_squares_has_the_borderline() {
    let class = handed_in("ratings-class");
    let rating = |place: usize| {
        if place < 6 {
            2
        } else if place < 8 {
            1
        } else {
            4 - place % 2
        }
    };
    let rows = (0..12).map(|place| format!("k-{place:02},{},{}\n", CASES[1], rating(place)));
    let text = format!("learner,case,rating\n{}", rows.collect::<String>());
    let file = table("ratings", &text);
    let said = done(&["standard", "ratings", path(&file), path(&class), "--borderline", "2.5"]);
    let after = |line: &str, words: &str| -> f64 {
        let rest = line.split(words).nth(1).unwrap_or_default();
        rest.split([',', ' ']).next().and_then(|one| one.parse().ok()).expect("a number")
    };
    let rows = said.lines().filter(|line| line.contains(": rated "));
    let pairs: Vec<[f64; 2]> =
        rows.map(|line| [after(line, ": rated "), after(line, "mark ")]).collect();
    assert_eq!(pairs.len(), 12);
    // The normal equations, solved by Cramer's rule from the printed rows.
    let sum = |of: fn(&[f64; 2]) -> f64| pairs.iter().map(of).sum::<f64>();
    let (n, x, y) = (12.0, sum(|one| one[0]), sum(|one| one[1]));
    let (xx, xy) = (sum(|one| one[0] * one[0]), sum(|one| one[0] * one[1]));
    let whole = n * xx - x * x;
    let cut = (y * xx - x * xy) / whole + 2.5 * (n * xy - x * y) / whole;
    let found = after(&said, "Pass mark: ");
    // Marks are printed to a tenth, and the pass mark is.
    assert!((found - cut).abs() < 0.11, "{found}, expected {cut}");
    let most = pairs.iter().map(|one| one[1]).fold(0.0, f64::max);
    assert!(pairs.iter().any(|one| one[1] < most - 1.0), "the marks differ: {pairs:?}");
    let outside = done(&["standard", "ratings", path(&file), path(&class), "--borderline", "0"]);
    assert!(outside.contains("the line is drawn out to it"), "{outside}");
}

#[test]
fn every_fault_of_a_table_is_told_at_once_with_its_line() {
    let text = format!("judge,{},{}\none,0.6,60\ntwo,x,0.5\nthree,0.1\n", CASES[0], CASES[1]);
    let ran = judges(&table("judges-wrong", &text), &[]);
    assert_eq!(ran.code, Some(2));
    for (line, why) in [(2, "found \"60\""), (3, "found \"x\""), (4, "found 2 cells, expected 3")] {
        let told =
            ran.talk.lines().any(|one| one.contains(&format!("line {line}:")) && one.contains(why));
        assert!(told, "line {line}: {}", ran.talk);
    }
    let class = handed_in("ratings-wrong-class");
    let ratings = |text: &str| {
        let file = table("ratings-wrong", text);
        wallwise(&["standard", "ratings", path(&file), path(&class), "--borderline", "2"])
    };
    let ran = ratings("learner,case,grade\nk-00,x,1\n");
    assert!(ran.code == Some(2) && ran.talk.contains("expected one called rating"), "{}", ran.talk);
    let ran = ratings(&format!("learner,case,rating\nk-00,{},2.5\n", CASES[0]));
    assert!(ran.talk.contains("line 2: found the rating \"2.5\""), "{}", ran.talk);
    // A rating without an attempt is told, and no part of the line.
    let rows = ["k-00,1", "k-08,2", "k-10,3", "k-77,4"]
        .map(|row| row.replace(',', &format!(",{},", CASES[1])));
    let ran = ratings(&format!("learner,case,rating\n{}\n", rows.join("\n")));
    assert_eq!(ran.code, Some(1), "{}", ran.talk);
    assert!(ran.out.contains("found no attempt of k-77 at 1.1.7.0 that is over"), "{}", ran.out);
}
