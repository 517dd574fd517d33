//! Every rule with its limits, printable; and one rule in full.

use crate::components::caution::caution;
use crate::effects;
use crate::prose::{self, Prose};
use crate::route::Route;
use engine::debrief::{EVIDENCE_REVIEWED, RULE_SET, allowed, asked};
use engine::rules::{self, Agreement, Rule, Scale, ledger};
use yew::prelude::*;

/// Every rule.
pub fn protocol(prose: &Prose) -> Html {
    let print = Callback::from(|_: MouseEvent| effects::print());
    let families = rules::FAMILIES.iter().filter(|(_, rules)| !rules.is_empty()).map(|(family, rules)| {
        html! {
            <section>
                <h2>{ family.words() }</h2>
                <table class="protocol">
                    <thead><tr><th>{ "Rule" }</th><th>{ "Worst verdict" }</th><th>{ "Sources" }</th><th>{ "Mark" }</th></tr></thead>
                    <tbody>{ for rules.iter().map(|rule| row(rule, prose)) }</tbody>
                </table>
            </section>
        }
    });
    html! {
        <article class="page">
            <h1>{ "Protocol" }</h1>
            <p class="lead">{ format!("Every rule that this room judges by. Rule set {RULE_SET}, evidence last reviewed {EVIDENCE_REVIEWED}.") }</p>
            { caution() }
            <p><button type="button" class="quiet" onclick={print}>{ "Print" }</button></p>
            { for families }
            { facts(prose) }
        </article>
    }
}

/// What the ledger of evidence says beside the rules: facts that no decision can break, with source and
/// mark, and what was left out, with the reason.
fn facts(prose: &Prose) -> Html {
    match prose {
        Prose::Coming => html! { <p>{ "The facts behind the rules are on their way." }</p> },
        Prose::Trouble(why) => html! { <p class="wrong" role="alert">{ why }</p> },
        Prose::Here(_) => {
            let said = prose.of(ledger::FACTS).map(|long| prose::html(&long.text));
            html! { <section class="facts">{ said }</section> }
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
    html! {
        <tr>
            <td><a href={Route::Rule(rule.id.to_owned()).fragment()}>{ limits(rule, prose) }</a></td>
            <td>{ rule.cost().word() }</td>
            <td>{ agreement }</td>
            <td>{ mark }</td>
        </tr>
    }
}

fn limits(rule: &Rule, prose: &Prose) -> String {
    asked(rule.bands(), &prose.statement(rule))
}

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
        return html! { <article class="page"><h1>{ "No such rule" }</h1><p>{ format!("Found \"{}\", which is no rule of this room.", props.id) }</p><p><a href="#/protocol">{ "All rules" }</a></p></article> };
    };
    let long = match &prose {
        Prose::Coming => html! { <p>{ "The long text is on its way." }</p> },
        Prose::Trouble(why) => html! { <p class="wrong" role="alert">{ why }</p> },
        Prose::Here(_) => prose.of(rule.id).map(|long| prose::html(&long.text)).unwrap_or_default(),
    };
    let sources = prose.of(rule.id).map(|long| long.sources.clone()).unwrap_or_default();
    html! {
        <article class="page rule">
            <p class="from">{ format!("{} · {}", rule.family.words(), rule.id) }</p>
            <h1>{ prose.statement(rule) }</h1>
            { caution() }
            { stretches(rule, &prose) }
            { long }
            <h2>{ "Sources" }</h2>
            <ul>{ for sources.iter().map(|source| html! { <li>{ source }</li> }) }</ul>
            <p><a href="#/protocol">{ "All rules" }</a></p>
        </article>
    }
}

fn stretches(rule: &Rule, prose: &Prose) -> Html {
    match &rule.scale {
        Scale::Bands(_) => html! {
            <>
                <p>{ limits(rule, prose) }</p>
                { for allowed(rule).into_iter().map(|line| html! { <p class="from">{ line }</p> }) }
            </>
        },
        Scale::Situations(situations) => html! {
            <ul>{ for situations.iter().map(|one| html! { <li><strong>{ one.zone.word() }</strong>{ format!(": {}", one.words) }</li> }) }</ul>
        },
    }
}
