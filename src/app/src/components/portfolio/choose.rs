//! Which attempts are in the portfolio: tick boxes, one by one, by set, all or none.

use crate::shelf::Shelf;
use learning::past::Past;
use std::rc::Rc;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct ChooseProps {
    /// The attempts.
    pub shelf: Shelf,
    /// Which are left out, by their places; what lies beyond is in.
    pub out: Rc<Vec<bool>>,
    /// Told what is left out now.
    pub on_change: Callback<Vec<bool>>,
}

/// Whether an attempt is in.
#[must_use]
pub fn is_in(out: &[bool], place: usize) -> bool {
    !out.get(place).copied().unwrap_or(false)
}

/// The tick boxes.
#[component]
pub fn Choose(props: &ChooseProps) -> Html {
    let pasts = &props.shelf.pasts;
    let mut sets: Vec<(Option<&str>, Vec<usize>)> = Vec::new();
    for (place, past) in pasts.iter().enumerate() {
        let set = past.head.set.as_deref();
        match sets.iter_mut().find(|(other, _)| *other == set) {
            Some((_, places)) => places.push(place),
            None => sets.push((set, vec![place])),
        }
    }
    let turn = |places: Vec<usize>, is_in: bool| {
        let (out, tell, count) = (props.out.clone(), props.on_change.clone(), pasts.len());
        Callback::from(move |()| {
            let mut out = Vec::clone(&out);
            out.resize(count, false);
            for place in &places {
                out[*place] = !is_in;
            }
            tell.emit(out);
        })
    };
    let every: Vec<usize> = (0..pasts.len()).collect();
    let all = turn(every.clone(), true).reform(|_: MouseEvent| ());
    let none = turn(every, false).reform(|_: MouseEvent| ());
    let one = |place: &usize| {
        let checked = is_in(&props.out, *place);
        let label = named(&props.shelf, &pasts[*place]);
        tick(label, checked, turn(vec![*place], !checked))
    };
    let set = |(set, places): &(Option<&str>, Vec<usize>)| {
        let title =
            set.map_or_else(|| "Cases outside sets".to_owned(), |set| props.shelf.set_title(set));
        let checked = places.iter().all(|place| is_in(&props.out, *place));
        let label = html! { <span>{ format!("All {} of them", places.len()) }</span> };
        html! {
            <fieldset class="decision">
                <legend class="decision-name">{ title }</legend>
                { tick(label, checked, turn(places.clone(), !checked)) }
                <div class="within">{ for places.iter().map(one) }</div>
            </fieldset>
        }
    };
    html! {
        <>
            <p class="row">
                <button type="button" class="quiet" onclick={all}>{ "All of them" }</button>
                <button type="button" class="quiet" onclick={none}>{ "None of them" }</button>
            </p>
            { for sets.iter().map(set) }
        </>
    }
}

fn named(shelf: &Shelf, past: &Past) -> Html {
    let so_far = if past.is_over() { "" } else { ", not finished" };
    html! {
        <span>{ shelf.title(past) }<br /><span class="from">{ format!("{}, attempt {}{so_far}", shelf.day(past), past.head.number) }</span></span>
    }
}

/// A tick box with what it is for.
pub fn tick(label: Html, checked: bool, turn: Callback<()>) -> Html {
    let onchange = turn.reform(|_: Event| ());
    html! { <label class="option"><input type="checkbox" {checked} {onchange} />{ label }</label> }
}
