//! What judges type, case by case, and the pass mark that follows.

use super::cases::named;
use super::table::table;
use super::typed::{Typed, cell};
use crate::components::hold::Held;
use crate::components::plain::{items, press, text, with};
use crate::effects;
use learning::class::{OfCase, told, typed};
use yew::prelude::*;

/// How hard cases are, as far as that has been worked out: the name, in words.
pub type Hard = Vec<(String, String)>;

/// A field for each judge and case, beside how hard the case is and who passed it.
pub fn sheet(cases: &[OfCase], hard: &Hard, cells: &Held<Typed>, judges: u8) -> Html {
    let heads: Vec<String> = (1..=judges).map(|judge| format!("Judge {judge}")).collect();
    let mut columns = vec!["Case", "Difficulty", "Passed"];
    columns.extend(heads.iter().map(String::as_str));
    let row = |one: &OfCase| {
        let name = &one.case.name;
        let hard = hard.iter().find(|known| known.0 == *name).map_or("…", |known| &known.1);
        let passed = one.passed();
        let mut row =
            vec![text(hard.to_owned()), text(format!("{} of {}", passed.right, passed.all()))];
        row.extend(
            (1..)
                .zip(&heads)
                .map(|(judge, head)| cell(cells, name, judge, &format!("{head}, case {name}"))),
        );
        (text(named(&one.case)), row)
    };
    table("What judges expect", &columns, cases.iter().map(row).collect())
}

/// The pass mark, or what is still missing or wrong.
pub fn result(names: &[String], typed: &[Vec<String>]) -> Html {
    let lines = match typed::judges(names, typed) {
        Ok(Some(angoff)) => told::judged(&angoff).to_vec(),
        Ok(None) => vec!["No pass mark yet: no judge has typed a number.".to_owned()],
        Err(wrong) => wrong,
    };
    with("div", &[("role", "status")], vec![items("", lines)])
}

/// Saves what was typed as the table that the tool reads.
pub fn save(names: Vec<String>, typed: Vec<Vec<String>>) -> Html {
    let save = Callback::from(move |_: MouseEvent| {
        effects::save("judges.csv", typed::judges_table(&names, &typed).text());
    });
    press(&[("class", "quiet")], "Save judges.csv".to_owned(), save)
}
