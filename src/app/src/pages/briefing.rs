//! What this tool is and is not: the first visit opens with it.

use engine::debrief::CAUTION;
use yew::prelude::*;

/// The briefing.
pub fn briefing(on_read: Callback<()>) -> Html {
    let read = Callback::from(move |_: MouseEvent| on_read.emit(()));
    html! {
        <article class="page briefing">
            <h1>{ "Before you begin" }</h1>
            <p class="lead">{ "This is a rehearsal room. It trains decisions at an extraction socket: what to examine, when to place, how to cut, fill and cover." }</p>
            <ul>
                <li>{ "Every case is synthetic. No patient stands behind it, and none may be put into it." }</li>
                <li>{ "It trains decisions, not hands: there is no touch here, no bleeding, no handling of tissue, no sterility, no patient's distress." }</li>
                <li>{ "A sound plan here is not permission to operate." }</li>
                <li>{ "Each verdict names its sources and says where they differ. Figures that were not re-read in their source say so." }</li>
                <li>{ "Medical and drug questions follow your local guidelines and the prescriber, never this room." }</li>
                <li>{ "Seating torque, closing force and healing are teaching models, labelled so wherever they show." }</li>
                <li>{ "Nothing that you do leaves this browser." }</li>
            </ul>
            <p class="caution" role="note">{ CAUTION }</p>
            <button type="button" class="main" onclick={read}>{ "I have read this" }</button>
        </article>
    }
}
