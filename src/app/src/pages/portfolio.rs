//! The portfolio: attempts that the learner chooses, to be printed or handed on.

use crate::components::caution::caution;
use crate::components::hold::use_held;
use crate::components::plain::{el, line, nothing_yet, said, with};
use crate::components::portfolio::{Chosen, acts, beside, choose, is_in, record};
use crate::prose::Prose;
use crate::shelf::Shelf;
use yew::prelude::*;

/// What it needs.
#[derive(Properties, PartialEq)]
pub struct PortfolioProps {
    /// The attempts.
    pub shelf: Shelf,
    /// Told the ids of the attempts that are to be saved.
    pub on_save: Callback<Vec<String>>,
}

/// The portfolio.
#[component]
pub fn PortfolioPage(props: &PortfolioProps) -> Html {
    let prose = use_context::<Prose>().unwrap_or(Prose::Coming);
    let chosen = use_held(Chosen::first);
    let shelf = &props.shelf;
    let count = shelf.pasts.len();
    if count == 0 {
        return empty();
    }
    let turn = {
        let chosen = chosen.clone();
        Callback::from(move |(places, is_in): (Vec<usize>, bool)| {
            let mut now = Chosen::clone(&chosen);
            now.out.resize(count, false);
            for place in places {
                now.out[place] = !is_in;
            }
            chosen.set(now);
        })
    };
    let places = (0..count).filter(|place| is_in(&chosen.out, *place));
    let pasts: Vec<_> = places.map(|place| &shelf.pasts[place]).collect();
    let ids: Vec<String> = pasts.iter().map(|past| past.head.id.clone()).collect();
    let records = pasts.iter().map(|past| {
        html! { <tr key={past.head.id.as_str()}><td>{ record(shelf, past, chosen.with, &prose) }</td></tr> }
    });
    let stood = shelf.clock.date(shelf.now).words();
    let stood = format!("{} attempts at synthetic cases, as they stood on {stood}.", ids.len());
    let mut parts = vec![
        line(
            "p",
            "lead",
            "A record of attempts, to print or to hand on. What is in it is yours to choose.",
        ),
        line("h2", "", "What is in it"),
    ];
    parts.extend(choose(shelf, &chosen.out, &turn));
    parts.extend(beside(&chosen));
    parts.push(acts(ids, count, &props.on_save));
    parts.push(line("p", "from", "The file holds choices, never marks: who opens it sees the same verdicts on the same cases."));
    // The head of a table is printed anew on each page: so is the caution.
    let head = el("thead", "", vec![el("tr", "", vec![el("td", "", vec![caution()])])]);
    let records = vec![head, el("tbody", "", records.collect())];
    let whose = if chosen.name.is_empty() {
        Html::default()
    } else {
        said("p", "whose", chosen.name.clone())
    };
    let parts = vec![
        line("h1", "", "Portfolio"),
        el("div", "choosing", parts),
        whose,
        said("p", "from", stood),
        with("table", &[("class", "records"), ("role", "presentation")], records),
    ];
    el("article", "page portfolio", parts)
}

fn empty() -> Html {
    nothing_yet(
        "Portfolio",
        "No attempt is kept yet.",
        "Each case that you work on will stand here with what was chosen well and what was not, to be printed or handed on.",
    )
}
