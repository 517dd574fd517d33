//! Which attempts are in the portfolio: tick boxes, one by one, by set, all or none.

use crate::components::plain::{button, el, said};
use crate::shelf::Shelf;
use learning::past::Past;
use yew::prelude::*;

/// Whether an attempt is in; `out` says which are left out, by their places, and what lies beyond it
/// is in.
#[must_use]
pub fn is_in(out: &[bool], place: usize) -> bool {
    !out.get(place).copied().unwrap_or(false)
}

/// Puts attempts in or leaves them out.
pub type Turn = Callback<(Vec<usize>, bool)>;

/// The tick boxes; told which attempts are to be in from now on, or out.
pub fn choose(shelf: &Shelf, out: &[bool], turn: &Turn) -> Vec<Html> {
    let pasts = &shelf.pasts;
    let mut sets: Vec<(Option<&str>, Vec<usize>)> = Vec::new();
    for (place, past) in pasts.iter().enumerate() {
        let set = past.head.set.as_deref();
        match sets.iter_mut().find(|(other, _)| *other == set) {
            Some((_, places)) => places.push(place),
            None => sets.push((set, vec![place])),
        }
    }
    let every = |is_in: bool| {
        let places: Vec<usize> = (0..pasts.len()).collect();
        turn.reform(move |_: MouseEvent| (places.clone(), is_in))
    };
    let both = vec![button("All of them", every(true)), button("None of them", every(false))];
    let mut parts = vec![el("p", "row", both)];
    for (set, places) in sets {
        let title = match set {
            Some(set) => shelf.set_title(set),
            None => "Cases outside sets".to_owned(),
        };
        let one = |place: &usize| ticked(named(shelf, &pasts[*place]), vec![*place], out, turn);
        let each = places.iter().map(one).collect();
        let all = said("span", "", format!("All {} of them", places.len()));
        let group = vec![
            said("legend", "decision-name", title),
            ticked(all, places, out, turn),
            el("div", "within", each),
        ];
        parts.push(el("fieldset", "decision", group));
    }
    parts
}

/// A tick box for attempts: ticked where all of them are in.
fn ticked(label: Html, places: Vec<usize>, out: &[bool], turn: &Turn) -> Html {
    let checked = places.iter().all(|place| is_in(out, *place));
    tick(label, checked, turn.reform(move |_: Event| (places.clone(), !checked)))
}

fn named(shelf: &Shelf, past: &Past) -> Html {
    let so_far = if past.is_over() { "" } else { ", not finished" };
    let when = format!("{}, attempt {}{so_far}", shelf.day(past), past.head.number);
    let parts = vec![
        said("span", "", shelf.title(past)),
        el("br", "", Vec::new()),
        said("span", "from", when),
    ];
    el("span", "", parts)
}

/// A tick box with what it is for.
pub fn tick(label: Html, checked: bool, onchange: Callback<Event>) -> Html {
    tick_where(label, checked, false, onchange)
}

/// The same, which may not be there to be ticked yet.
pub fn tick_where(label: Html, checked: bool, disabled: bool, onchange: Callback<Event>) -> Html {
    html! { <label class="option"><input type="checkbox" {checked} {disabled} {onchange} />{ label }</label> }
}
