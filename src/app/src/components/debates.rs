//! Debate cards: where sources differ on what this plan does, both sides beside each other, unmarked.

use super::plain::{el, folded, heading, items, labelled, line, said, shape, text};
use crate::prose::Prose;
use engine::anatomy::Tooth;
use engine::casing::capital;
use engine::debrief::{Debate, Verdict, debates, explain};
use yew::prelude::*;

/// A card for each debated verdict.
pub fn debate_cards(verdicts: &[Verdict], tooth: Tooth, prose: &Prose) -> Html {
    let found = debates(verdicts);
    if found.is_empty() {
        return Html::default();
    }
    let says = "No mark hangs on these. Know both sides, and what yours would be.";
    let mut parts = vec![line("p", "", says)];
    parts.extend(found.iter().map(|debate| card(debate, tooth, prose)));
    let heading = heading("h3", "debates-title", "Where teachers differ".to_owned());
    labelled("debates", "debates-title", heading, parts)
}

fn card(debate: &Debate<'_>, tooth: Tooth, prose: &Prose) -> Html {
    let rule = debate.verdict.rule;
    let named = |text: &str| tooth.named(text).into_owned();
    let quoted = |text: &str| capital(&named(text));
    let long = prose.of(rule.id);
    let [one, other] = long.map_or_else(Default::default, |long| long.positions.clone());
    let sources = long.map_or(&[][..], |long| &long.sources);
    let statement = format!(" {}", named(&prose.statement(rule)));
    let mut parts = vec![
        el("summary", "", vec![shape("◇"), text(statement)]),
        said("p", "measured", explain(debate.verdict, tooth).measured),
    ];
    if !one.is_empty() {
        let both = [one, other].map(|side| said("blockquote", "", quoted(&side)));
        parts.push(el("div", "sides", both.into()));
    }
    let here = text(format!("{} {}", named(&debate.leaves), named(&debate.asks)));
    parts.push(el("p", "", vec![line("strong", "", "Here: "), here]));
    let sources = items("", sources.iter().map(|source| named(source)).collect());
    parts.push(folded("sources", "Who says so".to_owned(), vec![sources]));
    el("details", "debate", parts)
}
