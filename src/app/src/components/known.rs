//! What I know: findings, each with where it came from.

use engine::rules::Knowledge;
use engine::session::{Report, View};
use yew::prelude::*;

/// What one examination or act reported.
pub fn report(report: &Report) -> Html {
    html! {
        <section class="report">
            <h3>{ &report.title }<span class="from">{ format!(" · {}", report.step.label()) }</span></h3>
            <ul>{ for report.lines.iter().map(|line| html! { <li>{ line }</li> }) }</ul>
        </section>
    }
}

/// The panel.
pub fn known(view: &View, reports: &[Report]) -> Html {
    let reports = reports.iter().map(report);
    let facts = view.known.iter().filter_map(|known| match known.knowledge {
        Knowledge::Seen(source) => Some(html! {
            <li><span>{ view.tooth.named(known.fact.words()) }</span><span class="from">{ format!(" · {}", source.words()) }</span></li>
        }),
        _ => None,
    });
    html! {
        <details class="known" open=true>
            <summary><h2>{ "What I know" }</h2></summary>
            <section class="report">
                <h3>{ "History" }<span class="from">{ " · told unasked" }</span></h3>
                <ul>{ for view.history.iter().map(|line| html! { <li>{ line }</li> }) }</ul>
            </section>
            { for reports }
            <details class="facts">
                <summary>{ "Facts seen, and by what" }</summary>
                <ul>{ for facts }</ul>
            </details>
        </details>
    }
}
