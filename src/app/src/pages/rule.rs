//! One rule in full.

use super::protocol::limits;
use crate::components::caution::caution;
use crate::components::plain::{alert, el, items, line, link, said, text, together};
use crate::prose::{self, Prose};
use engine::debrief::allowed;
use engine::rules::{self, Rule, Scale, Situation};
use yew::prelude::*;

/// What one rule's page needs.
#[derive(Properties, PartialEq)]
pub struct RuleProps {
    /// Its id.
    pub id: String,
}

/// One rule in full.
#[component]
pub fn RulePage(props: &RuleProps) -> Html {
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let Some(rule) = rules::find(&props.id) else {
        let found = format!("Found \"{}\", which is no rule of this room.", props.id);
        let parts = vec![line("h1", "", "No such rule"), said("p", "", found), all_rules()];
        return el("article", "page", parts);
    };
    let long = match &prose {
        Prose::Coming => line("p", "", "The long text is on its way."),
        Prose::Trouble(why) => alert("wrong", why.clone()),
        Prose::Here(_) => prose.of(rule.id).map(|long| prose::html(&long.text)).unwrap_or_default(),
    };
    let sources = prose.of(rule.id).map(|long| long.sources.clone()).unwrap_or_default();
    let parts = vec![
        said("p", "from", format!("{} · {}", rule.family.words(), rule.id)),
        said("h1", "", prose.statement(rule)),
        caution(),
        stretches(rule, &prose),
        long,
        line("h2", "", "Sources"),
        items("", sources),
        all_rules(),
    ];
    el("article", "page rule", parts)
}

fn stretches(rule: &Rule, prose: &Prose) -> Html {
    match &rule.scale {
        Scale::Bands(_) => {
            let mut lines = vec![said("p", "", limits(rule, prose))];
            lines.extend(allowed(rule).into_iter().map(|line| said("p", "from", line)));
            together(lines)
        }
        Scale::Situations(situations) => {
            let one = |one: &Situation| {
                let parts =
                    vec![line("strong", "", one.zone.word()), text(format!(": {}", one.words))];
                el("li", "", parts)
            };
            el("ul", "", situations.iter().map(one).collect())
        }
    }
}

fn all_rules() -> Html {
    el("p", "", vec![link("#/protocol".to_owned(), "All rules".to_owned())])
}
