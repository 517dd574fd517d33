//! What the key says of one case.

use crate::components::plain::{alert, el, items, line, said};
use crate::prose::Prose;
use learning::desk::key::{FAULTS, Fault, Key, NO_PLAN, SOUND, asked};
use yew::prelude::*;

/// Its truth, one sound plan, the usual faults and what to ask; or why there is none.
pub fn case(
    place: usize,
    key: &Result<Key, String>,
    ask: Option<&str>,
    prose: &Prose,
) -> Vec<Html> {
    let name = format!("Case {}", place + 1);
    let key = match key {
        Ok(key) => key,
        Err(why) => return vec![said("h3", "", name), alert("wrong", why.clone())],
    };
    let truth = &key.truth;
    let mut parts = vec![said("h3", "", format!("{name}. {}", truth.title))];
    let address = truth.address.map(|address| format!("Address {address}"));
    let hard = truth.hard.as_ref().map(|hard| format!("Difficulty {hard}"));
    parts.extend(address.into_iter().chain(hard).map(|words| said("p", "from", words)));
    for (title, lines) in &truth.told {
        parts.push(said("h4", "", title.clone()));
        parts.push(items("", lines.clone()));
    }
    if truth.sound.is_some() {
        parts.push(line("h4", "", SOUND));
        for (step, lines) in &key.plan {
            parts.push(line("p", "decision-name", step.label()));
            parts.push(items("key-plan", lines.clone()));
        }
        parts.push(line("h4", "", FAULTS));
        parts.push(el(
            "ul",
            "key-faults",
            key.faults.iter().map(|one| fault(one, prose)).collect(),
        ));
    } else {
        parts.push(line("p", "", NO_PLAN));
    }
    parts.push(said("p", "key-ask", format!("What to ask: {}", asked(ask))));
    parts
}

fn fault(fault: &Fault, prose: &Prose) -> Html {
    let parts = vec![
        said("p", "", fault.answer.clone()),
        said("p", "from", fault.verdict(&prose.statement(fault.rule))),
    ];
    el("li", "", parts)
}
