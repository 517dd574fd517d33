//! What this tool is and is not: the first visit opens with it.

use crate::components::caution::caution;
use crate::components::plain::{el, line, list, press};
use yew::prelude::*;

/// The briefing.
pub fn briefing(on_read: Callback<()>) -> Html {
    let read = Callback::from(move |_: MouseEvent| on_read.emit(()));
    let read = press(&[("class", "main")], "I have read this".to_owned(), read);
    let parts = vec![
        line("h1", "", "Before you begin"),
        line(
            "p",
            "lead",
            "This is a rehearsal room. It trains decisions at an extraction socket: what to examine, when to place, how to cut, fill and cover.",
        ),
        list(&[
            "Every case is synthetic. No patient stands behind it, and none may be put into it.",
            "It trains decisions, not hands: there is no touch here, no bleeding, no handling of tissue, no sterility, no patient's distress.",
            "A sound plan here is not permission to operate.",
            "Each verdict names its sources and says where they differ. Figures that were not re-read in their source say so.",
            "Medical and drug questions follow your local guidelines and the prescriber, never this room.",
            "Seating torque, closing force and healing are teaching models, labelled so wherever they show.",
            "Nothing that you do leaves this browser.",
        ]),
        caution(),
        read,
    ];
    el("article", "page briefing", parts)
}
