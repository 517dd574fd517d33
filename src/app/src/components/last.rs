//! What study mode says as soon as a step is carried out.

use super::caution::caution;
use super::plain::{self, status, with};
use super::verdict::verdict;
use engine::debrief::Verdict;
use engine::plan::Step;
use engine::session::Session;
use yew::prelude::*;

/// In study mode the step before is explained as soon as it is carried out.
pub fn last_verdicts(session: &Session, due: Step) -> Html {
    let tooth = session.case().site.tooth;
    let shown = session.verdicts();
    let last = shown.iter().map(|verdict| verdict.rule.step).filter(|step| *step < due).max();
    let verdicts: Vec<&Verdict> =
        shown.iter().filter(|verdict| Some(verdict.rule.step) == last).collect();
    let Some(last) = last else {
        return Html::default();
    };
    // What is to be mended stands first and open; the rest is there for who wants it.
    let (faults, rest): (Vec<_>, Vec<_>) =
        verdicts.into_iter().partition(|verdict| verdict.is_fault());
    let says = match faults.len() {
        0 => format!("{}: nothing to mend.", last.label()),
        1 => format!("{}: one thing to look at.", last.label()),
        count => format!("{}: {count} things to look at.", last.label()),
    };
    let folded = if faults.is_empty() { "Verdicts on" } else { "What else was judged on" };
    let view = |one: &Verdict| verdict(one, tooth);
    let mut parts = vec![status(says)];
    parts.extend(faults.into_iter().map(view));
    // Its place is there all the same: the framework matches a list from its end.
    parts.push(match rest.is_empty() {
        true => Html::default(),
        false => {
            let summary = format!("{folded} {}", last.label());
            plain::folded("", summary, rest.into_iter().map(view).collect())
        }
    });
    parts.push(caution());
    let label = format!("Verdicts on {}", last.label());
    with("section", &[("class", "last"), ("aria-label", &label)], parts)
}
