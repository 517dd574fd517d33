//! Receptors of a film, by size.

use crate::components::hold::Held;
use crate::components::plain::group;
use engine::session::Exposure;
use web_sys::Event as Change;
use yew::prelude::{Callback, Html, html};

/// The sizes, with the lengths of their sides.
const SIZES: [&str; 3] = ["size 0, 22 x 35 mm", "size 1, 24 x 40 mm", "size 2, 31 x 41 mm"];

/// Asks which size of receptor is put in.
pub fn receptors(aim: &Held<Exposure>) -> Html {
    let one = |size: u8| {
        let turned = aim.clone();
        let onchange = Callback::from(move |_: Change| turned.set(Exposure { size, ..*turned }));
        html! { <label class="option"><input type="radio" name="receptor" checked={aim.size == size} {onchange} /><span>{ SIZES[usize::from(size)] }</span></label> }
    };
    group("options", "radiogroup", "Receptor", (0..3).map(one).collect())
}
