//! Tables.

use super::{el, line, said, text, with};
use yew::prelude::*;

/// A table under its heads.
pub fn table(class: &'static str, heads: &[&'static str], body: Html) -> Html {
    let heads = heads.iter().map(|head| line("th", "", head)).collect();
    el("table", class, vec![el("thead", "", vec![el("tr", "", heads)]), body])
}

/// A row of a table: its head, and what stands beside it.
pub fn row(head: String, cells: Vec<String>) -> Html {
    let mut all = vec![with("th", &[("scope", "row")], vec![text(head)])];
    all.extend(cells.into_iter().map(|cell| said("td", "", cell)));
    el("tr", "", all)
}
