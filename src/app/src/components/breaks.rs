//! Where the learner's plan breaks: a bar for each finding of the case, and a second case across one of
//! the edges.

mod look;

use super::figure::Drawing;
use crate::effects;
use crate::prose::Prose;
use crate::route::Route;
use crate::store::Bench;
use engine::rules::Rule;
use engine::search::Holds;
use look::{Found, look};
use plots::holds_plot;
use std::rc::Rc;
use yew::prelude::*;

/// How wide a bar is laid out at most, and what stands beside it on a phone, CSS pixels.
const BAR: f64 = 360.0;
const BESIDE: f64 = 72.0;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct BreaksProps {
    /// The case.
    pub bench: Rc<Bench>,
    /// Rules that the learner broke.
    pub broken: Vec<&'static Rule>,
}

/// Where the plan breaks.
#[component]
pub fn BreaksView(props: &BreaksProps) -> Html {
    let found = use_state(Found::default);
    {
        let (found, bench, broken) = (found.clone(), props.bench.clone(), props.broken.clone());
        use_effect_with(props.bench.session.acts(), move |_| {
            wasm_bindgen_futures::spawn_local(look(bench, broken, move |so_far| found.set(so_far)));
        });
    }
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let rows = found.holds.iter().filter(|one| !one.is_open());
    html! {
        <section class="breaks" aria-labelledby="breaks-title">
            <h3 id="breaks-title">{ "Where your plan breaks" }</h3>
            <p>{ "How far each finding of this case could be otherwise, all else being the same, before your plan is judged otherwise." }</p>
            <ul class="plain">{ for rows.map(|one| row(one, &props.bench, &prose)) }</ul>
            { unmoved(&found, &props.bench) }
            if !found.done { <p role="status">{ "Trying the findings one by one." }</p> }
            { second(&found.pair) }
        </section>
    }
}

fn row(one: &Holds, bench: &Bench, prose: &Prose) -> Html {
    let tooth = bench.session.case().site.tooth;
    let wide = BAR.min(effects::page_width() - BESIDE);
    let past = one.ends.iter().map(|end| {
        let statement = end.rule().map_or_else(String::new, |rule| prose.statement(rule));
        one.past(end, &statement, tooth)
    });
    let past = past.filter(|words| !words.is_empty());
    let id = format!("holds-{}", one.aspect.scaled().key);
    html! {
        <li>
            <Drawing {id} figure={holds_plot(one, tooth, wide)} />
            { for past.map(|words| html! { <p>{ words }</p> }) }
        </li>
    }
}

/// What could be anything.
fn unmoved(found: &Found, bench: &Bench) -> Html {
    let tooth = bench.session.case().site.tooth;
    let name = |one: &Holds| tooth.named(one.aspect.scaled().words).to_lowercase();
    let names: Vec<String> = found.holds.iter().filter(|one| one.is_open()).map(name).collect();
    if names.is_empty() || !found.done {
        return Html::default();
    }
    html! { <p>{ format!("Whatever these are, the verdicts stay: {}.", names.join("; ")) }</p> }
}

/// The way to a second case.
fn second(pair: &Option<Option<Route>>) -> Html {
    match pair {
        None => Html::default(),
        Some(None) => {
            html! { <p>{ "No second case was found that differs in one thing and asks for another choice." }</p> }
        }
        Some(Some(route)) => html! {
            <p><a class="onward" href={route.fragment()}>{ "A second case that differs in one thing" }</a></p>
        },
    }
}
