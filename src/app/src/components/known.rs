//! What I know: findings, each with where it came from.

use super::plain::{el, folded, items, line, said, text, with};
use engine::rules::Knowledge;
use engine::session::{Report, View};
use yew::prelude::*;

/// What one examination or act reported.
pub fn report(report: &Report) -> Html {
    told(report.title.clone(), format!(" · {}", report.step.label()), report.lines.clone())
}

/// A part under its title, which says where it is from.
fn told(title: String, from: String, lines: Vec<String>) -> Html {
    let title = el("h3", "", vec![text(title), said("span", "from", from)]);
    el("section", "report", vec![title, items("", lines)])
}

/// The panel.
pub fn known(view: &View, reports: &[Report]) -> Html {
    let facts = view.known.iter().filter_map(|known| match known.knowledge {
        Knowledge::Seen(source) => {
            let fact = view.tooth.named(known.fact.words()).into_owned();
            let source = format!(" · {}", source.words());
            Some(el("li", "", vec![said("span", "", fact), said("span", "from", source)]))
        }
        _ => None,
    });
    let facts = vec![el("ul", "", facts.collect())];
    let mut parts = vec![
        el("summary", "", vec![line("h2", "", "What I know")]),
        told("History".to_owned(), " · told unasked".to_owned(), view.history.clone()),
    ];
    parts.extend(reports.iter().map(report));
    parts.push(folded("facts", "Facts seen, and by what".to_owned(), facts));
    with("details", &[("class", "known"), ("open", "open")], parts)
}
