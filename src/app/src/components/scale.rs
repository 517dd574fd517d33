//! A verdict's reading on the scale that it is judged by.

use super::figure::still;
use crate::effects;
use engine::anatomy::Tooth;
use engine::debrief::Verdict;
use engine::figures::Figure;
use yew::prelude::*;

/// How wide a verdict's plot is laid out at most, and what stands beside it on a phone, CSS pixels.
const PLOT: f64 = 360.0;
const BESIDE: f64 = 92.0;

/// The plot; nothing for a verdict on a situation, which stands on no scale.
pub fn scale(verdict: &Verdict, tooth: Tooth) -> Html {
    let wide = PLOT.min(effects::page_width() - BESIDE);
    let plot = verdict.bands().and_then(|bands| plots::band_plot(&bands, verdict.reading, wide));
    let Some(plot) = plot else { return Html::default() };
    let id = format!("plot-{}", verdict.rule.id);
    still(named(plot, tooth), Some(id.into()))
}

/// A plot whose name and words speak of this tooth's jaw.
fn named(plot: Figure, tooth: Tooth) -> Figure {
    Figure {
        title: tooth.named(&plot.title).into_owned(),
        says: tooth.named(&plot.says).into_owned(),
        ..plot
    }
}
