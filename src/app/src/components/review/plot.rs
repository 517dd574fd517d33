//! A plot with its numbers to take away.

use crate::components::figure::still;
use crate::components::plain::{el, press, together};
use crate::effects;
use engine::figures::Figure;
use learning::csv::Csv;
use yew::prelude::*;

/// The plot, and a button that saves its numbers; `name` is its id on the page and that of its file.
pub fn plotted(name: &'static str, figure: Figure, csv: Csv) -> Html {
    let save = Callback::from(move |_: MouseEvent| {
        effects::save(&format!("{name}.csv"), csv.text());
    });
    let title = format!("{name}-title");
    let attributes = [("class", "quiet"), ("aria-describedby", title.as_str())];
    let save = press(&attributes, "Save as CSV".to_owned(), save);
    together(vec![still(figure, Some(name.into())), el("p", "", vec![save])])
}
