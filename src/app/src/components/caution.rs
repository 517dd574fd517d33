//! The caution that stands on every screen and print with a verdict.

use engine::debrief::CAUTION;
use yew::prelude::*;

/// The caution.
pub fn caution() -> Html {
    html! { <p class="caution" role="note">{ CAUTION }</p> }
}
