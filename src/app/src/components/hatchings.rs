//! The hatchings that figures and plots are filled with.

use engine::figures::style::{HATCHINGS, Hatching};
use engine::figures::{Figure, svg};
use engine::rules::{self, Reading};
use yew::prelude::*;

/// Those of a figure, under its own ids.
pub fn hatchings(figure: &Figure) -> Html {
    let patterns = HATCHINGS.iter().map(|one| pattern(figure, one));
    html! { <defs>{ for patterns }</defs> }
}

/// The hatchings of plots, which are drawn under ids of their own: once for the page.
pub fn hatchings_of_plots() -> Html {
    let any =
        rules::all().find_map(|rule| plots::band_plot(rule.bands()?, Reading::Number(0.0), 360.0));
    let hatchings = any.iter().map(hatchings);
    html! { <svg class="drawing visually-hidden" aria-hidden="true" width="0" height="0">{ for hatchings }</svg> }
}

fn pattern(figure: &Figure, hatching: &Hatching) -> Html {
    let [wide, tall] = hatching.tile.map(svg::number);
    let ground = (!hatching.under.is_empty()).then(|| {
        html! { <rect class={format!("under-{}", hatching.name)} width={wide.clone()} height={tall.clone()} /> }
    });
    html! {
        <pattern id={svg::hatching_id(figure, hatching)} patternUnits="userSpaceOnUse" width={wide.clone()} height={tall.clone()} patternTransform={svg::hatching_transform(figure, hatching)}>
            { ground }
            <path class={format!("hatch-{}", hatching.name)} d={hatching.path} />
        </pattern>
    }
}
