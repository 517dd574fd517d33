//! How sure the learner was against how it went.

use super::plot::Plotted;
use learning::calibration::Calibration;
use learning::parameters::CALIBRATED_FROM;
use learning::past::Sure;
use learning::tables;
use plots::calibration_plot;
use yew::prelude::*;

/// The plot with the score and its parts, from 30 answers on; before that how many there are and what
/// it will show.
pub fn sureness(answers: &[Sure], wide: f64) -> Html {
    let Some(shown) = Calibration::of(answers) else {
        return html! {
            <p>{ format!("So far {} of {CALIBRATED_FROM} answers to “How sure are you?”. From {CALIBRATED_FROM} on, this place shows whether you are right as often as you say: with fewer, chance would pass for a habit.", answers.len()) }</p>
        };
    };
    html! {
        <>
            <p>{ "On the dashed line, you are right as often as you say; below it you are surer than you should be. What is debated or could not be known is left out." }</p>
            <div class="square"><Plotted name="sureness" figure={calibration_plot(&shown, wide)} csv={tables::calibration(&shown).text().to_owned()} /></div>
            { score(&shown) }
        </>
    }
}

fn score(shown: &Calibration) -> Html {
    let points = 100.0 * shown.bias.abs();
    let lean = match shown.bias {
        _ if points < 0.5 => "On average you are as sure as you are right.".to_owned(),
        bias if bias > 0.0 => {
            format!("On average you are surer than right by {points:.0} points of 100.")
        }
        _ => format!(
            "On average you are right more often than you say, by {points:.0} points of 100."
        ),
    };
    let row = |name: &'static str, value: f64, means: &'static str| {
        html! { <tr><th scope="row">{ name }</th><td>{ format!("{value:.3}") }</td><td>{ means }</td></tr> }
    };
    html! {
        <>
            <p>{ format!("{lean} Group by group you are off by {:.0} points; chance alone would do {:.0} to somebody who is never off.", 100.0 * shown.error, 100.0 * shown.by_chance) }</p>
            <table class="readings">
                <caption class="from">{ format!("Brier score of {} answers, and what it is made of", shown.count) }</caption>
                <tbody>
                    { row("Brier score", shown.brier, "0 is best; 0.25 is what “50 %” always earns") }
                    { row("Reliability", shown.reliability, "what you say against what happens; 0 is best") }
                    { row("less resolution", shown.resolution, "how far your answers tell good steps from bad; more is better") }
                    { row("plus uncertainty", shown.uncertainty, "how mixed it went, whatever you said") }
                </tbody>
            </table>
        </>
    }
}
