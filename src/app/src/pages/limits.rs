//! What is not modelled.

use crate::components::plain::{el, line, list};
use yew::prelude::*;

/// The page.
pub fn limits() -> Html {
    let left_out = [
        "The curve of the arch and the bulge of each root: the ridge is straight along the arch, and a wall is as thick beside the root's middle as over it.",
        "Roots that curve, in films as in the drawn section. Third molars.",
        "In films: scatter, the hardening of the beam, a focal spot of its own size. In sections: streaks beside metal, movement. A written report, with its errors of reading, stands beside both.",
        "Events beyond those that a case can bring (a broken plate, a lost root tip, a torn lining, torque other than estimated, bleeding, swelling, infection, a numb lip, a bare membrane): each comes by a stated chance of its own, and none leads to another.",
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
        "Chances of events: each grows with what the case and the choices bring (plate thickness, technique, distances, habits), about published frequencies where there are any; the numbers between are ours.",
        "Healing: how much of ridge and facial wall is lost over the months, about published means with a seeded spread. Re-entry finds one course of many; the debrief shows how far they lie apart. Never a forecast.",
        "Closing force: how far the flap must travel against how far it can.",
        "Patients: lists and distributions of our own making, within what published surveys report.",
        "Practice: knowledge tracing and FSRS-6 with published or stated parameters choose and space cases. They tell what your answers here make likely, nothing of your hands or of a patient.",
    ];
    let parts = vec![
        line("h1", "", "Limits"),
        line(
            "p",
            "lead",
            "What this room leaves out, so that you do not take its silence for an answer.",
        ),
        list(&left_out),
        line("h2", "", "Teaching models"),
        list(&models),
    ];
    el("article", "page", parts)
}
