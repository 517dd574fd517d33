//! What is not modelled.

use yew::prelude::*;

/// The page.
pub fn limits() -> Html {
    let left_out = [
        "The curve of the arch and the bulge of each root: the ridge is straight along the arch, and a wall is as thick beside the root's middle as over it.",
        "Roots that curve, in films as in the drawn section. Third molars.",
        "In films: scatter, the hardening of the beam, a focal spot of its own size. In sections: streaks beside metal, movement. A written report, with its errors of reading, stands beside both.",
        "Events on the way: a plate that breaks, bleeding, a membrane that shows at review.",
        "Partial extraction techniques.",
        "Cover against endocarditis: follow the local guideline.",
        "Drug interactions beyond the gates that the chart asks about.",
        "Sedation.",
        "Disease at the neighbours' apices.",
        "Soft tissue as something that tears, swells and heals; hands; instruments.",
    ];
    let models = [
        "Seating torque: engaged surface x contact pressure by density x radius x friction, calibrated to a published series.",
        "Film and section grey: published coefficients at one energy, summed along rays; the grey curve, grain and noise are ours.",
        "Closing force: how far the flap must travel against how far it can.",
        "Patients: lists and distributions of our own making, within what published surveys report.",
    ];
    html! {
        <article class="page">
            <h1>{ "Limits" }</h1>
            <p class="lead">{ "What this room leaves out, so that you do not take its silence for an answer." }</p>
            <ul>{ for left_out.iter().map(|line| html! { <li>{ *line }</li> }) }</ul>
            <h2>{ "Teaching models" }</h2>
            <ul>{ for models.iter().map(|line| html! { <li>{ *line }</li> }) }</ul>
        </article>
    }
}
