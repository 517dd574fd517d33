//! Tables of a report, and what saves them.

use crate::components::plain::{el, press, said, text, with};
use crate::effects;
use learning::class::Report;
use learning::class::tables::Write;
use std::rc::Rc;
use yew::prelude::*;

/// A table that scrolls by itself, its first column staying in view: what it shows, the names of its
/// columns, and its rows, each under the name that stands first.
pub fn table(shows: &str, columns: &[&str], rows: Vec<(Html, Vec<Html>)>) -> Html {
    let column = |name: &&str| with("th", &[("scope", "col")], vec![text((*name).to_owned())]);
    let row = |(name, cells): (Html, Vec<Html>)| {
        let mut all = vec![with("th", &[("scope", "row")], vec![name])];
        all.extend(cells.into_iter().map(|cell| el("td", "", vec![cell])));
        el("tr", "", all)
    };
    let head = el("tr", "", columns.iter().map(column).collect());
    let parts = vec![
        said("caption", "visually-hidden", shows.to_owned()),
        el("thead", "", vec![head]),
        el("tbody", "", rows.into_iter().map(row).collect()),
    ];
    let scrolls =
        [("class", "scroll"), ("role", "region"), ("tabindex", "0"), ("aria-label", shows)];
    with("div", &scrolls, vec![el("table", "", parts)])
}

/// Counts as cells.
pub fn counts(counts: &[u32]) -> Vec<Html> {
    counts.iter().map(|count| text(count.to_string())).collect()
}

/// Saves a table of the report under its name.
pub fn save(name: &'static str, report: &Rc<Report>, write: Write) -> Html {
    let report = report.clone();
    let file = format!("{name}.csv");
    let says = format!("Save {file}");
    let save = Callback::from(move |_: MouseEvent| effects::save(&file, write(&report).text()));
    el("p", "choosing", vec![press(&[("class", "quiet")], says, save)])
}
