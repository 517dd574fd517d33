//! The edges of an outline as numbers.

use super::corners::{Fields, field};
use super::plain::{el, line, press};
use crate::amount::{in_words, span, stretched};
use engine::geometry::Outline;
use yew::prelude::*;

/// The edges in the order of their fields: name, which part of a vertex, whether the least.
pub const EDGES: [(&str, usize, bool); 4] = [
    ("Mesial edge", 0, true),
    ("Distal edge", 0, false),
    ("Coronal edge", 1, true),
    ("Apical edge", 1, false),
];

/// One edge: moving it stretches the whole outline between it and the opposite edge.
pub fn edge(
    &(name, part, least): &(&'static str, usize, bool),
    id: Option<String>,
    fields: &Fields<'_>,
) -> Html {
    let [from, to] = span(fields.outline, part);
    let here = if least { from } else { to };
    let (vertices, ways) = (fields.outline.tenths().to_vec(), fields.ways[part]);
    let (set, wrong) = (fields.set.clone(), fields.wrong.clone());
    let move_to = Callback::from(move |there: i32| {
        let (new_from, new_to) = if least { (there, to) } else { (from, there) };
        if new_from < new_to {
            set.emit(Outline::new(stretched(&vertices, part, [from, to], [new_from, new_to])));
        } else {
            let (there, other) =
                (in_words(there, ways), in_words(if least { to } else { from }, ways));
            wrong.emit(format!(
                "{name}: found {there}, which reaches or passes the opposite edge at {other}"
            ));
        }
    });
    let nudge = |out: i32| {
        let move_to = move_to.clone();
        let by = if least { -out } else { out };
        Callback::from(move |_: MouseEvent| move_to.emit(here + by))
    };
    let step = |sign: &str, way: &str, by: i32| {
        let name = format!("{name}: 0.5 mm {way}");
        press(&[("class", "step"), ("aria-label", &name)], sign.to_owned(), nudge(by))
    };
    let parts = vec![
        line("span", "", name),
        step("−", "inwards", -5),
        field(fields, name, part, here, id, move_to.clone()),
        step("+", "outwards", 5),
    ];
    el("div", "edge", parts)
}
