//! What the page shows.

use engine::plan::Step;
use yew::prelude::*;

/// The steps of care, in order.
#[component]
pub fn Room() -> Html {
    let steps = Step::ALL.iter().map(|step| step.label()).collect::<Vec<_>>().join(", ");
    html! {
        <>
            <h1>{ "Wallwise" }</h1>
            <p>{ "A rehearsal room on synthetic cases, never clinical advice." }</p>
            <p id="steps">{ steps }</p>
        </>
    }
}
