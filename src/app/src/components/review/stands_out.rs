//! What stands out: the one remark, and the faults that came back.

use crate::components::plain::{el, folded, line, link, said, section};
use crate::prose::Prose;
use crate::shelf::{Shelf, kept};
use learning::review::{Recurring, Review};
use yew::prelude::*;

/// How many faults are told at once, and how many attempts of each.
const FAULTS: usize = 5;
const ATTEMPTS: usize = 4;

/// What stands out.
pub fn stands_out(shelf: &Shelf, review: &Review, prose: &Prose) -> Html {
    let mut parts = remark(review);
    parts.push(line("h3", "", "Faults that came back"));
    if review.recurring.is_empty() {
        parts.push(line("p", "", "No fault has been charged twice."));
    }
    let mut told: Vec<Html> = review.recurring.iter().map(|one| fault(one, shelf, prose)).collect();
    let rest = told.split_off(FAULTS.min(told.len()));
    parts.push(el("ol", "told", told));
    if !rest.is_empty() {
        let more = format!("{} more", rest.len());
        parts.push(folded("", more, vec![el("ol", "told", rest)]));
    }
    section("stands-out", "What stands out", parts)
}

fn remark(review: &Review) -> Vec<Html> {
    let count = review.compared;
    match &review.remark {
        Some(remark) => vec![
            said("p", "lead", remark.says()),
            said("p", "from", remark.says_of_chance()),
            line(
                "p",
                "from",
                "Which comparisons are made, and when one is worth telling, is ours.",
            ),
        ],
        None if count == 0 => vec![line(
            "p",
            "",
            "Too little to compare yet. From some ten attempts on, this place says where your faults gather, if they do: at one jaw, at front or back teeth, in steps that you hurry, where you are sure.",
        )],
        None => vec![said(
            "p",
            "",
            format!(
                "Nothing that chance would not do as well: {count} comparisons had enough to go on, of jaws, front and back teeth, pace and how sure you were."
            ),
        )],
    }
}

fn fault(one: &Recurring, shelf: &Shelf, prose: &Prose) -> Html {
    let moment = |place: &usize| {
        let past = &shelf.pasts[*place];
        el("li", "", vec![link(kept(&past.head.id, Some(one.rule.id)), shelf.named(past))])
    };
    let mut at: Vec<Html> = one.at.iter().map(moment).collect();
    let rest = at.split_off(ATTEMPTS.min(at.len()));
    let count = format!(
        "{}: charged in {} of the {} attempts that asked for it",
        one.rule.skill.words(),
        one.at.len(),
        one.asked
    );
    let mut parts = vec![
        el("p", "", vec![said("strong", "", prose.statement(one.rule))]),
        said("p", "from", count),
        el("ul", "", at),
    ];
    if !rest.is_empty() {
        let earlier = format!("{} earlier", rest.len());
        parts.push(folded("", earlier, vec![el("ul", "", rest)]));
    }
    el("li", "", parts)
}
