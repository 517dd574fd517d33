//! The end of a sitting: what was done, what moved, and one thing to take away.

use crate::components::caution::caution;
use crate::components::plain::{alert, el, line, link, links, row, said, text, with};
use crate::prose::Prose;
use crate::route::Route;
use crate::shelf::Shelf;
use engine::rules::Skill;
use learning::past::Past;
use learning::standing::of;
use learning::take_away::{TakeAway, take_away};
use yew::prelude::*;

/// The page of the sitting of this name.
pub fn sitting(shelf: &Shelf, name: &str, prose: &Prose) -> Html {
    let is_here = |past: &Past| past.head.sitting.as_deref() == Some(name);
    let here: Vec<&Past> = shelf.pasts.iter().filter(|past| is_here(past)).collect();
    let Some(first) = shelf.pasts.iter().position(is_here) else {
        return alert("page", "No sitting of that name is kept in this browser.".to_owned());
    };
    let one = |past: &Past| {
        let href = Route::Attempt(past.head.id.clone(), None).fragment();
        let about = past.archetype.map_or("a case", |kind| kind.words());
        let faults = past.observed.iter().filter(|one| one.is_fault()).count();
        let word = if past.is_over() { past.word.word() } else { "not finished" };
        let went = text(format!(": {word}, {faults} outside or unsafe"));
        el("li", "", vec![link(href, about.to_owned()), went])
    };
    let mut taken_away = vec![line("h2", "", "One thing to take away")];
    taken_away.extend(taken(take_away(&shelf.pasts, name), shelf, prose));
    let parts = vec![
        line("h1", "", "End of the sitting"),
        el("section", "take-away", taken_away),
        line("h2", "", "What you did"),
        el("ol", "", here.into_iter().map(one).collect()),
        line("h2", "", "What moved"),
        moved(&shelf.pasts, first),
        caution(),
        links(&[("#/today", "What is due next"), ("#/review", "How it has gone so far")]),
    ];
    el("article", "page sitting", parts)
}

fn taken(one: TakeAway, shelf: &Shelf, prose: &Prose) -> Vec<Html> {
    match one {
        TakeAway::Mend { rule, times, before, last } => {
            let mend = prose.of(rule.id).map(|long| long.mend.clone()).unwrap_or_default();
            let how_often = match (times, before) {
                (1, 0) => "It was missed once.".to_owned(),
                (times, 0) => format!("It was missed in {times} cases of this sitting."),
                (times, before) => format!(
                    "It was missed in {times} of this sitting's cases, and in {before} before."
                ),
            };
            let id = shelf.pasts.get(last).map(|past| past.head.id.clone()).unwrap_or_default();
            let there = Route::Attempt(id, Some(rule.id.to_owned())).fragment();
            let there = link(there, "Where it was last".to_owned());
            vec![
                said("p", "lead", prose.statement(rule)),
                said("p", "", mend),
                el("p", "from", vec![text(how_often), text(" ".to_owned()), there]),
            ]
        }
        TakeAway::Held { skill } => {
            vec![said("p", "lead", format!("{}: you hold it now.", skill.words()))]
        }
        TakeAway::Clean => vec![line("p", "lead", "Nothing was outside or unsafe.")],
        TakeAway::Nothing => vec![line("p", "", "Nothing was done alone and to its end.")],
    }
}

/// Skills with an answer in the sitting, before and after.
fn moved(pasts: &[Past], first: usize) -> Html {
    let now = pasts.last().and_then(|past| past.head.ended.or(past.head.begun)).unwrap_or(0);
    let (before, after) = (of(&pasts[..first], now), of(pasts, now));
    let rows = Skill::ALL.iter().enumerate().filter_map(|(place, skill)| {
        let (old, new) = (&before[place], &after[place]);
        let [old_percent, new_percent] =
            [old, new].map(|one| format!("{:.0} %", 100.0 * one.mastery));
        let is_moved = new.answers.len() > old.answers.len();
        is_moved.then(|| row(skill.words().to_owned(), vec![old_percent, new_percent]))
    });
    let head = |words| with("th", &[("scope", "col")], vec![text(words)]);
    let heads = ["Skill", "Held before", "Held after"].map(|words| head(words.to_owned()));
    let head = el("thead", "", vec![el("tr", "", heads.into())]);
    el("table", "moved", vec![head, el("tbody", "", rows.collect())])
}
