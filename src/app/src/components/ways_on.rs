//! What can be done at the end of a debrief.

use super::plain::{button, el, link, press};
use crate::effects;
use crate::keep::Kept;
use crate::keep::file::of_one;
use crate::store::Bench;
use std::rc::Rc;
use yew::prelude::*;

/// The same again where its set allows another attempt, the attempt as a file, paper, another case.
pub fn ways_on(bench: Rc<Bench>, kept: Kept, again: Option<Callback<MouseEvent>>) -> Html {
    let again = again.map(|again| press(&[], "The same case again".to_owned(), again));
    // The way that a set of one case, or the last case of any, leads on to.
    let hand_in = match kept {
        Kept::Here(_) => link("#/portfolio".to_owned(), "Hand in".to_owned()),
        _ => Html::default(),
    };
    let parts = vec![
        again.unwrap_or_default(),
        button("Save this attempt", saving(bench, kept)),
        button("Print", Callback::from(|_: MouseEvent| effects::print())),
        link("#/".to_owned(), "Another case".to_owned()),
        hand_in,
    ];
    el("p", "row", parts)
}

/// Saves the attempt as a file: choices and what was held against verdicts, never marks.
fn saving(bench: Rc<Bench>, kept: Kept) -> Callback<MouseEvent> {
    Callback::from(move |_| {
        let (bench, kept) = (bench.clone(), kept.clone());
        wasm_bindgen_futures::spawn_local(async move {
            effects::save("wallwise-attempt.json", &of_one(&bench, &kept).await);
        });
    })
}
