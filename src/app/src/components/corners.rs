//! The corners of an outline as numbers, each with the way in which it lies.

use super::plain::{el, press, text, with};
use crate::amount::{in_words, placed, text_of};
use crate::effects;
use engine::geometry::{Outline, OutlineFault};
use yew::prelude::*;

/// Told the outline, or why there is none.
pub type Set = Callback<Result<Outline, OutlineFault>>;
/// What the two ways along each part of a corner are called.
pub type Ways = [[&'static str; 2]; 2];

/// What the fields of edges and corners are made from.
#[derive(Debug)]
pub struct Fields<'a> {
    /// Key of the decision.
    pub key: &'static str,
    /// The outline so far.
    pub outline: &'a Outline,
    /// What its ways are called.
    pub ways: Ways,
    /// Told the next outline.
    pub set: &'a Set,
    /// Told what is wrong with what was typed.
    pub wrong: &'a Callback<String>,
}

/// A field for tenths of a millimetre in one part of a corner.
pub fn field(
    fields: &Fields<'_>,
    name: &str,
    part: usize,
    here: i32,
    id: Option<String>,
    on_typed: Callback<i32>,
) -> Html {
    let (ways, wrong, called) = (fields.ways[part], fields.wrong.clone(), name.to_owned());
    let typed = Callback::from(move |event: Event| match placed(&text_of(&event), here, ways) {
        Some(there) => on_typed.emit(there),
        None => {
            let [less, more] = ways;
            let expected =
                format!("{called}: expected millimetres in steps of 0.1, then {less} or {more}");
            wrong.emit(expected);
        }
    });
    html! { <input {id} type="text" size="9" value={in_words(here, ways)} aria-label={format!("{name}, mm")} onchange={typed} /> }
}

/// One corner: two numbers, one more after it, and itself taken away.
pub fn vertex(place: usize, at: [i32; 2], fields: &Fields<'_>) -> Html {
    let number = |part: usize, name: &str| {
        let (vertices, set) = (fields.outline.tenths().to_vec(), fields.set.clone());
        let typed = Callback::from(move |there: i32| {
            let mut vertices = vertices.clone();
            vertices[place][part] = there;
            set.emit(Outline::new(vertices));
        });
        field(fields, &format!("corner {}, {name}", place + 1), part, at[part], None, typed)
    };
    let count = fields.outline.tenths().len();
    let button = |more: bool| {
        let (outline, set) = (fields.outline.clone(), fields.set.clone());
        // With the last corner goes its button: the one before takes the focus over.
        let before = (!more && count > 3 && place + 1 == count).then(|| off(fields.key, place - 1));
        Callback::from(move |_: MouseEvent| {
            before.iter().for_each(|id| effects::focus(id));
            set.emit(if more { outline.with_corner(place) } else { outline.without_corner(place) });
        })
    };
    let corner = place + 1;
    let more = format!("Add a corner after corner {corner}");
    let less = format!("Take corner {corner} away");
    let id = off(fields.key, place);
    let less = [("id", id.as_str()), ("class", "step"), ("aria-label", less.as_str())];
    let numbers = vec![number(0, "mesiodistal"), number(1, "apical")];
    let buttons = vec![
        press(&[("class", "step"), ("aria-label", &more)], "+".to_owned(), button(true)),
        press(&less, "×".to_owned(), button(false)),
    ];
    let pair = |parts| el("td", "", vec![el("div", "pair", parts)]);
    let head = with("th", &[("scope", "row")], vec![text(corner.to_string())]);
    el("tr", "", vec![head, pair(numbers), pair(buttons)])
}

fn off(key: &str, place: usize) -> String {
    format!("{key}-off-{place}")
}
