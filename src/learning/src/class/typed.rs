//! What somebody types to set a standard: read all at once, with everything that is wrong, and written
//! down as the tables that `wallwise standard` reads.

use super::standard::{A_CHANCE, Angoff, Borderline, Rated};
use crate::csv::Csv;
use engine::units::decimal;

/// A number as people type one, with a point or a comma; nothing where it is none.
#[must_use]
pub fn number(text: &str) -> Option<f64> {
    decimal(&text.trim().replace(',', "."))
}

/// A judge's chance, 0 to 1.
///
/// # Errors
/// What was found instead.
pub fn chance(text: &str) -> Result<f64, String> {
    let read = number(text).filter(|one| (0.0..=1.0).contains(one));
    read.ok_or_else(|| format!("found \"{text}\", expected {A_CHANCE}"))
}

/// An examiner's rating, a whole step of a scale.
///
/// # Errors
/// What was found instead.
pub fn rating(text: &str) -> Result<u8, String> {
    let whole = number(text).filter(|one| one.fract() == 0.0 && (0.0..=100.0).contains(one));
    // A whole number of at most a hundred.
    whole.map(|one| one as u8).ok_or_else(|| {
        format!("found the rating \"{text}\", expected a whole step of the scale, 0 to 100")
    })
}

/// What judges typed, one after the other, a text for each case. Whoever typed nothing is no judge;
/// nothing where nobody is.
///
/// # Errors
/// A sentence for each number that is none, and for each judge who left cases out.
pub fn judges(cases: &[String], typed: &[Vec<String>]) -> Result<Option<Angoff>, Vec<String>> {
    let (mut all, mut wrong) = (Vec::new(), Vec::new());
    for (place, of_judge) in
        (1..).zip(typed).filter(|(_, one)| one.iter().any(|text| is_said(text)))
    {
        let mut chances = Vec::new();
        for (case, text) in cases.iter().zip(of_judge).filter(|(_, text)| is_said(text)) {
            match chance(text) {
                Ok(chance) => chances.push(chance),
                Err(why) => wrong.push(format!("Judge {place}, {case}: {why}.")),
            }
        }
        let said = of_judge.iter().filter(|text| is_said(text)).count();
        if said < cases.len() {
            wrong.push(format!("Judge {place}: {said} of {} cases judged.", cases.len()));
        }
        all.push(chances);
    }
    if !wrong.is_empty() {
        return Err(wrong);
    }
    if all.is_empty() {
        return Ok(None);
    }
    Angoff::of(all).map(Some).map_err(|why| vec![why.to_string()])
}

/// The line through marks and what was typed as their ratings; whoever was not rated is no part of it.
/// Nothing where nobody was.
///
/// # Errors
/// A sentence for each rating that is none, and why there is no line.
pub fn ratings(
    marks: &[(String, f64)],
    typed: &[String],
    borderline: &str,
) -> Result<Option<(Borderline, f64)>, Vec<String>> {
    let (mut rated, mut wrong) = (Vec::new(), Vec::new());
    for ((learner, mark), text) in marks.iter().zip(typed).filter(|(_, text)| is_said(text)) {
        match rating(text) {
            Ok(rating) => rated.push(Rated { rating, mark: *mark }),
            Err(why) => wrong.push(format!("{learner}: {why}.")),
        }
    }
    if rated.is_empty() && wrong.is_empty() {
        return Ok(None);
    }
    let at = number(borderline);
    if at.is_none() {
        wrong.push(format!(
            "Borderline: found \"{borderline}\", expected the rating of a performance that is neither a clear pass nor a clear fail."
        ));
    }
    match (at, wrong.is_empty()) {
        (Some(at), true) => Borderline::of(&rated, at)
            .map(|line| Some((line, at)))
            .map_err(|why| vec![format!("No line yet: {why}.")]),
        _ => Err(wrong),
    }
}

