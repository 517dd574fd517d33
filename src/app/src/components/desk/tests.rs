//! What the set tests and what it leaves out, and how its cases are spread.

use super::Desk;
use crate::components::plain::{el, folded, items, line, row, said, section, table};
use crate::prose::Prose;
use engine::rules::Rule;
use learning::desk::{blueprint, spread};
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
    let lines = spread(&cases).into_iter();
    let rows = lines.map(|(words, count)| row(words.to_owned(), vec![bar(count)]));
    parts.push(line("h3", "", "How its cases are spread"));
    parts.push(table("", &["Cases", "How many"], el("tbody", "", rows.collect())));
    section("desk-tests", "What it tests", parts)
}

fn asked(rule: &Rule, prose: &Prose) -> String {
    format!("{}: {}", rule.skill.words(), prose.statement(rule))
}

/// A count that the eye can compare: a stroke for each, and the number.
fn bar(count: usize) -> String {
    format!("{count} {}", "|".repeat(count.min(40)))
}
