//! Every rule with its limits, printable.

use crate::components::caution::caution;
use crate::components::plain::{alert, button, el, line, link, said, table};
use crate::effects;
use crate::prose::{self, Prose};
use crate::route::Route;
use engine::debrief::{EVIDENCE_REVIEWED, RULE_SET, asked};
use engine::rules::{self, Agreement, Rule, ledger};
use yew::prelude::*;

/// Every rule.
pub fn protocol(prose: &Prose) -> Html {
    let print = Callback::from(|_: MouseEvent| effects::print());
    let mut parts = vec![
        line("h1", "", "Protocol"),
        said(
            "p",
            "lead",
            format!(
                "Every rule that this room judges by. Rule set {RULE_SET}, evidence last reviewed {EVIDENCE_REVIEWED}."
            ),
        ),
        caution(),
        el("p", "", vec![button("Print", print)]),
    ];
    for (family, rules) in rules::FAMILIES.iter().filter(|(_, rules)| !rules.is_empty()) {
        let rows = rules.iter().map(|rule| row(rule, prose)).collect();
        let rows = el("tbody", "", rows);
        let table = table("protocol", &["Rule", "Worst verdict", "Sources", "Mark"], rows);
        parts.push(el("section", "", vec![line("h2", "", family.words()), table]));
    }
    parts.push(facts(prose));
    el("article", "page", parts)
}

/// What the ledger of evidence says beside the rules: facts that no decision can break, with source and
/// mark, and what was left out, with the reason.
fn facts(prose: &Prose) -> Html {
    match prose {
        Prose::Coming => line("p", "", "The facts behind the rules are on their way."),
        Prose::Trouble(why) => alert("wrong", why.clone()),
        Prose::Here(_) => {
            let said = prose.of(ledger::FACTS).map(|long| prose::html(&long.text));
            el("section", "facts", said.into_iter().collect())
        }
    }
}

fn row(rule: &Rule, prose: &Prose) -> Html {
    let agreement = match rule.agreement {
        Agreement::Agreed => "agreed",
        Agreement::NumberVaries => "number varies",
        Agreement::Contested => "contested",
    };
    let mark = rule.evidence.first().map_or("", |first| first.status.mark());
    let limits = link(Route::Rule(rule.id.to_owned()).fragment(), limits(rule, prose));
    let cells = vec![
        el("td", "", vec![limits]),
        line("td", "", rule.cost().word()),
        line("td", "", agreement),
        line("td", "", mark),
    ];
    el("tr", "", cells)
}

/// What a rule asks for, with its numbers.
pub fn limits(rule: &Rule, prose: &Prose) -> String {
    asked(rule.bands(), &prose.statement(rule))
}