/// The table of what judges typed: a row for each who typed something, a column for each case.
#[must_use]
pub fn judges_table(cases: &[String], typed: &[Vec<String>]) -> Csv {
    let mut head = vec!["judge"];
    head.extend(cases.iter().map(String::as_str));
    let mut table = Csv::with(&head);
    for (place, of_judge) in
        (1..).zip(typed).filter(|(_, one)| one.iter().any(|text| is_said(text)))
    {
        let name = format!("Judge {place}");
        let mut row = vec![name.as_str()];
        row.extend(of_judge.iter().map(|text| text.trim()));
        table.row(&row);
    }
    table
}

/// The table of ratings at a case: a row for each learner who was rated.
#[must_use]
pub fn ratings_table(case: &str, marks: &[(String, f64)], typed: &[String]) -> Csv {
    let mut table = Csv::with(&["learner", "case", "rating"]);
    for ((learner, _), text) in marks.iter().zip(typed).filter(|(_, text)| is_said(text)) {
        table.row(&[learner, case, text.trim()]);
    }
    table
}

fn is_said(text: &str) -> bool {
    !text.trim().is_empty()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(all: &[&str]) -> Vec<String> {
        all.iter().map(|one| (*one).to_owned()).collect()
    }

    #[test]
    fn a_judge_who_typed_nothing_is_none_and_a_comma_is_a_point() {
        let cases = texts(&["1.1.7.0", "1.1.7.1"]);
        let typed = [texts(&["0,6", " 0.5 "]), texts(&["", " "]), texts(&["1", "0"])];
        let found = judges(&cases, &typed).unwrap().unwrap();
        assert_eq!(found.sums(), [1.1, 1.0]);
        assert_eq!(judges(&cases, &typed[1..2]), Ok(None));
        let table = judges_table(&cases, &typed);
        let rows = "judge,1.1.7.0,1.1.7.1\r\nJudge 1,\"0,6\",0.5\r\nJudge 3,1,0\r\n";
        assert_eq!(table.text(), rows);
    }

    #[test]
    fn everything_wrong_with_what_judges_typed_is_told_at_once() {
        let typed = [texts(&["60", "0.5"]), texts(&["", "x"])];
        let wrong = judges(&texts(&["a", "b"]), &typed).unwrap_err();
        assert_eq!(
            wrong,
            [
                "Judge 1, a: found \"60\", expected a chance from 0 to 1 (60 % is 0.6).",
                "Judge 2, b: found \"x\", expected a chance from 0 to 1 (60 % is 0.6).",
                "Judge 2: 1 of 2 cases judged.",
            ]
        );
    }

    #[test]
    fn who_was_not_rated_is_no_part_of_the_line() {
        let marks = [("a", 40.0), ("b", 70.0), ("c", 50.0), ("d", 60.0)]
            .map(|(code, mark)| (code.to_owned(), mark));
        let (line, at) = ratings(&marks, &texts(&["1", "", "2", "3"]), "1,5").unwrap().unwrap();
        assert_eq!((line.slope, line.cut, at), (10.0, 45.0, 1.5));
        assert_eq!(ratings(&marks, &texts(&["", "", "", ""]), ""), Ok(None));
        let wrong = ratings(&marks, &texts(&["1", "2.5", "2", ""]), "x").unwrap_err();
        assert!(wrong[0].starts_with("b: found the rating \"2.5\""), "{wrong:?}");
        assert!(wrong[1].starts_with("Borderline: found \"x\""), "{wrong:?}");
        let few = ratings(&marks, &texts(&["1", "", "2", ""]), "2").unwrap_err();
        assert!(few[0].contains("found 2 rated performances, expected 3"), "{few:?}");
        let table = ratings_table("1.1.7.0", &marks, &texts(&["1", "", " 2", "3"]));
        assert_eq!(table.text().lines().count(), 4);
        assert!(table.text().contains("c,1.1.7.0,2\r\n"));
    }
}
