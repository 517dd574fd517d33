//! Something on a figure that can be taken hold of, by pointer or by keys.

use super::figure::FigureProps;
use crate::drag::{self, Drag};
use engine::anatomy::Tooth;
use engine::figures::{Handle, svg};
use engine::plan::Draft;
use web_sys::{KeyboardEvent, PointerEvent};
use yew::prelude::*;

/// Half the width of what a finger can take hold of, CSS pixels.
const REACH: f64 = 14.0;
/// Radius of the knob, CSS pixels.
const KNOB: f64 = 5.0;

/// A handle of the figure in `props`.
pub fn handle_view(
    place: usize,
    handle: &Handle,
    (draft, tooth): (&Draft, Tooth),
    props: &FigureProps,
) -> Html {
    let key = {
        let (handle, draft, on_do) = (handle.clone(), draft.clone(), props.on_do.clone());
        Callback::from(move |event: KeyboardEvent| {
            if let Some(steps) = drag::steps_of_key(&event.key(), event.shift_key()) {
                event.prevent_default();
                for event in drag::moved_by_steps(&handle, &draft, steps) {
                    on_do.emit(event);
                }
            }
        })
    };
    let down = {
        let (handle, draft) = (handle.clone(), draft.clone());
        let (on_try, on_do) = (props.on_try.clone(), props.on_do.clone());
        let window = [props.figure.window.width(), props.figure.window.height()];
        Callback::from(move |event: PointerEvent| {
            event.prevent_default();
            Drag::begin(
                &event,
                window,
                handle.clone(),
                draft.clone(),
                on_try.clone(),
                on_do.clone(),
            );
        })
    };
    let (cx, cy) = (svg::number(handle.at.x), svg::number(handle.at.y));
    let radius = |pixels: f64| svg::number(pixels * props.figure.pixel);
    html! {
        <g key={place} class="handle" role="slider" tabindex="0" aria-label={handle.label.clone()}
            aria-valuenow={drag::value_now(handle, draft).to_string()} aria-valuetext={drag::value_in_words(handle, draft, tooth)}
            onkeydown={key} onpointerdown={down}>
            <circle cx={cx.clone()} cy={cy.clone()} r={radius(REACH)} class="handle-reach" />
            <circle {cx} {cy} r={radius(KNOB)} class="handle-knob" />
        </g>
    }
}
