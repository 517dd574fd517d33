//! How sure the learner was against how it went.

use super::plot::plotted;
use crate::components::plain::{self, el, line, said};
use learning::calibration::Calibration;
use learning::parameters::CALIBRATED_FROM;
use learning::past::Sure;
use learning::tables;
use plots::calibration_plot;
use yew::prelude::*;

/// The plot with the score and its parts, from 30 answers on; before that how many there are and what
/// it will show.
pub fn sureness(answers: &[Sure], wide: f64) -> Vec<Html> {
    let Some(shown) = Calibration::of(answers) else {
        let so_far = format!(
            "So far {} of {CALIBRATED_FROM} answers to “How sure are you?”. From {CALIBRATED_FROM} on, this place shows whether you are right as often as you say: with fewer, chance would pass for a habit.",
            answers.len()
        );
        return vec![said("p", "", so_far)];
    };
    let plot =
        plotted("sureness", calibration_plot(&shown, wide), tables::calibration(&shown).csv());
    vec![
        line(
            "p",
            "",
            "On the dashed line, you are right as often as you say; below it you are surer than you should be. What is debated or could not be known is left out.",
        ),
        el("div", "square", vec![plot]),
        said("p", "", lean(&shown)),
        score(&shown),
    ]
}

fn lean(shown: &Calibration) -> String {
    let points = 100.0 * shown.bias.abs();
    let which = if points < 0.5 {
        "as sure as you are right".to_owned()
    } else if shown.bias > 0.0 {
        format!("surer than right, by {points:.0} points of 100")
    } else {
        format!("right more often than you say, by {points:.0} points of 100")
    };
    format!(
        "On average you are {which}. Group by group you are off by {:.0} points; chance alone would do {:.0} to somebody who is never off.",
        100.0 * shown.error,
        100.0 * shown.by_chance
    )
}

fn score(shown: &Calibration) -> Html {
    let rows = [
        ("Brier score", shown.brier, "0 is best; 0.25 is what “50 %” always earns"),
        ("Reliability", shown.reliability, "what you say against what happens; 0 is best"),
        (
            "less resolution",
            shown.resolution,
            "how far your answers tell good steps from bad; more is better",
        ),
        ("plus uncertainty", shown.uncertainty, "how mixed it went, whatever you said"),
    ];
    let row = |(name, value, means): (&'static str, f64, &'static str)| {
        plain::row(name.to_owned(), vec![format!("{value:.3}"), means.to_owned()])
    };
    let caption = format!("Brier score of {} answers, and what it is made of", shown.count);
    let body = el("tbody", "", rows.into_iter().map(row).collect());
    el("table", "readings", vec![said("caption", "from", caption), body])
}
