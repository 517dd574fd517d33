//! What is due, and why; a sitting begins here.

use crate::components::caution::caution;
use crate::components::own::sit::{Sit, SitProps};
use crate::components::plain::{el, folded, line, link, links, said, with};
use crate::components::view::view;
use crate::effects;
use crate::shelf::Shelf;
use crate::sitting::{done, open_one};
use learning::parameters::SITTING;
use learning::standing::{Standing, of};
use learning::today::due;
use yew::prelude::*;

/// So many lines stand in view.
const AT_ONCE: usize = 5;

/// The page.
pub fn today(shelf: &Shelf) -> Html {
    let now = effects::now();
    let standings = of(&shelf.pasts, now);
    let all = due(&standings, &shelf.pasts, now);
    let lines: Vec<Html> = all.iter().map(|one| said("li", "", one.words())).collect();
    let open = open_one(&shelf.pasts, now).map(str::to_owned);
    let says = match &open {
        Some(sitting) => format!("Go on: case {} of {SITTING}", done(&shelf.pasts, sitting) + 1),
        None => "Begin practising".to_owned(),
    };
    let sit = |says: String, anyway| {
        let (pasts, sitting) = (shelf.pasts.clone(), open.clone());
        view::<Sit>(SitProps { pasts, sitting, says: says.into(), anyway })
    };
    let mut parts = vec![line("h1", "", "Today")];
    if all.is_empty() {
        let one = sit("One case all the same".to_owned(), true);
        parts.push(said("p", "lead", nothing_due(&standings, now)));
        parts.push(el("p", "", vec![one]));
    } else {
        parts.push(said("p", "lead", lead(shelf.pasts.is_empty(), all.len())));
        parts.push(el("p", "", vec![sit(says, false)]));
        parts.extend(listed(lines));
    }
    parts.push(said("p", "from", format!("A sitting is {SITTING} cases at most. Each is chosen for what is due, at a difficulty at which you should be right three times of four; what you miss comes back as a second case with one thing changed. The same case again only when you ask for it.")));
    if shelf.pasts.is_empty() {
        let says = "First the guided case, talked through step by step";
        let first = link("#/set/1-the-intact-wall/1?guided".to_owned(), says.to_owned());
        parts.push(el("p", "", vec![first]));
    }
    parts.push(caution());
    parts.push(links(&[
        ("#/review", "How it has gone so far"),
        ("#/portfolio", "A record to print"),
        ("#/keeping", "What is kept, and where"),
    ]));
    el("article", "page today", parts)
}

/// What is due: the first lines in view, the others folded away.
fn listed(mut lines: Vec<Html>) -> Vec<Html> {
    let more = lines.split_off(AT_ONCE.min(lines.len()));
    let mut parts = vec![el("ol", "due", lines)];
    if !more.is_empty() {
        let summary = format!("And {} more", more.len());
        let start = (AT_ONCE + 1).to_string();
        let list = with("ol", &[("class", "due"), ("start", &start)], more);
        parts.push(folded("", summary, vec![list]));
    }
    parts
}

fn lead(new: bool, count: usize) -> String {
    match (new, count) {
        (true, _) => "You have done nothing here yet, so every skill is untried.".to_owned(),
        (false, 1) => "One skill is due.".to_owned(),
        (false, count) => format!("{count} skills are due."),
    }
}

fn nothing_due(standings: &[Standing], now: u64) -> String {
    let next =
        standings.iter().filter_map(|one| Some((one.due?, one.skill))).min_by_key(|one| one.0);
    match next {
        Some((due, skill)) => {
            let days = due.saturating_sub(now).div_ceil(24 * 60 * 60 * 1000);
            let in_days = if days <= 1 { "tomorrow".to_owned() } else { format!("in {days} days") };
            format!("Nothing is due. Next comes {}, {in_days}.", skill.words().to_ascii_lowercase())
        }
        None => "Nothing is due.".to_owned(),
    }
}
