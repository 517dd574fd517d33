//! What the set tests and what it leaves out, and how its cases are spread.

use super::Desk;
use crate::components::plain::{el, folded, items, line, row, said, section, table};
use crate::prose::Prose;
use engine::rules::{Rule, all};
use learning::class::told;
use learning::desk::{Tested, blueprint, spread};
use yew::prelude::*;

/// The part of the desk.
pub fn tests(desk: &Desk, prose: &Prose) -> Html {
    let cases = desk.in_order();
    let mut parts = vec![line(
        "p",
        "from",
        "A rule is tested by a case where one answer off its sound plan breaks it.",
    )];
    if cases.len() < desk.set.addresses.len() {
        let missing = desk.set.addresses.len() - cases.len();
        parts.push(said("p", "from", format!("{missing} cases are still being looked at.")));
    }
    let skills = blueprint(&cases);
    let rows = skills.iter().map(|(skill, [tested, left])| {
        let all = tested.len() + left.len();
        row(skill.words().to_owned(), vec![format!("{} of {all}", tested.len())])
    });
    let heads = ["Skill", "Rules that the set tests"];
    parts.push(table("", &heads, el("tbody", "", rows.collect())));
    let left = skills.iter().flat_map(|(_, [_, left])| left.iter().map(|rule| asked(rule, prose)));
    let left: Vec<String> = left.collect();
    parts.push(folded(
        "",
        format!("What it leaves out: {} rules", left.len()),
        vec![items("", left)],
    ));
    let against = against(desk, &cases, prose);
    let title = format!("Which case tests what: {}", told::counted(against.len(), "rule"));
    parts.push(folded("desk-against", title, vec![items("", against)]));
    let lines = spread(&cases).into_iter();
    let rows = lines.map(|(words, count)| row(words.to_owned(), vec![bar(count)]));
    parts.push(line("h3", "", "How its cases are spread"));
    parts.push(table("", &["Cases", "How many"], el("tbody", "", rows.collect())));
    section("desk-tests", "What it tests", parts)
}

/// Each rule that is tested, and by which cases.
fn against(desk: &Desk, cases: &[Tested], prose: &Prose) -> Vec<String> {
    let place = |one: &Tested| desk.set.addresses.iter().position(|at| *at == one.address);
    let of = |rule: &Rule| {
        let of = cases.iter().filter(|one| one.rules.iter().any(|other| other.id == rule.id));
        let of: Vec<String> = of.filter_map(place).map(|place| (place + 1).to_string()).collect();
        let cases = if of.len() == 1 { "case" } else { "cases" };
        (!of.is_empty()).then(|| format!("{} {cases} {}", asked(rule, prose), of.join(", ")))
    };
    all().filter_map(of).collect()
}

fn asked(rule: &Rule, prose: &Prose) -> String {
    format!("{}: {}", rule.skill.words(), prose.statement(rule))
}

/// A count that the eye can compare: a stroke for each, and the number.
fn bar(count: usize) -> String {
    format!("{count} {}", "|".repeat(count.min(40)))
}
