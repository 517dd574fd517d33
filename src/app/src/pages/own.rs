//! Pages on what one has done oneself.

use crate::store::Room;
use yew::prelude::*;

/// What they need.
#[derive(Properties, PartialEq)]
pub struct OwnProps {
    /// The room.
    pub room: UseReducerHandle<Room>,
}

/// The pages.
#[component]
pub fn OwnPages(_props: &OwnProps) -> Html {
    html! { <p class="page">{ "…" }</p> }
}
