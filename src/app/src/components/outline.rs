//! A decision with an outline: edges as numbers, vertices as numbers, and the handles on the map.

use super::choice::asked;
use super::corners::{Fields, Set, vertex};
use super::edges::{EDGES, edge};
use super::plain::{button, el, folded, line, said, together};
use super::sheet::Sheet;
use crate::effects;
use crate::store::Action;
use engine::geometry::Outline;
use engine::plan::{Entry, Value};
use engine::session::Event;
use yew::prelude::*;

/// Where drawing starts: a small patch over the crest, which is nobody's answer.
const START: [[i32; 2]; 8] =
    [[-20, -10], [0, -10], [20, -10], [20, 10], [20, 30], [0, 30], [-20, 30], [-20, 10]];

/// How corners come and go on the map.
const MORE: &str = "On the map: pull the small ring on an edge for one corner more, press a corner twice to take it away. By keys: Insert or + on a corner, and Delete. 3 to 16 corners.";

/// Asks for an outline.
pub type OutlineField = fn(&'static Entry, Option<&Outline>, &Sheet<'_>) -> Html;

/// An outline: what was drawn so far, or a way to begin.
pub fn outline_field(entry: &'static Entry, outline: Option<&Outline>, sheet: &Sheet<'_>) -> Html {
    let tooth = sheet.view.tooth;
    let wrong = sheet.wrong(entry.decision);
    let set: Set = {
        let (act, wrong) = (sheet.act.clone(), wrong.clone());
        Callback::from(move |outline| match outline {
            Ok(outline) => {
                let value = Some(Value::Outline(outline));
                act.emit(Action::Do(Event::Choose(entry.decision, value)));
            }
            Err(fault) => wrong.emit(format!("{}: {fault}.", entry.label)),
        })
    };
    let first = format!("{}-first-edge", entry.key);
    let Some(outline) = outline else {
        return asked(&sheet.frame(entry), false, not_drawn(first, set));
    };
    let ways = [["mesial", "distal"], [tooth.oral_word(), "apical"]];
    let fields = Fields { key: entry.key, outline, ways, set: &set, wrong: &wrong };
    let edges = EDGES
        .iter()
        .enumerate()
        .map(|(place, which)| edge(which, (place == 0).then(|| first.clone()), &fields));
    let corners = outline.tenths();
    let vertices = corners.iter().enumerate().map(|(place, at)| vertex(place, *at, &fields));
    let heads =
        ["Corner", &format!("mesial or distal, {} or apical, mm", ways[1][0]), "More or less"]
            .map(|head| said("th", "", head.to_owned()));
    let head = el("thead", "", vec![el("tr", "", heads.into())]);
    let table = vec![head, el("tbody", "", vertices.collect())];
    let summary = format!("{} corners", corners.len());
    let answers = together(vec![
        el("div", "edges", edges.collect()),
        folded("vertices", summary, vec![line("p", "reading", MORE), el("table", "", table)]),
        sheet.said_of(entry.decision, None),
    ]);
    asked(&sheet.frame(entry), true, answers)
}

/// Before the first corner: a button that puts the patch down. It goes once it is pressed: the first
/// edge takes the focus over.
fn not_drawn(first: String, set: Set) -> Html {
    let begin = Callback::from(move |_: MouseEvent| {
        set.emit(Outline::new(START.to_vec()));
        effects::focus_soon(first.clone());
    });
    let says = "Then drag its corners on the facial map, or give its edges here.";
    together(vec![button("Begin with a small patch", begin), line("p", "reading", says)])
}
