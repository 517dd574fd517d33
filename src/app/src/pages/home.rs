//! Where a learner chooses a case.

use crate::effects;
use crate::library::{Library, ShippedSet};
use crate::route::{CaseRoute, From, Route};
use engine::session::Shown;
use web_sys::{HtmlInputElement, HtmlSelectElement};
use yew::prelude::*;

/// Which case is the guided one: the first of the first set.
const FIRST: usize = 1;

/// How hard a fresh case may be, and in words.
const HARD: [(&str, &str); 4] =
    [("", "of any kind"), ("0-0.5", "easier"), ("0.5-0.7", "in between"), ("0.7-1", "harder")];

/// The home page.
pub fn home(library: &Library, kept_before: bool) -> Html {
    let sets = match library {
        Library::Coming => html! { <p>{ "The sets are on their way." }</p> },
        Library::Trouble(why) => html! { <p class="wrong" role="alert">{ why }</p> },
        Library::Here(sets) => html! { <ol class="sets">{ for sets.iter().map(set) }</ol> },
    };
    let guided = match library {
        Library::Here(sets) => {
            sets.first().map(|set| route(From::Set(set.name.clone(), FIRST), true))
        }
        _ => None,
    };
    html! {
        <div class="page home">
            <h1>{ "Wallwise" }</h1>
            <p class="lead">{ "A rehearsal room for extraction sockets. Read the walls, choose, and find out why." }</p>
            <section class="ways" aria-label="Ways to begin">
                if kept_before { <a class="way" href="#/today"><strong>{ "Today" }</strong><span>{ "What is due, and why." }</span></a> }
                if let Some(guided) = guided { <a class="way" href={guided}><strong>{ "First case, guided" }</strong><span>{ "Each step is talked through." }</span></a> }
                <Fresh />
            </section>
            <h2>{ "Sets" }</h2>
            { sets }
        </div>
    }
}

fn route(from: From, guided: bool) -> String {
    Route::Case(CaseRoute { guided, ..CaseRoute::study(from) }).fragment()
}

fn set(set: &ShippedSet) -> Html {
    let cases = set.cases.iter().enumerate().map(|(place, title)| {
        let href = route(From::Set(set.name.clone(), place + 1), false);
        html! { <li><a {href}>{ title }</a></li> }
    });
    let first = CaseRoute::study(From::Set(set.name.clone(), 1));
    let worked = CaseRoute { shown: Some(Shown::Whole), ..first };
    let worked = Route::Case(worked).fragment();
    html! {
        <li class="set">
            <h3>{ &set.title }</h3>
            <p>{ &set.aim }</p>
            <p class="from">{ format!("For {}s · {} cases", set.level, set.cases.len()) }</p>
            <p><a href={worked}>{ "See one worked first" }</a></p>
            <ol class="cases">{ for cases }</ol>
        </li>
    }
}

/// A fresh case, or one by its address.
#[component]
fn Fresh() -> Html {
    let field = use_node_ref();
    let wrong = use_state(|| None::<String>);
    let hard = use_node_ref();
    let fresh = {
        let hard = hard.clone();
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            // "any" reads as no range.
            let within =
                hard.cast::<HtmlSelectElement>().and_then(|hard| hard.value().parse().ok());
            effects::go(&route(From::Seed(effects::fresh_seed(), within), false))
        })
    };
    let open = {
        let (field, wrong) = (field.clone(), wrong.clone());
        Callback::from(move |event: SubmitEvent| {
            event.prevent_default();
            let text =
                field.cast::<HtmlInputElement>().map(|field| field.value()).unwrap_or_default();
            match Route::typed(text.trim()) {
                Route::Nowhere(why) => wrong.set(Some(why)),
                somewhere => effects::go(&somewhere.fragment()),
            }
        })
    };
    html! {
        <>
            <form class="way" onsubmit={fresh}>
                <label for="hard"><strong>{ "A fresh case" }</strong></label>
                <span class="row"><select id="hard" ref={hard}>{ for HARD.iter().map(|(range, words)| html! { <option value={*range} selected={range.is_empty()}>{ *words }</option> }) }</select><button type="submit">{ "Draw" }</button></span>
            </form>
            <form class="way" onsubmit={open}>
                <label for="address"><strong>{ "A case by its address" }</strong></label>
                <span class="row"><input id="address" ref={field} type="text" inputmode="decimal" placeholder="1.1.2024.0 or a seed" /><button type="submit">{ "Open" }</button></span>
                if let Some(why) = &*wrong { <p class="wrong" role="alert">{ why.clone() }</p> }
            </form>
        </>
    }
}
