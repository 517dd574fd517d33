//! A plot with its numbers to take away.

use crate::components::figure::Drawing;
use crate::effects;
use engine::figures::Figure;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct PlottedProps {
    /// The plot.
    pub figure: Figure,
    /// Its id on the page, and the name of its file.
    pub name: &'static str,
    /// Its numbers, as comma-separated values.
    pub csv: AttrValue,
}

/// The plot, and a button that saves its numbers.
#[component]
pub fn Plotted(props: &PlottedProps) -> Html {
    let save = {
        let (name, csv) = (props.name, props.csv.clone());
        Callback::from(move |_: MouseEvent| effects::save(&format!("{name}.csv"), &csv))
    };
    html! {
        <>
            <Drawing id={props.name} figure={props.figure.clone()} />
            <p><button type="button" class="quiet" onclick={save} aria-describedby={format!("{}-title", props.name)}>{ "Save as CSV" }</button></p>
        </>
    }
}
