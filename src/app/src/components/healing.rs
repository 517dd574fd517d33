//! How far courses of healing lie apart: the learner's treatment, that of the nearest sound plan, none.
//! Folded away, late in the debrief: it judges nothing.

use super::figure::still;
use super::nearest::Looked;
use super::plain::{el, folded, heading, labelled, line, list, said, status};
use crate::components::changed::use_worked;
use crate::effects;
use crate::store::Bench;
use engine::healing::{Illustration, LABEL, LIMITS, Quantity, SOURCES, csv, illustration};
use engine::plan::Plan;
use plots::fan_plot;
use std::rc::Rc;
use yew::prelude::*;

/// How wide a picture is laid out at most, and what stands beside it on a phone, CSS pixels.
const WIDE: f64 = 380.0;
const BESIDE: f64 = 72.0;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct HealingProps {
    /// The case.
    pub bench: Rc<Bench>,
    /// The nearest sound plan, once it has been looked for.
    pub looked: Looked,
}

/// The bands, with what they are and what they are not.
#[component]
pub fn HealingView(props: &HealingProps) -> Html {
    let acts = props.bench.session.acts();
    let shown = use_worked((acts, props.looked.clone()), |(_, looked)| shown(&props.bench, looked));
    let body = match shown.as_ref() {
        None => vec![status("Waiting for the nearest sound plan.".to_owned())],
        Some(shown) => told(shown),
    };
    let summary = "Yours, the nearest sound plan and no treatment, over twelve months";
    let title = "How a site like this heals: an illustration".to_owned();
    let heading = heading("h3", "healing-title", title);
    let parts = vec![line("p", "", LABEL), folded("of-step", summary.to_owned(), body)];
    labelled("healing", "healing-title", heading, parts)
}

/// The picture once it can be drawn; nothing while the search goes on.
fn shown(bench: &Bench, looked: &Looked) -> Option<Illustration> {
    let session = &bench.session;
    let nearest = match looked {
        Looked::Looking => return None,
        Looked::Found(found) => found.as_ref().map(|found| &found.0.draft),
    };
    let sound = nearest.and_then(|draft| Plan::from_draft(draft, session.opened()).ok());
    Some(illustration(session.case(), session.plan(), sound.as_ref()))
}

fn told(shown: &Illustration) -> Vec<Html> {
    let wide = WIDE.min(effects::page_width() - BESIDE);
    let drawn = Quantity::ALL.map(|quantity| {
        let id = format!("healing-{}", quantity.key());
        still(fan_plot(shown, quantity, wide), Some(id.into()))
    });
    let arms = shown.arms.iter().map(|arm| said("li", "", shown.words(arm)));
    let numbers = html! {
        <textarea class="csv" readonly=true rows="8" aria-label="Millimetres lost, as comma-separated values" value={csv(shown)} />
    };
    vec![
        el("ul", "", arms.collect()),
        el("div", "sides", drawn.into()),
        folded("sources", "What it does not know".to_owned(), vec![list(LIMITS)]),
        folded("sources", "Where its numbers come from".to_owned(), vec![list(SOURCES)]),
        folded("", "The numbers, month by month".to_owned(), vec![numbers]),
    ]
}
