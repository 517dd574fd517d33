//! A plot with its numbers to take away.

use crate::components::figure::Drawing;
use crate::effects;
use engine::figures::Figure;
use learning::csv::Csv;
use yew::prelude::*;

/// The plot, and a button that saves its numbers; `name` is its id on the page and that of its file.
pub fn plotted(name: &'static str, figure: Figure, csv: Csv) -> Html {
    let save = Callback::from(move |_: MouseEvent| {
        effects::save(&format!("{name}.csv"), csv.text());
    });
    html! {
        <>
            <Drawing id={name} {figure} />
            <p><button type="button" class="quiet" onclick={save} aria-describedby={format!("{name}-title")}>{ "Save as CSV" }</button></p>
        </>
    }
}
