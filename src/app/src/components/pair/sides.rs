//! Both cases of a pair beside each other: charts and what is really there.

use crate::components::figure::still;
use crate::components::plain::{el, folded, heading, items, labelled, said};
use engine::chart::Case;
use engine::figures::{self, Figure, Show};
use engine::plan::{Draft, Plan};
use engine::rules::Known;
use engine::search::Pair;
use engine::session::{all_reports, history_lines};
use yew::prelude::*;

/// How wide a figure is laid out, CSS pixels.
const WIDE: f64 = 320.0;

/// Both.
pub fn sides(pair: &Pair) -> Html {
    let both = vec![
        side("first", "The first case", &pair.base),
        side("second", "The second case", &pair.other),
    ];
    el("div", "sides", both)
}

fn side(id: &str, title: &str, case: &Case) -> Html {
    let (plan, draft) = (Plan::default(), Draft::empty());
    let known = Known::of(case, &plan);
    let show =
        Show { case, plan: &plan, draft: &draft, known: &known, reveal: true, lit: None, px: WIDE };
    let lines = history_lines(case);
    let read: Vec<String> = all_reports(case).into_iter().flat_map(|report| report.lines).collect();
    let mut parts = vec![said("p", "", case.title.clone())];
    parts.extend(drawn(id, figures::facial_map(&show), figures::section(&show)));
    parts.push(folded("", "Chart".to_owned(), vec![items("", lines)]));
    parts.push(folded("", "What examinations read".to_owned(), vec![items("", read)]));
    let id = format!("{id}-title");
    labelled("", &id, heading("h2", &id, title.to_owned()), parts)
}

/// The map and the section of one side.
pub fn drawn(id: &str, map: Figure, section: Figure) -> [Html; 2] {
    let drawing = |which: &str, figure| still(figure, Some(format!("{id}-{which}").into()));
    [drawing("map", map), drawing("section", section)]
}
