//! The end of a sitting: what was done, what moved, and one thing to take away.

use crate::components::caution::caution;
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
        return html! { <p class="page" role="alert">{ "No sitting of that name is kept in this browser." }</p> };
    };
    let line = |past: &Past| {
        let href = Route::Attempt(past.head.id.clone(), None).fragment();
        let about = past.archetype.map_or("a case", |kind| kind.words());
        let faults = past.observed.iter().filter(|one| one.is_fault()).count();
        let word = if past.is_over() { past.word.word() } else { "not finished" };
        html! { <li><a {href}>{ about }</a>{ format!(": {word}, {faults} outside or unsafe") }</li> }
    };
    html! {
        <article class="page sitting">
            <h1>{ "End of the sitting" }</h1>
            <section class="take-away"><h2>{ "One thing to take away" }</h2>{ taken(take_away(&shelf.pasts, name), shelf, prose) }</section>
            <h2>{ "What you did" }</h2>
            <ol>{ for here.into_iter().map(line) }</ol>
            <h2>{ "What moved" }</h2>
            { moved(&shelf.pasts, first) }
            { caution() }
            <p class="row"><a href="#/today">{ "What is due next" }</a><a href="#/review">{ "How it has gone so far" }</a></p>
        </article>
    }
}

fn taken(one: TakeAway, shelf: &Shelf, prose: &Prose) -> Html {
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
            html! { <><p class="lead">{ prose.statement(rule) }</p><p>{ mend }</p><p class="from">{ how_often }{ " " }<a href={there}>{ "Where it was last" }</a></p></> }
        }
        TakeAway::Held { skill } => {
            html! { <p class="lead">{ format!("{}: you hold it now.", skill.words()) }</p> }
        }
        TakeAway::Clean => html! { <p class="lead">{ "Nothing was outside or unsafe." }</p> },
        TakeAway::Nothing => html! { <p>{ "Nothing was done alone and to its end." }</p> },
    }
}

/// Skills with an answer in the sitting, before and after.
fn moved(pasts: &[Past], first: usize) -> Html {
    let now = pasts.last().and_then(|past| past.head.ended.or(past.head.begun)).unwrap_or(0);
    let (before, after) = (of(&pasts[..first], now), of(pasts, now));
    let rows = Skill::ALL.iter().enumerate().filter_map(|(place, skill)| {
        let (old, new) = (&before[place], &after[place]);
        let [old_percent, new_percent] = [old, new].map(|one| format!("{:.0} %", 100.0 * one.mastery));
        (new.answers.len() > old.answers.len()).then(|| {
            html! { <tr><th scope="row">{ skill.words() }</th><td>{ old_percent }</td><td>{ new_percent }</td></tr> }
        })
    });
    html! {
        <table class="moved">
            <thead><tr><th scope="col">{ "Skill" }</th><th scope="col">{ "Held before" }</th><th scope="col">{ "Held after" }</th></tr></thead>
            <tbody>{ for rows }</tbody>
        </table>
    }
}
