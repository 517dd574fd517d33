//! Fields of a table, and what was typed into them.

use crate::components::hold::Held;
use crate::components::plain::typed;
use yew::prelude::*;

/// What was typed: the row, the column, the text.
pub type Typed = Vec<(String, u8, String)>;

/// What stands in a field.
pub fn at<'a>(cells: &'a Typed, row: &str, column: u8) -> &'a str {
    let found = cells.iter().find(|one| one.0 == row && one.1 == column);
    found.map_or("", |one| one.2.as_str())
}

/// A field for a number, under the name that a reader of screens is told.
pub fn cell(cells: &Held<Typed>, row: &str, column: u8, name: &str) -> Html {
    let then = {
        let (cells, row) = (cells.clone(), row.to_owned());
        Callback::from(move |text: String| {
            let mut all: Typed = (*cells).clone();
            all.retain(|one| one.0 != row || one.1 != column);
            all.push((row.clone(), column, text));
            cells.set(all);
        })
    };
    let attributes = [("aria-label", name), ("inputmode", "decimal"), ("size", "5")];
    typed(&attributes, at(cells, row, column), then)
}
