//! Learners of a class.

use super::rules::named;
use super::table::{save, table};
use crate::components::figure::still;
use crate::components::plain::{el, folded, items, line, said, section, text};
use crate::prose::Prose;
use learning::class::{Cell, Map, OfLearner, Report, tables, told};
use plots::map_plot;
use std::rc::Rc;
use yew::prelude::*;

/// The map has no more learners and rules than this; its file has all.
const MOST: [usize; 2] = [60, 25];

/// Who needs a word, and why.
pub fn needing_a_word(report: &Report) -> Html {
    let found = report.needing_a_word();
    let one = |(learner, why): &(&OfLearner, Vec<String>)| {
        let why = text(format!(": {}", why.join("; ").replace('-', " ")));
        el("li", "", vec![said("strong", "", learner.code.clone()), why])
    };
    let parts = match found.is_empty() {
        true => vec![line("p", "", "Nobody more than the others.")],
        false => vec![el("ul", "", found.iter().map(one).collect())],
    };
    section("need", "Learners who need a word", parts)
}

/// Every learner: cases passed with the interval, what was not ended, what can hurt somebody.
pub fn marks(report: &Rc<Report>) -> Html {
    let adjusted = !report.aside.is_empty();
    let row = |(number, one): (usize, &OfLearner)| {
        let mut cells = vec![
            text(told::passed(one.cases)),
            text(one.unfinished.to_string()),
            match one.grave {
                0 => line("span", "from", "none"),
                count => said("strong", "", format!("✕ {count}")),
            },
        ];
        if adjusted {
            cells.push(text(told::passed(one.adjusted)));
        }
        (text(numbered(number, one)), cells)
    };
    let rows = (1..).zip(&report.learners).map(row).collect();
    let mut columns = vec!["Learner", "Cases passed", "Unfinished", "Unsafe acts"];
    if adjusted {
        columns.push("Cases passed, adjusted");
    }
    let parts = vec![
        line(
            "p",
            "",
            "Passed is sound or workable. In brackets: where the share may lie in truth (90 %); with few cases that is nearly anywhere.",
        ),
        table("Learners, in the order of their codes", &columns, rows),
        save("learners", report, tables::learners),
    ];
    section("marks", "Learner by learner", parts)
}

/// A learner as a column or row is named: the number of the map, and the code where it is shown.
fn numbered(number: usize, one: &OfLearner) -> String {
    match one.code.starts_with("Learner ") {
        true => one.code.clone(),
        false => format!("{number}. {}", one.code),
    }
}

/// Rules against learners: what became of each, as a picture and as a table.
pub fn map(report: &Rc<Report>, prose: &Prose, wide: f64) -> Html {
    let map = Map::of(report, MOST);
    if map.rows.is_empty() {
        return Html::default();
    }
    let named_so: Vec<String> =
        (1..).zip(map.learners).map(|(number, one)| numbered(number, one)).collect();
    let mut columns = vec!["Rule"];
    columns.extend(named_so.iter().map(String::as_str));
    let rows = map
        .rows
        .iter()
        .map(|(rule, cells)| (named(rule, prose), cells.iter().copied().map(cell).collect()));
    let twin = el("div", "map", vec![table("Rules against learners", &columns, rows.collect())]);
    let mut parts = vec![
        line(
            "p",
            "",
            "Every rule that anybody missed, the most missed first; columns are learners in the order of their codes. Not reached: the learner's choices never called for the rule. That is missing, not wrong.",
        ),
        still(map_plot(&map, wide), Some("map-plot".into())),
        folded("twin", "The same as a table".to_owned(), vec![twin]),
    ];
    let left_out = map.left_out.iter().zip(["learner", "rule"]).filter(|(count, _)| **count > 0);
    let left_out: Vec<String> = left_out
        .map(|(count, what)| format!("{} more in learners.csv", told::counted(*count, what)))
        .collect();
    if !left_out.is_empty() {
        parts.push(items("from", left_out));
    }
    section("map", "Rule by learner", parts)
}

fn cell(cell: Cell) -> Html {
    match cell {
        Cell::Kept | Cell::NotReached => line("span", "from", cell.words()),
        Cell::Missed => line("strong", "", "⁄ missed"),
        Cell::Grave => line("strong", "", "✕ unsafe"),
    }
}
