//! Verdicts on a case, shown one by one to the class, each of which it may set aside.

use super::rules::named;
use super::set_aside::{Aside, AsideProps};
use crate::components::hold::Held;
use crate::components::plain::{disabled, el, line, press, said, status, together};
use crate::components::view::keyed;
use crate::prose::Prose;
use learning::class::{Discussed, Discussion, SetAside, told};
use yew::prelude::*;

/// The first verdicts on the case of this name, in the order of care, and a button for the next.
pub fn verdicts(
    discussion: &Discussion,
    (case, shown): (&str, usize),
    aside: &Held<Vec<SetAside>>,
    prose: &Prose,
    next: Callback<MouseEvent>,
) -> Html {
    let all = discussion.rules.len();
    let lines = discussion.rules.iter().take(shown).map(|one| verdict(one, case, aside, prose));
    let says = format!("{} of {all} verdicts shown", shown.min(all));
    let kept = told::counted(discussion.kept, "more rule");
    let kept = format!(
        "{kept} that everybody kept who reached them, and that nobody held anything against: not shown."
    );
    let more = press(&[disabled(shown >= all)], "Show the next verdict".to_owned(), next);
    together(vec![
        el("ol", "", lines.collect()),
        el("div", "choosing", vec![status(says), el("p", "row", vec![more])]),
        said("p", "from", kept),
    ])
}

fn verdict(one: &Discussed, case: &str, aside: &Held<Vec<SetAside>>, prose: &Prose) -> Html {
    let [kept, missed, not_reached] = one.counts;
    let counts = format!("{kept} kept it, {missed} missed it, {not_reached} did not reach it.");
    let quoted =
        one.reasons.iter().map(|why| el("li", "", vec![said("q", "", why.clone())])).collect();
    let mut parts = vec![
        el("p", "", vec![el("strong", "", vec![named(one.rule, prose)])]),
        said("p", "", counts),
    ];
    if !one.reasons.is_empty() {
        parts.push(line("p", "from", "Held against it:"));
        parts.push(el("ul", "", quoted));
    }
    let (case, rule, grave) = (case.to_owned(), one.rule, one.grave);
    let key = format!("{case} {}", rule.id);
    parts.push(keyed::<Aside>(&key, AsideProps { case, rule, grave, aside: aside.clone() }));
    el("li", "", parts)
}
