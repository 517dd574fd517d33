//! The button that leads to the next case of a sitting.

use crate::components::hold::use_held;
use crate::components::plain::{disabled, el, live, press};
use crate::effects;
use crate::route::Route;
use crate::sitting::{Onto, fresh, onto};
use learning::next::{End, Wish};
use learning::past::Past;
use std::rc::Rc;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct SitProps {
    /// Everything done so far.
    pub pasts: Rc<Vec<Past>>,
    /// The sitting; a new one where there is none.
    pub sitting: Option<String>,
    /// What it says.
    pub says: AttrValue,
    /// Whether to go on where nothing is due.
    pub anyway: bool,
}

/// The button.
#[component]
pub fn Sit(props: &SitProps) -> Html {
    let looking = use_held(|| false);
    let said = use_held(|| None::<&'static str>);
    let go = {
        let (looking, said) = (looking.clone(), said.clone());
        let pasts = props.pasts.clone();
        let sitting = props.sitting.clone();
        let wish = if props.anyway { Wish::Anyway } else { Wish::Due };
        Callback::from(move |_: MouseEvent| {
            let (looking, said, pasts) = (looking.clone(), said.clone(), pasts.clone());
            let sitting = sitting.clone().unwrap_or_else(fresh);
            looking.set(true);
            said.set(None);
            wasm_bindgen_futures::spawn_local(async move {
                effects::after_painting().await;
                match onto(&pasts, &sitting, wish).await {
                    Onto::Case(route) => effects::go(&route.fragment()),
                    Onto::Over(End::Enough) => effects::go(&Route::Sitting(sitting).fragment()),
                    Onto::Over(End::NothingDue) => said.set(Some("Nothing is due now.")),
                    Onto::Nothing => said.set(Some("No case was found. Try once more.")),
                }
                looking.set(false);
            });
        })
    };
    let attributes = [("class", "main"), disabled(*looking)];
    let says = match *looking {
        true => "Looking for a case that calls for it.",
        false => (*said).unwrap_or_default(),
    };
    let says = live(says.to_owned());
    el("span", "sit", vec![press(&attributes, props.says.to_string(), go), says])
}
