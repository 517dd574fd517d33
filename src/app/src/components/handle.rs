//! Something on a figure that can be taken hold of, by pointer or by keys.

use super::figure::FigureProps;
use super::grip::{Grip, REACH, grip_at};
use crate::drag::{self, Drag};
use crate::effects;
use crate::store::{Action, Said};
use engine::anatomy::Tooth;
use engine::figures::{Handle, svg};
use engine::geometry::Outline;
use engine::plan::Draft;
use web_sys::{KeyboardEvent, PointerEvent};
use yew::prelude::*;

/// Radius of the knob on an edge, CSS pixels.
const EDGE_KNOB: f64 = 3.0;

/// The handles of the figure in `props`.
pub fn handles(props: &FigureProps) -> Html {
    // Corners lie over the handles of edges, in a list of their own: what has the focus is not moved
    // when others come.
    html! { <>{ some(props, true) }{ some(props, false) }</> }
}

/// Those handles that make a corner, or the others.
fn some(props: &FigureProps, makes: bool) -> Html {
    let views = props.draft.iter().zip(props.tooth).flat_map(|(draft, tooth)| {
        let some = props.figure.handles.iter().filter(|handle| handle.makes == makes);
        some.map(move |handle| handle_view(handle, (draft, tooth), props))
    });
    html! { <g>{ for views }</g> }
}

fn handle_view(handle: &Handle, (draft, tooth): (&Draft, Tooth), props: &FigureProps) -> Html {
    let down = {
        let (handle, draft, act) = (handle.clone(), draft.clone(), props.act.clone());
        let window = [props.figure.window.width(), props.figure.window.height()];
        Callback::from(move |event: PointerEvent| {
            event.prevent_default();
            if drag::is_second_press(&handle, &event) {
                change(&handle, &draft, &act, false);
            } else {
                Drag::begin(
                    &event,
                    window,
                    drag::going(handle.clone(), draft.clone(), act.clone()),
                );
            }
        })
    };
    let (cx, cy) = (svg::number(handle.at.x), svg::number(handle.at.y));
    let circle = |pixels: f64, class: &'static str| {
        html! { <circle cx={cx.clone()} cy={cy.clone()} r={svg::number(pixels * props.figure.pixel)} {class} /> }
    };
    // What comes and goes with its corner keeps its element, and the focus, by its name.
    let key = format!("{} {}", handle.label, handle.makes);
    if handle.makes {
        // For pointers alone: keys do the same from the corner.
        return html! {
            <g {key} class="edge-handle" aria-hidden="true" onpointerdown={down}>
                { circle(REACH, "handle-reach") }
                { circle(EDGE_KNOB, "handle-knob") }
            </g>
        };
    }
    let keys = handle.vertex.map(|_| "Insert Delete");
    let says = drag::value_in_words(handle, draft, tooth);
    let grip = Grip {
        name: handle.label.clone(),
        keys,
        now: drag::value_now(handle, draft).to_string(),
        says,
        pressed: pressed(handle, draft, &props.act),
        down,
    };
    grip_at(handle.at, props.figure.pixel, key, grip)
}

/// What keys do: arrows move, Insert or + adds a corner on the edge after it, Delete takes it away.
fn pressed(handle: &Handle, draft: &Draft, act: &Callback<Action>) -> Callback<KeyboardEvent> {
    let (handle, draft, act) = (handle.clone(), draft.clone(), act.clone());
    Callback::from(move |event: KeyboardEvent| {
        let steps = drag::steps_of_key(&event.key(), event.shift_key());
        let more = match event.key().as_str() {
            "Insert" | "+" => Some(true),
            "Delete" | "Backspace" => Some(false),
            _ => None,
        };
        if let Some(steps) = steps {
            event.prevent_default();
            drag::settle(drag::moved_by_steps(&handle, &draft, steps), &act);
        } else if let (Some(more), Some((decision, place))) = (more, handle.vertex) {
            event.prevent_default();
            let last = draft.outline(decision).is_some_and(|one| one.tenths().len() == place + 1);
            if change(&handle, &draft, &act, more) && last && !more {
                // The last corner goes with the focus on it: the one before takes that over.
                effects::focus_before(&event);
            }
        }
    })
}

/// One corner more or one less, and a sentence that says so; whether it could be.
fn change(handle: &Handle, draft: &Draft, act: &Callback<Action>, more: bool) -> bool {
    let done = drag::settle(drag::corner_changed(handle, draft, more), act);
    if let (true, Some((about, _))) = (done, handle.vertex) {
        let how = if more { "one added after it" } else { "taken away" };
        let before = draft.outline(about).map_or(0, |outline| outline.tenths().len());
        let count = if more { before + 1 } else { before - 1 };
        let words = format!(
            "{}: {how}. {count} corners, of at most {}.",
            handle.label,
            Outline::MOST_VERTICES
        );
        act.emit(Action::Say(Said { about, wrong: false, words }));
    }
    done
}
