//! The caution that stands on every screen and print with a verdict.

use super::plain::{text, with};
use engine::debrief::CAUTION;
use yew::prelude::*;

/// The caution.
pub fn caution() -> Html {
    with("p", &[("class", "caution"), ("role", "note")], vec![text(CAUTION.to_owned())])
}
