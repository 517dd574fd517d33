//! What can be taken hold of on a drawing, by pointer or by keys.

use engine::figures::svg;
use engine::geometry::P2;
use web_sys::{KeyboardEvent, PointerEvent};
use yew::prelude::*;

/// Half the width of what a finger can take hold of, CSS pixels.
pub const REACH: f64 = 14.0;
/// Radius of the knob, CSS pixels.
const KNOB: f64 = 5.0;

/// What can be taken hold of, as a slider.
pub struct Grip {
    /// What it is called.
    pub name: String,
    /// Keys beside the arrows.
    pub keys: Option<&'static str>,
    /// What it stands at, and that in words.
    pub now: String,
    pub says: String,
    /// Told of keys, and of a pointer that goes down on it.
    pub pressed: Callback<KeyboardEvent>,
    pub down: Callback<PointerEvent>,
}

/// A grip at a place of a figure of which a CSS pixel is so many millimetres.
pub fn grip_at(at: P2, pixel: f64, key: String, grip: Grip) -> Html {
    let (cx, cy) = (svg::number(at.x), svg::number(at.y));
    let circle = |pixels: f64, class: &'static str| {
        html! { <circle cx={cx.clone()} cy={cy.clone()} r={svg::number(pixels * pixel)} {class} /> }
    };
    let Grip { name, keys, now, says, pressed, down } = grip;
    html! {
        <g {key} class="handle" role="slider" tabindex="0" aria-label={name} aria-keyshortcuts={keys}
            aria-valuenow={now} aria-valuetext={says}
            onkeydown={pressed} onpointerdown={down}>
            { circle(REACH, "handle-reach") }
            { circle(KNOB, "handle-knob") }
        </g>
    }
}
