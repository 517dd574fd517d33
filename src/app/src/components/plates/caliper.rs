//! A caliper on a section: two points, moved by pointer, by keys or by number.

use super::dial::field;
use crate::components::plain::{el, line, status};
use crate::drag;
use engine::geometry::P2;
use engine::imaging::Section;
use wasm_bindgen::JsCast;
use web_sys::{Element, KeyboardEvent, PointerEvent};
use yew::prelude::*;

/// The tips of the caliper, mm to the right and down of the picture's corner.
pub type Tips = [P2; 2];

/// Step of a key, mm; with Shift ten times as far.
const STEP: f64 = 0.1;

/// The line and its two handles, to lie over a picture of `size` mm.
pub fn caliper(tips: Tips, size: [f64; 2], on_move: &Callback<Tips>) -> Html {
    let [a, b] = tips;
    html! {
        <>
            <path class="caliper" d={format!("M{:.2} {:.2}L{:.2} {:.2}", a.x, a.y, b.x, b.y)} />
            { for [0, 1].map(|which| tip(tips, which, size, on_move)) }
        </>
    }
}

fn tip(tips: Tips, which: usize, size: [f64; 2], on_move: &Callback<Tips>) -> Html {
    let at = tips[which];
    let name = ["first tip of the caliper", "second tip of the caliper"][which];
    let moved = {
        let on_move = on_move.clone();
        move |to: P2| {
            let mut next = tips;
            next[which] = P2::new(to.x.clamp(0.0, size[0]), to.y.clamp(0.0, size[1]));
            on_move.emit(next);
        }
    };
    let pressed = {
        let moved = moved.clone();
        Callback::from(move |event: KeyboardEvent| {
            if let Some((right, down)) = drag::steps_of_key(&event.key(), event.shift_key()) {
                event.prevent_default();
                let step = |count: i32| STEP * f64::from(count);
                moved(P2::new(at.x + step(right), at.y + step(down)));
            }
        })
    };
    let taken = Callback::from(|event: PointerEvent| {
        event.prevent_default();
        if let Some(knob) = event.target().and_then(|one| one.dyn_into::<Element>().ok()) {
            // A browser that cannot capture lets the pointer slip off the knob: nothing breaks.
            let _ = knob.set_pointer_capture(event.pointer_id());
        }
    });
    let dragged = Callback::from(move |event: PointerEvent| {
        let Some(knob) = event.target().and_then(|one| one.dyn_into::<Element>().ok()) else {
            return;
        };
        if !knob.has_pointer_capture(event.pointer_id()) {
            return;
        }
        let Some(sheet) = knob.closest("svg").ok().flatten() else { return };
        let seen = sheet.get_bounding_client_rect();
        let part = |at: i32, from: f64, length: f64| (f64::from(at) - from) / length.max(1.0);
        moved(P2::new(
            size[0] * part(event.client_x(), seen.left(), seen.width()),
            size[1] * part(event.client_y(), seen.top(), seen.height()),
        ));
    });
    html! {
        <g class="handle" role="slider" tabindex="0" aria-label={name} aria-valuenow={format!("{:.1}", at.x)}
            aria-valuetext={format!("{:.1} mm from the left, {:.1} mm from the top", at.x, at.y)}
            onkeydown={pressed} onpointerdown={taken} onpointermove={dragged}>
            <circle class="handle-reach" cx={format!("{:.2}", at.x)} cy={format!("{:.2}", at.y)} r="1.9" />
            <circle class="handle-knob" cx={format!("{:.2}", at.x)} cy={format!("{:.2}", at.y)} r="0.35" />
        </g>
    }
}

/// The caliper as numbers, and what it reads.
pub fn reading(taken: &Section, tips: Tips, size: [f64; 2], on_move: &Callback<Tips>) -> Html {
    let read = taken.caliper(tips[0], tips[1]);
    let apparent = read.apparent.map_or_else(
        || "Nothing between the tips stands out on both sides.".to_owned(),
        |width| format!("What stands out most between them looks {:.1} mm thick (between its half-heights).", width.get()),
    );
    let number = |which: usize, part: usize| {
        let name = format!(
            "{} tip, mm {}",
            ["first", "second"][which],
            ["from the left", "from the top"][part]
        );
        let turn = {
            let on_move = on_move.clone();
            Callback::from(move |value: f64| {
                let mut next = tips;
                next[which] = if part == 0 {
                    P2::new(value, tips[which].y)
                } else {
                    P2::new(tips[which].x, value)
                };
                on_move.emit(next);
            })
        };
        field(name, [0.0, size[part], 0.1], Some([tips[which].x, tips[which].y][part]), turn)
    };
    let straight = read.straight.get();
    let pair = vec![
        line("span", "", "first tip"),
        number(0, 0),
        number(0, 1),
        line("span", "", "second tip"),
        number(1, 0),
        number(1, 1),
    ];
    let read = status(format!("Caliper: {straight:.1} mm from tip to tip. {apparent}"));
    el("div", "caliper-reads", vec![read, el("div", "pair", pair)])
}
