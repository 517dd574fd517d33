//! What was broken, and by which cause.

use super::plain::folded;
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
        return html! { <p class="nothing">{ "Nothing to mend." }</p> };
    }
    let group = |group: &Group| {
        let faults = group.faults.iter().map(|place| verdict(&debrief.verdicts[*place]));
        match group.cause(tooth) {
            Some(cause) => {
                html! { <section class="cause"><h4>{ cause }</h4><p class="from">{ "One cause, charged once." }</p>{ for faults }</section> }
            }
            None => html! { <section class="cause">{ for faults }</section> },
        }
    };
    html! {
        <>
            <h3>{ "What to change first" }</h3>
            { for debrief.groups.iter().map(group) }
        </>
    }
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
