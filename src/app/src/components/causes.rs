//! What was broken, and by which cause.

use super::plain::{el, folded, line, said, together};
use engine::anatomy::Tooth;
use engine::debrief::{Debrief, Group, Verdict};
use engine::plan::Step;
use engine::rules::Rule;
use yew::prelude::*;

/// The rules that were broken.
#[must_use]
pub fn broken(debrief: &Debrief) -> Vec<&'static Rule> {
    debrief
        .verdicts
        .iter()
        .filter(|verdict| verdict.is_fault())
        .map(|verdict| verdict.rule)
        .collect()
}

/// What to change first: faults by their cause, the heaviest first.
pub fn causes(debrief: &Debrief, tooth: Tooth, verdict: &dyn Fn(&Verdict) -> Html) -> Html {
    if debrief.groups.is_empty() {
        return line("p", "nothing", "Nothing to mend.");
    }
    let group = |group: &Group| {
        let mut parts = Vec::new();
        if let Some(cause) = group.cause(tooth) {
            parts.push(said("h4", "", cause));
            parts.push(line("p", "from", "One cause, charged once."));
        }
        parts.extend(group.faults.iter().map(|place| verdict(&debrief.verdicts[*place])));
        el("section", "cause", parts)
    };
    let mut parts = vec![line("h3", "", "What to change first")];
    parts.extend(debrief.groups.iter().map(group));
    together(parts)
}

/// The verdicts of a step that are no faults, folded away; nothing where there are none.
pub fn of_step(step: Step, debrief: &Debrief, verdict: &dyn Fn(&Verdict) -> Html) -> Html {
    let is_here = |one: &&Verdict| one.rule.step == step && !one.is_fault();
    let verdicts: Vec<Html> = debrief.verdicts.iter().filter(is_here).map(verdict).collect();
    if verdicts.is_empty() {
        return Html::default();
    }
    let summary = format!("{}: {} kept or debated", step.label(), verdicts.len());
    folded("of-step", summary, verdicts)
}
