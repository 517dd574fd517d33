//! What study mode says as soon as a step is carried out.

use super::caution::caution;
use super::verdict::VerdictView;
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
    let faults = verdicts.iter().filter(|verdict| verdict.is_fault()).count();
    let says = match faults {
        0 => format!("{}: nothing to mend.", last.label()),
        1 => format!("{}: one thing to look at.", last.label()),
        count => format!("{}: {count} things to look at.", last.label()),
    };
    html! {
        <section class="last" aria-label={format!("Verdicts on {}", last.label())}>
            <p role="status">{ says }</p>
            <details open={faults > 0}>
                <summary>{ format!("Verdicts on {}", last.label()) }</summary>
                { for verdicts.into_iter().map(|verdict| html! { <VerdictView key={verdict.rule.id} verdict={verdict.clone()} {tooth} /> }) }
            </details>
            { caution() }
        </section>
    }
}
