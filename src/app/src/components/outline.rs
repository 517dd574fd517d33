//! A decision with an outline: edges as numbers, vertices as numbers, and the handles on the map.

use super::choice::asked;
use super::corners::{edge, vertex};
use crate::effects;
use engine::geometry::Outline;
use engine::plan::{Entry, Value};
use yew::prelude::*;

/// What an outline needs.
#[derive(Properties)]
pub struct OutlineProps {
    /// The decision.
    pub entry: &'static Entry,
    /// The outline so far.
    pub outline: Option<Outline>,
    /// Told when an answer is given.
    pub on_choose: Callback<Value>,
}

impl PartialEq for OutlineProps {
    fn eq(&self, other: &Self) -> bool {
        self.entry.key == other.entry.key && self.outline == other.outline
    }
}

/// Where drawing starts: a small patch over the crest, which is nobody's answer.
const START: [[i32; 2]; 8] =
    [[-20, -10], [0, -10], [20, -10], [20, 10], [20, 30], [0, 30], [-20, 30], [-20, 10]];

/// The edges in the order of their fields: name, which part of a vertex, whether the least.
const EDGES: [(&str, usize, bool); 4] = [
    ("Mesial edge", 0, true),
    ("Distal edge", 0, false),
    ("Coronal or oral edge", 1, true),
    ("Apical edge", 1, false),
];

/// An outline.
#[component]
pub fn OutlineField(props: &OutlineProps) -> Html {
    let wrong = use_state(|| None::<String>);
    let first = format!("{}-first-edge", props.entry.key);
    let begun = use_mut_ref(|| false);
    {
        // The button goes once it is pressed: the first edge takes the focus over.
        let (first, begun) = (first.clone(), begun.clone());
        use_effect_with(props.outline.is_some(), move |drawn| {
            if *drawn && begun.replace(false) {
                effects::focus(&first);
            }
        });
    }
    let Some(outline) = props.outline.clone() else {
        let on_choose = props.on_choose.clone();
        return not_drawn(props.entry, move || begun.replace(true), on_choose);
    };
    let set = {
        let (on_choose, wrong) = (props.on_choose.clone(), wrong.clone());
        Callback::from(move |vertices: Vec<[i32; 2]>| match Outline::new(vertices) {
            Ok(outline) => {
                wrong.set(None);
                on_choose.emit(Value::Outline(outline));
            }
            Err(fault) => wrong.set(Some(fault.to_string())),
        })
    };
    let edges = EDGES.iter().enumerate().map(|(place, which)| {
        edge(which, (place == 0).then(|| first.clone()), &outline, &set, &wrong)
    });
    let vertices = outline
        .tenths()
        .iter()
        .enumerate()
        .map(|(place, at)| vertex(place, *at, &outline, &set, &wrong));
    let answers = html! {
        <>
            <div class="edges">{ for edges }</div>
            <details class="vertices">
                <summary>{ format!("{} corners", outline.tenths().len()) }</summary>
                <table>
                    <thead><tr><th>{ "Corner" }</th><th>{ "mesial − / distal +, mm" }</th><th>{ "oral − / apical +, mm" }</th></tr></thead>
                    <tbody>{ for vertices }</tbody>
                </table>
            </details>
            if let Some(why) = &*wrong { <p class="wrong" role="alert">{ why.clone() }</p> }
        </>
    };
    asked(props.entry, true, answers)
}

/// Before the first corner: a button that puts the patch down, once `begins` has taken note of it.
fn not_drawn(
    entry: &'static Entry,
    begins: impl Fn() -> bool + 'static,
    on_choose: Callback<Value>,
) -> Html {
    let begin = Callback::from(move |_: MouseEvent| {
        if let Ok(outline) = Outline::new(START.to_vec()) {
            begins();
            on_choose.emit(Value::Outline(outline));
        }
    });
    let answers = html! {
        <>
            <button type="button" class="quiet" onclick={begin}>{ "Begin with a small patch" }</button>
            <p class="reading">{ "Then drag its corners on the facial map, or give its edges here." }</p>
        </>
    };
    asked(entry, false, answers)
}
