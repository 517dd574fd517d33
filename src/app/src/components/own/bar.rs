//! At the end of a case: the way on in the sitting that it belongs to.

use super::sit::{Sit, SitProps};
use crate::components::changed::use_changed;
use crate::components::hold::use_held;
use crate::components::plain::{el, link, onward, said};
use crate::components::view::view;
use crate::keep::shelf::shelf;
use crate::library::Library;
use crate::route::Route;
use crate::sitting::done;
use crate::store::Bench;
use learning::parameters::SITTING;
use learning::past::Past;
use std::rc::Rc;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct BarProps {
    /// The case.
    pub bench: Rc<Bench>,
}

/// The way on; nothing outside a sitting.
#[component]
pub fn SittingBar(props: &BarProps) -> Html {
    let pasts = use_held(|| None::<Rc<Vec<Past>>>);
    let sitting = props.bench.asked.sitting.clone();
    {
        let pasts = pasts.clone();
        // The case itself is among them once all of it is kept.
        let kept = props.bench.kept == props.bench.latest().events().len();
        use_changed((kept, sitting.clone()), move |(kept, sitting)| {
            if *kept && sitting.is_some() {
                wasm_bindgen_futures::spawn_local(async move {
                    if let Ok(shelf) = shelf(Library::Coming).await {
                        pasts.set(Some(shelf.pasts));
                    }
                });
            }
        });
    }
    let (Some(sitting), Some(pasts)) = (sitting, &*pasts) else { return Html::default() };
    let count = done(pasts, &sitting);
    let whole = Route::Sitting(sitting.clone()).fragment();
    let sit = SitProps {
        pasts: pasts.clone(),
        sitting: Some(sitting),
        says: "Next case".into(),
        anyway: false,
    };
    let way = if count < SITTING {
        let end = link(whole, "End the sitting here".to_owned());
        el("p", "row", vec![view::<Sit>(sit), end])
    } else {
        onward(&whole, "End of the sitting: what to take away")
    };
    let count = said("p", "", format!("Case {count} of {SITTING} in this sitting."));
    el("section", "next-worked", vec![count, way])
}
