//! What is due, and why; a sitting begins here.

use crate::components::caution::caution;
use crate::components::own::sit::{Sit, SitProps};
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
    let line = |one: &learning::today::Due| html! { <li>{ one.words() }</li> };
    let open = open_one(&shelf.pasts, now).map(str::to_owned);
    let says = match &open {
        Some(sitting) => format!("Go on: case {} of {SITTING}", done(&shelf.pasts, sitting) + 1),
        None => "Begin practising".to_owned(),
    };
    let sit = |says: String, anyway| {
        let (pasts, sitting) = (shelf.pasts.clone(), open.clone());
        view::<Sit>(SitProps { pasts, sitting, says: says.into(), anyway })
    };
    html! {
        <article class="page today">
            <h1>{ "Today" }</h1>
            if all.is_empty() {
                <p class="lead">{ nothing_due(&standings, now) }</p>
                <p>{ sit("One case all the same".to_owned(), true) }</p>
            } else {
                <p class="lead">{ lead(shelf.pasts.is_empty(), all.len()) }</p>
                <p>{ sit(says, false) }</p>
                <ol class="due">{ for all.iter().take(AT_ONCE).map(line) }</ol>
                if all.len() > AT_ONCE {
                    <details><summary>{ format!("And {} more", all.len() - AT_ONCE) }</summary><ol class="due" start={(AT_ONCE + 1).to_string()}>{ for all.iter().skip(AT_ONCE).map(line) }</ol></details>
                }
            }
            <p class="from">{ format!("A sitting is {SITTING} cases at most. Each is chosen for what is due, at a difficulty at which you should be right three times of four; what you miss comes back as a second case with one thing changed. The same case again only when you ask for it.") }</p>
            if shelf.pasts.is_empty() { <p><a href="#/set/1-the-intact-wall/1?guided">{ "First the guided case, talked through step by step" }</a></p> }
            { caution() }
            <p class="row"><a href="#/review">{ "How it has gone so far" }</a><a href="#/portfolio">{ "A record to print" }</a><a href="#/keeping">{ "What is kept, and where" }</a></p>
        </article>
    }
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
