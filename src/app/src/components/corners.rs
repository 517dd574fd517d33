//! The edges and corners of an outline as numbers.

use crate::amount::{in_mm, span, stretched, tenths, text_of};
use engine::geometry::Outline;
use yew::prelude::*;

/// Told the corners of an outline, tenths of a millimetre.
pub type Set = Callback<Vec<[i32; 2]>>;
/// What is wrong with what was typed.
pub type Wrong = UseStateHandle<Option<String>>;

/// One edge: moving it stretches the whole outline between it and the opposite edge.
pub fn edge(
    &(name, part, least): &(&'static str, usize, bool),
    id: Option<String>,
    outline: &Outline,
    set: &Set,
    wrong: &Wrong,
) -> Html {
    let [from, to] = span(outline, part);
    let here = if least { from } else { to };
    let (vertices, set, wrong) = (outline.tenths().to_vec(), set.clone(), wrong.clone());
    let refused = wrong.clone();
    let move_to = Callback::from(move |there: i32| {
        let (new_from, new_to) = if least { (there, to) } else { (from, there) };
        if new_from < new_to {
            set.emit(stretched(&vertices, part, [from, to], [new_from, new_to]));
        } else {
            let (there, other) = (in_mm(there), in_mm(if least { to } else { from }));
            refused.set(Some(format!(
                "{name}: found {there} mm, which reaches or passes the opposite edge at {other} mm"
            )));
        }
    });
    let typed = {
        let move_to = move_to.clone();
        Callback::from(move |event: Event| match tenths(&text_of(&event)) {
            Some(there) => move_to.emit(there),
            None => wrong.set(Some(format!("{name}: expected millimetres in steps of 0.1"))),
        })
    };
    let nudge = |by: i32| {
        let move_to = move_to.clone();
        Callback::from(move |_: MouseEvent| move_to.emit(here + by))
    };
    html! {
        <div class="edge">
            <span>{ name }</span>
            <button type="button" class="step" aria-label={format!("{name}: less")} onclick={nudge(-5)}>{ "−" }</button>
            <input {id} type="text" inputmode="decimal" size="6" value={in_mm(here)} aria-label={format!("{name}, mm")} onchange={typed} />
            <button type="button" class="step" aria-label={format!("{name}: more")} onclick={nudge(5)}>{ "+" }</button>
        </div>
    }
}

/// One corner: two numbers.
pub fn vertex(place: usize, at: [i32; 2], outline: &Outline, set: &Set, wrong: &Wrong) -> Html {
    let field = |part: usize| {
        let (vertices, set, wrong) = (outline.tenths().to_vec(), set.clone(), wrong.clone());
        let typed = Callback::from(move |event: Event| match tenths(&text_of(&event)) {
            Some(there) => {
                let mut vertices = vertices.clone();
                vertices[place][part] = there;
                set.emit(vertices);
            }
            None => wrong.set(Some("expected millimetres in steps of 0.1".to_owned())),
        });
        let name = if part == 0 { "mesiodistal" } else { "apical" };
        html! { <input type="text" inputmode="decimal" size="6" value={in_mm(at[part])} aria-label={format!("corner {}, {name}, mm", place + 1)} onchange={typed} /> }
    };
    html! { <tr><th scope="row">{ place + 1 }</th><td>{ field(0) }</td><td>{ field(1) }</td></tr> }
}
