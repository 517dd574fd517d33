//! Both cases of a pair beside each other: charts and what is really there.

use crate::components::figure::Drawing;
use engine::chart::Case;
use engine::figures::{self, Show};
use engine::plan::{Draft, Plan};
use engine::rules::Known;
use engine::search::Pair;
use engine::session::{all_reports, history_lines};
use yew::prelude::*;

/// How wide a figure is laid out, CSS pixels.
const WIDE: f64 = 320.0;

/// Both.
pub fn sides(pair: &Pair) -> Html {
    html! {
        <div class="sides">
            { side("first", "The first case", &pair.base) }
            { side("second", "The second case", &pair.other) }
        </div>
    }
}

fn side(id: &str, title: &str, case: &Case) -> Html {
    let (plan, draft) = (Plan::default(), Draft::empty());
    let known = Known::of(case, &plan);
    let show =
        Show { case, plan: &plan, draft: &draft, known: &known, reveal: true, lit: None, px: WIDE };
    let lines = history_lines(case);
    let read: Vec<String> = all_reports(case).into_iter().flat_map(|report| report.lines).collect();
    let list = |lines: &[String]| html! { <ul>{ for lines.iter().map(|line| html! { <li>{ line.clone() }</li> }) }</ul> };
    html! {
        <section aria-labelledby={format!("{id}-title")}>
            <h2 id={format!("{id}-title")}>{ title.to_owned() }</h2>
            <p>{ &case.title }</p>
            <Drawing id={format!("{id}-map")} figure={figures::facial_map(&show)} />
            <Drawing id={format!("{id}-section")} figure={figures::section(&show)} />
            <details><summary>{ "Chart" }</summary>{ list(&lines) }</details>
            <details><summary>{ "What examinations read" }</summary>{ list(&read) }</details>
        </section>
    }
}
