//! Debate cards: where sources differ on what this plan does, both sides beside each other, unmarked.

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
    html! {
        <section class="debates" aria-labelledby="debates-title">
            <h3 id="debates-title">{ "Where teachers differ" }</h3>
            <p>{ "No mark hangs on these. Know both sides, and what yours would be." }</p>
            { for found.iter().map(|debate| card(debate, tooth, prose)) }
        </section>
    }
}

fn card(debate: &Debate<'_>, tooth: Tooth, prose: &Prose) -> Html {
    let rule = debate.verdict.rule;
    let named = |text: &str| tooth.named(text).into_owned();
    let quoted = |text: &str| capital(&named(text));
    let long = prose.of(rule.id);
    let [one, other] = long.map_or_else(Default::default, |long| long.positions.clone());
    let sources = long.map_or(&[][..], |long| &long.sources);
    html! {
        <details class="debate">
            <summary>
                <span class="sign" aria-hidden="true">{ "◇" }</span>
                { format!(" {}", named(&prose.statement(rule))) }
            </summary>
            <p class="measured">{ explain(debate.verdict, tooth).measured }</p>
            if !one.is_empty() {
                <div class="sides">
                    <blockquote>{ quoted(&one) }</blockquote>
                    <blockquote>{ quoted(&other) }</blockquote>
                </div>
            }
            <p><strong>{ "Here: " }</strong>{ format!("{} {}", named(&debate.leaves), named(&debate.asks)) }</p>
            <details class="sources">
                <summary>{ "Who says so" }</summary>
                <ul>{ for sources.iter().map(|source| html! { <li>{ named(source) }</li> }) }</ul>
            </details>
        </details>
    }
}
